import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { shorten, textWidth } from '../../scene/text-width.ts';
import type { Line } from '../model/lines.ts';
import { POINT_WORDS } from '../model/points.ts';
import type { Pen } from './pen.ts';
import type { WaveRow } from './wave-row.ts';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** What can be heard at most; common practice, no source. */
const AUDIBLE = [30, 18e3] as const;
/** Ends of the scale of everything from direct current's neighbourhood to beyond twice the carrier. */
const WIDEST = [20, 5e6] as const;

/**
 * The steady waves a trace is made of, beside it. Before the detector a close look about the carrier; elsewhere
 * everything from hum to beyond the carrier, with what an ear could hear shaded.
 */
export function paintSpectrum(pen: Pen, { waves, point }: WaveRow, box: Box, letters: number): void {
  const small = letters * 0.85;
  const left = box.x + letters * 1.2;
  const right = box.x + box.w - letters * 0.8;
  const floor = box.y + box.h - letters * 1.5;
  const close = point === 'carrier' || point === 'modulated' || point === 'tuned';
  const roof = box.y + letters * (close ? 2.4 : 3.4);
  pen.line(box.x, box.y, box.x, box.y + box.h, 'faint', 1);
  const lines = waves.lines(point);
  const { carrier } = waves.spec;
  const away = Math.max(
    ...lines.map((l) => Math.abs(l.frequency - carrier)),
    ...(waves.spec.programme.kind === 'tones' ? waves.spec.programme.tones.map((t) => t.frequency) : [2500]),
    ...waves.bands(point).map((b) => Math.abs(b.to - carrier)),
  );
  const tones = waves.spec.programme.kind === 'tones' ? waves.spec.programme.tones : [];
  const only = tones.length === 1 && point === 'modulated' ? tones[0].frequency : undefined;
  const reach = Math.min(away * (only ? 1.5 : 1.15), carrier * 0.98);
  const place = (f: number): number =>
    close
      ? left + ((f - carrier + reach) / (2 * reach)) * (right - left)
      : left + (Math.log(f / WIDEST[0]) / Math.log(WIDEST[1] / WIDEST[0])) * (right - left);
  if (!close) {
    pen.rect(
      place(AUDIBLE[0]),
      roof - letters * 1.3,
      place(AUDIBLE[1]) - place(AUDIBLE[0]),
      floor - roof + letters * 1.3,
      'card',
    );
    pen.text((place(AUDIBLE[0]) + place(AUDIBLE[1])) / 2, roof - small * 0.3, 'can be heard', small, {
      role: 'soft',
      anchor: 'middle',
    });
  }
  pen.line(left, floor, right, floor, 'soft', 1);
  for (const band of waves.bands(point)) {
    const from = place(Math.max(band.from, close ? carrier - reach : WIDEST[0]));
    pen.rect(from, floor - (floor - roof) * 0.3, place(band.to) - from, (floor - roof) * 0.3, 'accent', 0.5);
  }
  const shown = lines.filter((l) => l.what !== 'direct');
  const most = Math.max(...shown.map((l) => l.amplitude), 1e-30);
  for (const l of shown) {
    const x = place(l.frequency);
    if (x < left - 1 || x > right + 1) continue;
    const height = ((floor - roof) * l.amplitude) / most;
    if (height < 0.4) continue;
    pen.line(x, floor, x, floor - height, roleOf(l), 2);
  }
  const said = summary(point, lines);
  const words = said.find((w) => textWidth(w, small) <= right - left) ?? said[said.length - 1];
  pen.text(left, box.y + letters * 1.25, shorten(words, small, right - left), small, { role: 'soft', rim: true });
  const label = (f: number, anchor: 'start' | 'middle' | 'end') =>
    pen.text(place(f), floor + small * 1.3, frequencyText(f), small, { role: 'soft', anchor });
  if (close) {
    const shift = roundedReach(reach);
    label(carrier, 'middle');
    const apart = place(carrier + shift) - place(carrier);
    const wide = textWidth(`${frequencyText(carrier)} +${frequencyText(shift)}`, small) * 0.55;
    const pair = only === undefined ? undefined : lines.find((l) => l.what === 'sideband');
    for (const side of only !== undefined && pair ? [-1, 1] : [])
      pen.text(
        place(carrier + side * only!),
        floor - ((floor - roof) * pair!.amplitude) / most - small * 0.4,
        `${side < 0 ? '−' : '+'}${frequencyText(only!)}`,
        small,
        { role: 'accent', anchor: 'middle' },
      );
    for (const side of pair === undefined && apart > wide ? [-1, 1] : [])
      pen.text(
        place(carrier + side * shift),
        floor + small * 1.3,
        `${side < 0 ? '−' : '+'}${frequencyText(shift)}`,
        small,
        {
          role: 'soft',
          anchor: 'middle',
        },
      );
  } else for (const f of [100, 10e3, 1e6]) label(f, 'middle');
}

const roleOf = (line: Line) =>
  line.what === 'programme' || line.what === 'sideband' ? 'accent' : line.what === 'neighbour' ? 'soft' : 'copper';

const frequencyText = (f: number): string => {
  const [value, unit] = f >= 1e6 ? [f / 1e6, 'MHz'] : f >= 1e3 ? [f / 1e3, 'kHz'] : [f, 'Hz'];
  return `${formatNumber(value, 4)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')} ${unit}`;
};

function roundedReach(reach: number): number {
  const rough = reach * 0.62;
  const power = 10 ** Math.floor(Math.log10(rough));
  return [5, 2, 1].map((k) => k * power).find((s) => s <= rough) ?? power;
}

/** The figures that matter, in a few words, longest first. */
function summary(point: WaveRow['point'], lines: readonly Line[]): string[] {
  const show = (v: number) =>
    POINT_WORDS[point].measure === 'ratio' ? `${formatNumber(100 * v, 2)} %` : formatQuantity(v, 'voltage', 2);
  const strongest = (what: Line['what']) =>
    Math.max(0, ...lines.filter((l) => l.what === what).map((l) => l.amplitude));
  const carrier = strongest('carrier');
  switch (point) {
    case 'programme':
      return [lines.length === 0 ? 'speech or music' : lines.map((l) => frequencyText(l.frequency)).join(' and ')];
    case 'carrier':
      return [`one wave, ${show(carrier)}`];
    case 'modulated':
    case 'tuned': {
      const side = strongest('sideband');
      if (side === 0) return [`carrier ${show(carrier)}`];
      const share = `${formatNumber((100 * side) / carrier, 2)} %`;
      return [
        `carrier ${show(carrier)}, sidebands ${show(side)}: ${share} each`,
        `sidebands ${show(side)}, ${share} each`,
        `sidebands ${show(side)}`,
      ];
    }
    default: {
      const audio = strongest('programme');
      return lines.length === 0
        ? ['programme again']
        : [
            `programme ${show(audio)}, carrier left ${show(strongest('ripple'))}`,
            `${show(audio)}, carrier left ${show(strongest('ripple'))}`,
            `programme ${show(audio)}`,
          ];
    }
  }
}
