import { useEffect, useRef } from 'preact/hooks';
import { listeningTexts } from '../../../../outputs/words/index.ts';
import type { Moving } from './messages.ts';

interface Props {
  readonly label: string;
  /** What stands beside the label, of the largest value shown. */
  readonly textFor: (most: number) => string;
  /** What is drawn, oldest or lowest first. */
  readonly data: Float32Array | undefined;
  /** Lowest value shown; "auto" both ways about 0; fixed for decibels. */
  readonly range: 'from-zero' | 'about-zero' | readonly [number, number];
}

const WIDTH = 300;
const HEIGHT = 72;

/** A trace that moves. */
function Scope({ label, textFor, data, range }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  let most = 0;
  if (data) for (const x of data) most = Math.max(most, Math.abs(x));
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || !canvas.current) return;
    const style = getComputedStyle(canvas.current);
    context.clearRect(0, 0, WIDTH * 2, HEIGHT * 2);
    context.strokeStyle = style.color;
    context.lineWidth = 2;
    if (!data || data.length < 2) return;
    const full = most * 1.1 || 1;
    const [low, high] = range === 'from-zero' ? [0, full] : range === 'about-zero' ? [-full, full] : range;
    context.beginPath();
    data.forEach((x, i) => {
      const y = 2 * HEIGHT * (1 - Math.min(1, Math.max(0, (x - low) / (high - low))));
      if (i === 0) context.moveTo(0, y);
      else context.lineTo((2 * WIDTH * i) / (data.length - 1), y);
    });
    context.stroke();
  });
  const value = data ? textFor(most) : '';
  return (
    <figure class="listen-scope">
      <figcaption>
        {label} <span class="quiet">{value}</span>
      </figcaption>
      <canvas
        ref={canvas}
        width={WIDTH * 2}
        height={HEIGHT * 2}
        role="img"
        aria-label={listeningTexts.traces.named(label, value)}
      />
    </figure>
  );
}

interface TracesProps {
  readonly moving: Moving | undefined;
  /** The set gives no sound: what is left is the room's. */
  readonly isSilent: boolean;
}

/** The traces and the band, as they are now. */
export function Traces({ moving, isSilent }: TracesProps) {
  const texts = listeningTexts.traces;
  return (
    <details>
      <summary>{texts.title}</summary>
      <div class="listen-scopes">
        <Scope label={texts.carrier} textFor={texts.volts} data={moving?.envelope} range="from-zero" />
        <Scope label={texts.detected} textFor={texts.volts} data={moving?.detected} range="from-zero" />
        <Scope
          label={texts.sound}
          textFor={isSilent ? texts.roomOnly : texts.pascals}
          data={moving?.sound}
          range="about-zero"
        />
        <Scope
          label={texts.band}
          textFor={() => (moving ? texts.range(moving.from, moving.to) : '')}
          data={moving?.spectrum}
          range={[-130, 10]}
        />
      </div>
    </details>
  );
}
