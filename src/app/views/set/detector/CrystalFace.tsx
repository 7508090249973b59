import { useRef } from 'preact/hooks';
import type { CrystalSurface, WhiskerPosition } from '../../../../engine/index.ts';
import { crystalWords as texts } from '../../../../outputs/words/index.ts';

export interface TriedSpot {
  readonly x: number;
  readonly y: number;
  /** 0 dead to 1 the best there is. */
  readonly merit: number;
}

interface Props {
  readonly surface: CrystalSurface;
  readonly whisker: WhiskerPosition;
  readonly tried: readonly TriedSpot[];
  /** Metres from the upper left corner. */
  readonly onMove: (x: number, y: number) => void;
}

/** Share of the crystal's width. */
const STEP = 0.02;
const mm = 1e3;

/** The face of a crystal with the spots tried; pointer or arrow keys move the whisker. */
export function CrystalFace({ surface, whisker, tried, onMove }: Props) {
  const box = useRef<SVGSVGElement>(null);
  const point = (event: PointerEvent) => {
    const area = box.current!.getBoundingClientRect();
    onMove(
      ((event.clientX - area.left) / area.width) * surface.width,
      ((event.clientY - area.top) / area.height) * surface.height,
    );
  };
  const key = (event: KeyboardEvent) => {
    const by: Record<string, readonly [number, number]> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, -1],
      ArrowDown: [0, 1],
    };
    const step = by[event.key];
    if (!step) return;
    event.preventDefault();
    const size = surface.width * STEP * (event.shiftKey ? 4 : 1);
    onMove(whisker.x + step[0] * size, whisker.y + step[1] * size);
  };

  return (
    <div
      class="drawing crystal"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the whisker is moved with the arrow keys
      tabIndex={0}
      role="application"
      aria-label={texts.face}
      aria-describedby="crystal-words"
      onPointerDown={point}
      onKeyDown={key}
    >
      <svg ref={box} viewBox={`0 0 ${surface.width * mm} ${surface.height * mm}`} aria-hidden="true">
        <rect width={surface.width * mm} height={surface.height * mm} rx={0.4} style={{ fill: 'var(--metal)' }} />
        {tried.map((t, i) => (
          <circle
            key={`${i}-${t.x}`}
            cx={t.x * mm}
            cy={t.y * mm}
            r={0.05 + 0.14 * t.merit}
            style={{ fill: t.merit > 0.05 ? 'var(--copper-bright)' : 'var(--ink)', opacity: 0.7 }}
          />
        ))}
        <path
          d={`M ${whisker.x * mm + 1.6} ${whisker.y * mm - 1.8} q -1.3 0.3 -1.6 1.8`}
          style={{ fill: 'none', stroke: 'var(--copper)', strokeWidth: 0.09 }}
        />
        <circle
          cx={whisker.x * mm}
          cy={whisker.y * mm}
          r={0.16}
          style={{ fill: 'none', stroke: 'var(--copper)', strokeWidth: 0.07 }}
        />
      </svg>
    </div>
  );
}
