import { useEffect, useRef } from 'preact/hooks';
import type { Moving } from './messages.ts';

interface Props {
  readonly label: string;
  readonly unit: string;
  /** What is drawn, oldest or lowest first. */
  readonly data: Float32Array | undefined;
  /** Lowest value shown; "auto" both ways about 0; fixed for decibels. */
  readonly range: 'from zero' | 'about zero' | readonly [number, number];
}

const WIDTH = 300;
const HEIGHT = 72;

/** A trace that moves. */
export function Scope({ label, unit, data, range }: Props) {
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
    const [low, high] = range === 'from zero' ? [0, full] : range === 'about zero' ? [-full, full] : range;
    context.beginPath();
    data.forEach((x, i) => {
      const y = 2 * HEIGHT * (1 - Math.min(1, Math.max(0, (x - low) / (high - low))));
      if (i === 0) context.moveTo(0, y);
      else context.lineTo((2 * WIDTH * i) / (data.length - 1), y);
    });
    context.stroke();
  });
  const peak = typeof range === 'string' ? (data ? `${most.toPrecision(2)} ${unit} at most` : '') : unit;
  return (
    <figure class="listen-scope">
      <figcaption>
        {label} <span class="quiet">{peak}</span>
      </figcaption>
      <canvas ref={canvas} width={WIDTH * 2} height={HEIGHT * 2} role="img" aria-label={`${label}, ${peak}`} />
    </figure>
  );
}

/** The traces and the band, as they are now. */
export function Traces({ moving }: { readonly moving: Moving | undefined }) {
  const kHz = (f: number) => Math.round(f / 1e3);
  return (
    <div class="listen-scopes">
      <Scope label="Carrier at the detector" unit="V" data={moving?.envelope} range="from zero" />
      <Scope label="After the detector" unit="V" data={moving?.detected} range="from zero" />
      <Scope label="Sound in the phones" unit="Pa" data={moving?.sound} range="about zero" />
      <Scope
        label="The band as the set passes it"
        unit={moving ? `${kHz(moving.from)} to ${kHz(moving.to)} kHz` : ''}
        data={moving?.spectrum}
        range={[-130, 10]}
      />
    </div>
  );
}
