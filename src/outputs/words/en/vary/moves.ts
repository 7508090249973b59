import { tuningModel } from '../../../../engine/kinds/models.ts';
import type { SetDescription } from '../../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { BandFigures } from '../../../../engine/vary/band-figures.ts';
import { BANDS, type BandName } from '../../../../engine/vary/bands.ts';
import type { Move, Rewound } from '../../../../engine/vary/move-band.ts';
import { bandSpan, wholeKHz } from '../../figures.ts';

const kHz = (f: number): string => `${wholeKHz(f)} kHz`;
const pF = (C: number): string => formatQuantity(C, 'capacitance', 2);
const percent = (x: number): string => `${Math.round(100 * x)} %`;
/** No capacitor turns with the pointer. */
const byCoil = ({ arrangement }: SetDescription): boolean =>
  arrangement.kind === 'slider' || arrangement.kind === 'variometer';
/** A broadcast channel with both sidebands, Hz. */
const CHANNEL = 9e3;

type Loosened = NonNullable<Move['loosened']>;
const LOOSENED: Readonly<Record<Loosened['what'], (loosened: Loosened) => string>> = {
  'series capacitor': ({ from, to }) =>
    from === undefined
      ? `a capacitor of ${pF(to)} in the aerial lead`
      : `${pF(to)} in the aerial lead instead of ${pF(from)}`,
  'aerial tap': () => 'the aerial tapped nearer the earthed end',
  coupling: () => 'looser coupling of the coils',
  distance: ({ to }) => `the coils ${formatQuantity(to, 'length', 3)} apart`,
};

/** The move told with the set's own figures: what must change, what goes wrong, why, and what to do. */
export function moveWords(move: Move): string[] {
  return [turns(move), ...range(move), ...selectivity(move), ...strays(move), ...losses(move), ...stations(move)];
}

/** Turns of a set for a range of frequencies, and what the set covers with them. */
export function rewindWords(rewound: Rewound): string[] {
  const { band, after } = rewound;
  const needs = `For ${bandSpan(band.from, band.to)} the coil needs ${coilChange(rewound)}.`;
  const falls = band.from < after.lowest * 0.995;
  return [
    needs,
    ...range(rewound),
    ...(falls ? [`The low end, ${kHz(band.from)}, is out of range: the set begins at ${kHz(after.lowest)}.`] : []),
  ];
}

function coilChange({ before, after }: Rewound): string {
  if (before.turns !== undefined && before.turns === after.turns)
    return `the ${formatNumber(after.turns, 3)} turns that it has`;
  const inductance = `${formatQuantity(after.inductance, 'inductance', 2)} instead of ${formatQuantity(before.inductance, 'inductance', 2)}`;
  const wound =
    before.turns !== undefined && after.turns !== undefined
      ? `: ${formatNumber(after.turns, 3)} turns instead of ${formatNumber(before.turns, 3)}`
      : '';
  return `${inductance}${wound}, taps in proportion`;
}

const turns = (move: Move): string => `From ${move.from} to ${move.to} the coil needs ${coilChange(move)}.`;

/** Whether the band is covered, and what reduces its range. */
function range({ band, plainly, after, loosened, moved }: Rewound): string[] {
  const says: string[] = [];
  const { aerial, whole } = plainly.atHighEnd;
  const covered = (f: BandFigures) => f.highest >= band.to * 0.995;
  const lost = plainly.spanAlone / plainly.span;
  if (byCoil(moved)) {
    says.push(
      `The set covers ${bandSpan(plainly.lowest, plainly.highest)}; the aerial’s own capacitance is most of what the coil tunes with, so another aerial covers another range.`,
    );
  } else if (aerial > 0.05 * whole && lost > 1.03) {
    says.push(
      `The aerial’s own capacitance reduces the tuning range: at the high end it adds ${pF(aerial)} of the ${pF(whole)} that tune, so the set covers ${bandSpan(plainly.lowest, plainly.highest)}, a span of ${formatNumber(plainly.span, 3)} to 1 where coil and capacitor alone would give ${formatNumber(plainly.spanAlone, 3)} to 1.`,
    );
  } else {
    says.push(
      `The set covers ${bandSpan(plainly.lowest, plainly.highest)}; the aerial reduces the tuning range little.`,
    );
  }
  if (loosened && after.highest > plainly.highest * 1.01)
    says.push(
      `With ${LOOSENED[loosened.what](loosened)} the aerial adds only ${pF(after.atHighEnd.aerial)}, and it covers ${bandSpan(after.lowest, after.highest)}${covered(after) ? ', all of the band' : ''}; the aerial then also gives less, most of all at the low end.`,
    );
  if (!covered(after)) {
    const needed = band.to / band.from;
    says.push(
      after.spanAlone < needed
        ? `The top of the band, ${kHz(band.to)}, is out of range: the capacitor with its strays spans ${formatNumber(after.spanAlone, 3)} to 1 and ${formatNumber(needed, 3)} to 1 is needed. Use one with a lower minimum or a higher maximum, shorten the wiring, or make two ranges with a tap on the coil.`
        : `The top of the band, ${kHz(band.to)}, is out of range: loosen the aerial further, or make two ranges with a tap on the coil.`,
    );
  } else if (after.highest > 1.25 * band.to) {
    const T = byCoil(moved) ? 0 : trimmerFor(moved, after, band);
    says.push(
      `It reaches ${kHz(after.highest)}, well past the band, which crowds the stations on the scale${T > 0 ? `: a trimmer of about ${pF(T)} across the coil, with a few turns less, spreads them` : ''}.`,
    );
  }
  return says;
}

/** Across the coil, so that the capacitor's swing just makes the band: (max + T)/(min + T) = (to/from)². */
function trimmerFor(
  set: SetDescription,
  { atHighEnd, wholeAtLowEnd }: BandFigures,
  band: { from: number; to: number },
): number {
  const { min, max } = tuningModel(set.tuning);
  const extra = (atHighEnd.whole - min + (wholeAtLowEnd - max)) / 2;
  const ratio = (band.to / band.from) ** 2;
  return Math.max(0, (max - ratio * min) / (ratio - 1) - Math.max(0, extra));
}

function selectivity({ from, to, before, after }: Move): string[] {
  const middle = (name: BandName, f: BandFigures) =>
    Math.min(f.highest, Math.max(f.lowest, Math.sqrt(BANDS[name].from * BANDS[name].to)));
  const [f0, f1] = [middle(from, before), middle(to, after)];
  const [b0, b1] = [before.bandwidthAt(f0), after.bandwidthAt(f1)];
  const [q0, q1] = [before.qAt(f0), after.qAt(f1)];
  const figures = `loaded Q ${formatNumber(q1, 2)} at ${kHz(f1)} against ${formatNumber(q0, 2)} at ${kHz(f0)}`;
  const channels = (b: number) => formatNumber(b / CHANNEL, 2);
  if (b1 > b0) {
    const end = Math.min(after.highest, BANDS[to].to);
    // Wider than the programme needs, others come in; below that, widening is what brings the treble back.
    const gained = b0 < CHANNEL ? ' The programme loses less treble.' : '';
    const remedy =
      b1 > CHANNEL
        ? ' Tap the detector and the aerial lower, use thicker or Litz wire on a dry, open former, or couple a second tuned circuit.'
        : '';
    return [
      `Selectivity falls: bandwidth in the middle of the band ${formatQuantity(b1, 'frequency', 2)}, before the move ${formatQuantity(b0, 'frequency', 2)} (${figures}), and ${formatQuantity(after.bandwidthAt(end), 'frequency', 2)} at ${kHz(end)}: that is ${channels(b1)} channels, before ${channels(b0)}.${gained}${remedy}`,
    ];
  }
  return [
    b1 < CHANNEL
      ? `Selectivity rises: bandwidth in the middle of the band ${formatQuantity(b1, 'frequency', 2)}, before the move ${formatQuantity(b0, 'frequency', 2)} (${figures}). The programme has audible treble loss: tap the detector higher if speech sounds dull.`
      : `Selectivity rises: bandwidth in the middle of the band ${formatQuantity(b1, 'frequency', 2)}, before the move ${formatQuantity(b0, 'frequency', 2)} (${figures}).`,
  ];
}

function strays({ set, to, before, after }: Move): string[] {
  if (byCoil(set)) return [];
  const share = after.atHighEnd.strays / after.atHighEnd.whole;
  const was = before.atHighEnd.strays / before.atHighEnd.whole;
  const per = (f: BandFigures) => (f.highest * 1e-12) / (2 * f.atHighEnd.whole);
  if (!(share > 0.05)) return [];
  const hand = `one picofarad more, such as a hand near the coil, moves a station there by ${formatQuantity(per(after), 'frequency', 2)}, where it was ${formatQuantity(per(before), 'frequency', 2)}`;
  return [
    `Strays ${per(after) > per(before) ? 'shift the tuning more' : 'shift the tuning less'}: wiring, trimmer and the coil’s own capacitance are ${percent(share)} of what tunes at the high end of ${to} (${percent(was)} before), and ${hand}. Keep the leads to coil and capacitor short and apart, and earth the side of the capacitor that the hand is near.`,
  ];
}

function losses({ set, to, moved }: Move): string[] {
  const says: string[] = [];
  const loss = tuningModel(set.tuning).lossTangent;
  if (loss > 0.004)
    says.push(
      `The capacitor’s dielectric alone limits the Q to ${formatNumber(1 / loss, 2)} when it is fully meshed; on ${to} polythene, mica or air gives a higher Q.`,
    );
  const coil = moved.coils[0];
  if (to === 'medium wave' && coil && (coil.shape === 'multilayer' || coil.shape === 'bank-wound'))
    says.push(
      'A piled coil has more capacitance of its own and more loss than medium wave likes: a single layer on a former as wide as it is long does better with these few turns.',
    );
  return says;
}

function stations({ set, to }: Move): string[] {
  const { from, to: end } = BANDS[to];
  const there = set.place.stations.filter((s) => s.frequency >= from && s.frequency <= end);
  return there.length > 0
    ? []
    : [`No station on ${to} is listed for this place yet: add those you know of to see how they would be heard.`];
}
