import { formatQuantity } from '../../../engine/units/format.ts';
import { shorten, textWidth } from '../../scene/text-width.ts';
import { spectrumTexts } from '../../words/index.ts';
import type { Line } from '../model/lines.ts';
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

/** Where frequencies and amplitudes lie in a spectrum. */
interface SpectrumScale {
  readonly left: number;
  readonly right: number;
  readonly floor: number;
  readonly roof: number;
  /** A close look about the carrier, so far either way; undefined: everything from hum to beyond the carrier. */
  readonly reach?: number;
  /** Of a single tone, whose sidebands are named. */
  readonly onlyTone?: number;
  readonly small: number;
  place(f: number): number;
}

function scaleOf({ waves, point }: WaveRow, box: Box, letters: number, lines: readonly Line[]): SpectrumScale {
  const left = box.x + letters * 1.2;
  const right = box.x + box.w - letters * 0.8;
  const floor = box.y + box.h - letters * 1.5;
  const small = letters * 0.85;
  const close = point === 'carrier' || point === 'modulated' || point === 'tuned';
  if (!close)
    return {
      left,
      right,
      floor,
      roof: box.y + letters * 3.4,
      small,
      place: (f) => left + (Math.log(f / WIDEST[0]) / Math.log(WIDEST[1] / WIDEST[0])) * (right - left),
    };
  const { carrier, programme } = waves.spec;
  const tones = programme.kind === 'tones' ? programme.tones.map((t) => t.frequency) : undefined;
  const away = Math.max(
    ...lines.map((l) => Math.abs(l.frequency - carrier)),
    ...(tones ?? [2500]),
    ...waves.bands(point).map((b) => Math.abs(b.to - carrier)),
  );
  const onlyTone = tones?.length === 1 && point === 'modulated' ? tones[0] : undefined;
  const reach = Math.min(away * (onlyTone ? 1.5 : 1.15), carrier * 0.98);
  return {
    left,
    right,
    floor,
    roof: box.y + letters * 2.4,
    reach,
    onlyTone,
    small,
    place: (f) => left + ((f - carrier + reach) / (2 * reach)) * (right - left),
  };
}

/**
 * The steady waves a trace is made of, beside it. Before the detector a close look about the carrier; elsewhere
 * everything from hum to beyond the carrier, with what an ear could hear shaded.
 */
export function paintSpectrum(pen: Pen, row: WaveRow, box: Box, letters: number): void {
  const { waves, point } = row;
  const lines = waves.lines(point);
  const scale = scaleOf(row, box, letters, lines);
  const { left, right, floor, roof, reach, small, place } = scale;
  const { carrier } = waves.spec;
  pen.line(box.x, box.y, box.x, box.y + box.h, 'faint', 1);
  if (reach === undefined) paintAudible(pen, scale, letters);
  pen.line(left, floor, right, floor, 'soft', 1);
  for (const band of waves.bands(point)) {
    const from = place(Math.max(band.from, reach === undefined ? WIDEST[0] : carrier - reach));
    pen.rect(from, floor - (floor - roof) * 0.3, place(band.to) - from, (floor - roof) * 0.3, 'accent', 0.5);
  }
  const shown = lines.filter((l) => l.what !== 'direct');
  const most = Math.max(...shown.map((l) => l.amplitude), 1e-30);
  for (const l of shown) {
    const x = place(l.frequency);
    const height = ((floor - roof) * l.amplitude) / most;
    if (x >= left - 1 && x <= right + 1 && height >= 0.4) pen.line(x, floor, x, floor - height, roleOf(l), 2);
  }
  const choices = summary(point, lines);
  const words = choices.find((w) => textWidth(w, small) <= right - left) ?? choices[choices.length - 1];
  pen.text(left, box.y + letters * 1.25, shorten(words, small, right - left), small, { role: 'soft', rim: true });
  if (reach === undefined) for (const f of [100, 10e3, 1e6]) frequencyLabel(pen, scale, f);
  else paintOffsets(pen, scale, carrier, reach, lines, most);
}

/** The frequencies an ear could hear. */
function paintAudible(pen: Pen, { roof, floor, small, place }: SpectrumScale, letters: number): void {
  const [from, to] = AUDIBLE.map(place);
  const above = letters * 1.3;
  pen.rect(from, roof - above, to - from, floor - roof + above, 'card');
  pen.text((from + to) / 2, roof - small * 0.3, spectrumTexts.audible, small, { role: 'soft', anchor: 'middle' });
}

function frequencyLabel(pen: Pen, { floor, small, place }: SpectrumScale, f: number): void {
  pen.text(place(f), floor + small * 1.3, frequencyText(f), small, { role: 'soft', anchor: 'middle' });
}

/** The carrier's frequency, and how far off the sidebands are, or round figures where there is room. */
function paintOffsets(
  pen: Pen,
  scale: SpectrumScale,
  carrier: number,
  reach: number,
  lines: readonly Line[],
  most: number,
): void {
  const { floor, roof, onlyTone, small, place } = scale;
  frequencyLabel(pen, scale, carrier);
  const sideband = onlyTone === undefined ? undefined : lines.find((l) => l.what === 'sideband');
  if (onlyTone !== undefined && sideband) {
    const y = floor - ((floor - roof) * sideband.amplitude) / most - small * 0.4;
    for (const side of [-1, 1])
      pen.text(place(carrier + side * onlyTone), y, offsetText(side * onlyTone), small, {
        role: 'accent',
        anchor: 'middle',
      });
    return;
  }
  const shift = roundedReach(reach);
  const wide = textWidth(`${frequencyText(carrier)} +${frequencyText(shift)}`, small) * 0.55;
  if (place(carrier + shift) - place(carrier) <= wide) return;
  for (const side of [-1, 1])
    pen.text(place(carrier + side * shift), floor + small * 1.3, offsetText(side * shift), small, {
      role: 'soft',
      anchor: 'middle',
    });
}

const roleOf = (line: Line) =>
  line.what === 'programme' || line.what === 'sideband' ? 'accent' : line.what === 'neighbour' ? 'soft' : 'copper';

const frequencyText = (f: number): string => formatQuantity(f, 'frequency', 4);
const offsetText = (f: number): string => `${f < 0 ? '−' : '+'}${frequencyText(Math.abs(f))}`;

function roundedReach(reach: number): number {
  const rough = reach * 0.62;
  const power = 10 ** Math.floor(Math.log10(rough));
  return [5, 2, 1].map((k) => k * power).find((s) => s <= rough) ?? power;
}

/** The figures that matter, in a few words, longest first. */
function summary(point: WaveRow['point'], lines: readonly Line[]): readonly string[] {
  const strongest = (what: Line['what']) =>
    Math.max(0, ...lines.filter((l) => l.what === what).map((l) => l.amplitude));
  switch (point) {
    case 'programme':
      return [lines.length === 0 ? spectrumTexts.recording : spectrumTexts.tones(lines.map((l) => l.frequency))];
    case 'carrier':
      return [spectrumTexts.carrierAlone(strongest('carrier'))];
    case 'modulated':
    case 'tuned': {
      const sideband = strongest('sideband');
      const carrier = strongest('carrier');
      return sideband === 0 ? [spectrumTexts.carrierWithout(carrier)] : spectrumTexts.sidebands(carrier, sideband);
    }
    case 'detector':
    case 'phones':
      return lines.length === 0
        ? [spectrumTexts.outputOfRecording]
        : spectrumTexts.output(strongest('programme'), strongest('ripple'));
  }
}
