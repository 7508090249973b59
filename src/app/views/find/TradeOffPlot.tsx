import { useMemo, useState } from 'preact/hooks';
import type { WantValue } from '../../../engine/index.ts';
import { tradeOff } from '../../../outputs/plots/index.ts';
import {
  type TradeOffAxis,
  findView as texts,
  tradeOffAxis,
  tradeOffValue,
  wantFigure,
  wantName,
  widgetWords,
} from '../../../outputs/words/index.ts';
import { chooseFound, chosenFound, type Finding } from '../../state/finding.ts';
import { SceneView } from '../../widgets/Plot.tsx';
import { useNear } from '../../widgets/use-near.ts';

interface Placed {
  readonly figures: readonly WantValue[];
  readonly effort: number;
}

interface Axis {
  readonly key: string;
  readonly label: string;
  readonly axis: TradeOffAxis;
  readonly of: (set: Placed) => number | undefined;
}

/** What the sets give of one thing against another; a point is chosen by pointing or with the arrow keys. */
export function TradeOffPlot({ finding }: { readonly finding: Finding }) {
  const { sets, question, rest } = finding;
  const { width, holder } = useNear();
  const axes = useMemo(
    (): Axis[] => [
      ...question.read.wants.map((want, i) => ({
        key: String(i),
        label: wantName(want),
        axis: tradeOffAxis(want),
        of: ({ figures }: Placed) => tradeOffValue(figures[i]),
      })),
      {
        key: 'effort',
        label: texts.effort,
        axis: { name: texts.effort, unit: '', isWhole: true },
        of: ({ effort }: Placed) => effort,
      },
    ],
    [question],
  );
  const [keys, setKeys] = useState<{ readonly x?: string; readonly y?: string }>({});
  const axisOf = (key: string | undefined, otherwise: Axis): Axis => axes.find((one) => one.key === key) ?? otherwise;
  const [x, y] = [axisOf(keys.x, axes[1]), axisOf(keys.y, axes[0])];
  const others = rest?.others;
  const { scene, places } = useMemo(() => {
    const pointOf = (set: Placed) => [x.of(set), y.of(set)] as const;
    return tradeOff(
      { x: x.axis, y: y.axis, sets: sets.map(pointOf), others: (others ?? []).map(pointOf) },
      { width: Math.max(width, 280) },
    );
  }, [x, y, sets, others, width]);
  const chosen = chosenFound.value;
  /** From left to right, as the arrow keys go. */
  const inOrder = places
    .flatMap((place, i) => (place ? [{ place, i }] : []))
    .sort((a, b) => a.place[0] - b.place[0] || b.place[1] - a.place[1]);
  const step = (event: KeyboardEvent, at: number) => {
    const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    const next = by && inOrder[(at + by + inOrder.length) % inOrder.length];
    if (!next) return;
    event.preventDefault();
    chooseFound(sets[next.i].name);
    document.getElementById(`found-point-${next.i}`)?.focus();
  };
  const focusable = inOrder.find(({ i }) => sets[i] === chosen) ?? inOrder[0];
  const choice = (label: string, value: string, set: (key: string) => void, id: string) => (
    <label>
      {label}{' '}
      <select id={id} value={value} onChange={(event) => set(event.currentTarget.value)}>
        {axes.map(({ key, label: name }) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <figure class="plot find-plot">
      <figcaption>{texts.tradeOff}</figcaption>
      {axes.length > 2 && (
        <p class="find-axes">
          {choice(texts.upwards, y.key, (key) => setKeys({ ...keys, y: key }), 'trade-off-y')}
          {choice(texts.across, x.key, (key) => setKeys({ ...keys, x: key }), 'trade-off-x')}
        </p>
      )}
      <div ref={holder} class="drawing">
        {width > 0 && <SceneView scene={scene} />}
        {width > 0 && (
          <div class="find-points" role="radiogroup" aria-label={texts.points}>
            {inOrder.map(({ place, i }, at) => (
              // biome-ignore lint/a11y/useSemanticElements: a point of a plot
              <button
                key={i}
                id={`found-point-${i}`}
                type="button"
                role="radio"
                aria-checked={sets[i] === chosen}
                aria-label={texts.point(i + 1, `${sets[i].name}: ${sets[i].figures.map(wantFigure).join(', ')}`)}
                title={sets[i].name}
                tabIndex={i === focusable?.i ? 0 : -1}
                style={{ left: `${place[0]}px`, top: `${place[1]}px` }}
                onClick={() => chooseFound(sets[i].name)}
                onKeyDown={(event) => step(event, at)}
              >
                {i + 1}
              </button>
            ))}
          </div>
        )}
      </div>
      <details class="in-words">
        <summary>{widgetWords.inWords}</summary>
        <p>{scene.description}</p>
      </details>
    </figure>
  );
}
