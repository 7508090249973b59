import { coilModel } from '../../../engine/kinds/models.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { tapsOf } from '../../drawings/coil/coil.ts';
import type { CoilOf } from '../../drawings/coil/drawn.ts';
import { aerialText, detectorText, earthText, loadText, partTitle, wireText } from '../../words/index.ts';
import type { BoardLayout } from '../board/layout.ts';
import type { BoardParts } from '../board/parts.ts';
import { loopWire } from './loop-sheet.ts';
import { wireToCut } from './winding.ts';
import { cutLength, printable } from './words.ts';

export interface PartRow {
  readonly quantity: string;
  readonly what: string;
  readonly value: string;
  readonly instead: string;
}

const pF = (x: number): string => formatQuantity(x, 'capacitance');
const around = (x: number, low: number, high: number, kind: 'capacitance' | 'resistance'): string => {
  const [a, b] = [formatQuantity(x * low, kind, 2), formatQuantity(x * high, kind, 2)];
  const [value, unit] = a.split(' ');
  return `any ${unit === b.split(' ')[1] ? value : a}–${b}`;
};

/** What to get together before building: every part, what it must be, and what will serve instead. */
export function partsList(
  set: SetDescription,
  reception: Reception,
  { parts }: BoardParts,
  layout: BoardLayout,
): PartRow[] {
  const rows: PartRow[] = [];
  const add = (quantity: string, what: string, value: string, instead: string): void => {
    rows.push({ quantity, what, value, instead });
  };
  const outdoors = parts.some((p) => p.kind === 'aerial terminal');
  if (outdoors) {
    add(
      '1',
      'Aerial',
      aerialText(set.aerial),
      'any copper or bronze wire thick enough to stand the wind; insulators of glass, glazed china or plastic',
    );
    add(
      '1',
      'Earth',
      `${earthText(set.earth)}; about ${formatQuantity(reception.parts.earth.resistance, 'resistance', 2)}`,
      'a longer rod or several are better; never the mains, never a gas pipe',
    );
    add('1', 'Lightning arrester and earthing switch', 'at the lead-in, outside', 'none: fit it');
  }
  set.coils.forEach((coil, i) => {
    if (coil.shape === 'measured') {
      add(
        '1',
        `Coil “${printable(coil.name)}”`,
        `${formatQuantity(coil.inductance, 'inductance')}, as measured`,
        'one within 5 %',
      );
      return;
    }
    const model = coilModel(coil);
    const taps = tapsOf(set, i).length;
    add(
      Number.isFinite(model.wireLength) ? cutLength(wireToCut(model, taps)) : '—',
      `Wire for coil “${printable(coil.name)}”`,
      wireText(coil.wire),
      'one gauge thicker or thinner with the same number of turns: check the range again',
    );
    add(
      '1',
      `Former for coil “${printable(coil.name)}”`,
      isTube(coil)
        ? `${coil.former}, ${formatQuantity(coil.formerDiameter, 'length')} outside`
        : coil.shape === 'core'
          ? `${coil.form}, A_L ${formatQuantity(coil.perTurnSquared, 'inductance')}`
          : `${coil.former}, see its sheet`,
      isTube(coil) ? 'card, plastic or dry wood within 1 mm' : 'see its sheet',
    );
  });
  if (set.arrangement.kind === 'slider')
    add(
      '1',
      'Slider',
      'square brass rod a little longer than the coil, a block that runs on it, and a springy brass strip',
      'any stiff bare rod; a strip of spring bronze or a flattened phosphor-bronze wire',
    );
  for (const part of parts) {
    switch (part.kind) {
      case 'variable': {
        const t = part.tuning;
        if (t?.kind === 'variable')
          add(
            '1',
            `${part.tag}, ${part.words}`,
            `${pF(t.maximum)} meshed, ${formatNumber(t.swing, 3)}° swing, ${t.law} vanes`,
            `${around(t.maximum, 0.85, 1.2, 'capacitance')}; a smaller one loses the low end, with a larger one every station stands at a lower reading`,
          );
        else if (t?.kind === 'measured')
          add('1', `${part.tag}, ${part.words}`, 'the one measured', 'another: measure it and work the dial out again');
        else if (t)
          add(
            '1',
            `${part.tag}, ${part.words}`,
            `home-made of ${HOME_MADE[t.kind] ?? t.kind}: its own sheet lists what it needs`,
            'a bought one of the same capacitance',
          );
        break;
      }
      case 'capacitor': {
        const C = part.values.kind === 'capacitor' ? part.values.capacitance : Number.NaN;
        const isTight = part.role === 'series-capacitor' || part.role === 'trap-capacitor';
        add(
          '1',
          `${partTitle(part.part)} ${part.tag}`,
          pF(C),
          isTight
            ? `${around(C, 0.9, 1.1, 'capacitance')}, mica or polystyrene`
            : `${around(C, 0.5, 2, 'capacitance')}, any kind`,
        );
        break;
      }
      case 'resistor':
        add(
          '1',
          `${partTitle(part.part)} ${part.tag}`,
          part.values.kind === 'resistor' ? formatQuantity(part.values.resistance, 'resistance') : '',
          'within 20 %, any wattage',
        );
        break;
      case 'detector':
        if (part.role === 'detector')
          add(
            set.detector.wiring === 'single' ? '1' : '2',
            `Detector ${set.detector.wiring === 'single' ? 'D1' : 'D1, D2'}`,
            detectorText(set.detector),
            insteadOfDetector(set),
          );
        if (part.role === 'detector' && set.detector.kind === 'valve') {
          add(
            set.detector.wiring === 'single' ? '1' : '2',
            'Valve holder',
            'for the valve’s base, with its heater pins marked',
            '',
          );
          add(
            '1',
            'Heater supply',
            `${formatQuantity(set.detector.heaterVoltage, 'voltage')}, isolated from the mains, able to give the current your valve’s data sheet has for its heater, with a fuse of about twice that at its terminal`,
            'an accumulator or dry cells; within 10 %',
          );
        }
        if (part.role === 'detector' && (set.detector.kind === 'galena' || set.detector.kind === 'mineral'))
          add(
            set.detector.wiring === 'single' ? '1' : '2',
            'Detector stand',
            'a brass cup with a screw, or solder that melts low, to hold the crystal; an arm on a ball or a stiff spring over it; a whisker of phosphor bronze or steel, 0.1 to 0.2 mm, wound to a small spiral and cut to a point',
            'a bought stand; a drawing pin, a safety pin and a bared strand of wire do to begin with',
          );
        break;
      case 'cell':
        add(
          '1',
          `Bias cell ${part.tag}`,
          `${formatQuantity(set.detector.bias ?? 0, 'voltage')}, from a 1.5 V cell and a potentiometer of 1–10 kΩ`,
          'any cell; take it off when not listening',
        );
        break;
      case 'transformer':
        add(
          '1',
          `Transformer ${part.tag}`,
          `${formatNumber(set.load.transformer?.ratio ?? 1, 3)} to 1, primary ${formatQuantity(set.load.transformer?.primaryInductance ?? 30, 'inductance', 2)}`,
          'an output transformer for a small valve set',
        );
        break;
      case 'loop':
        if (set.aerial.kind === 'ferrite rod') {
          add(
            '1',
            `Ferrite rod ${part.tag}`,
            `${formatQuantity(set.aerial.length, 'length')} long, ${formatQuantity(set.aerial.diameter, 'length')} thick; its own sheet lists sleeve and blocks`,
            'a longer one: fewer turns',
          );
          add(
            cutLength(loopWire(set)),
            `Wire for ${part.tag}`,
            wireText(set.aerial.wire),
            'one gauge either way; Litz is better still',
          );
        } else if (set.aerial.kind === 'frame') {
          add(
            '1',
            `Frame ${part.tag}`,
            `${set.aerial.outline}, ${formatQuantity(set.aerial.side, 'length')}, of dry wood: its own sheet lists laths, screws and leads`,
            'any dry wood or plastic',
          );
          add(cutLength(loopWire(set)), `Wire for ${part.tag}`, wireText(set.aerial.wire), 'one gauge either way');
        }
        break;
      case 'coil':
        if (!part.coil)
          add('1', `Coil ${part.tag}`, part.words, 'wind it by the coil sheets’ method; check it before use');
        break;
      default:
    }
  }
  add(
    '1',
    set.load.kind === 'amplifier' ? 'Amplifier' : set.load.kind === 'crystal earpiece' ? 'Crystal earpiece' : 'Phones',
    loadValue(set.load),
    set.load.kind === 'phones' ? 'any pair of 2 to 4 kΩ; low ones only through a transformer' : '',
  );
  const wire = layout.lengths.reduce((a, b) => a + b, 0) / 1e3;
  add(
    cutLength(wire * 1.2),
    'Hook-up wire',
    `insulated copper, single strand, 0.6 to 1 mm, in ${layout.wiring.lines.length} pieces`,
    'any insulated copper wire; bare wire in sleeving',
  );
  add(
    '1',
    'Board',
    `dry wood, ${Math.ceil(layout.width - 1e-6)} × ${Math.ceil(layout.height - 1e-6)} mm, 12 to 20 mm thick`,
    'larger is no harm',
  );
  add(
    `${parts.filter(hasPosts).flatMap((p) => p.terminals).length}`,
    'Terminals',
    'screw terminals or brass screws with two washers each',
    '',
  );
  const pins = parts.filter(hasPins).flatMap((p) => p.terminals).length;
  if (pins > 0)
    add(`${pins}`, 'Solder tags or brass pins', 'where parts and wires meet', 'brass screws with two washers each');
  return rows;
}

const HOME_MADE: Readonly<Record<string, string>> = {
  foil: 'foil or plates',
  tubes: 'two tubes',
  book: 'two leaves',
  vanes: 'vanes',
};

/** Parts that end in terminals of their own on the board. */
const hasPosts = ({ kind, role }: BoardParts['parts'][number]): boolean =>
  kind === 'aerial terminal' || kind === 'earth terminal' || kind === 'outputs' || role === 'frame';

/** Ends on a board that have no terminal of their own. */
const hasPins = ({ kind }: BoardParts['parts'][number]): boolean =>
  kind === 'capacitor' || kind === 'resistor' || kind === 'detector' || kind === 'coil';

/** What is used up or borrowed while building. */
export function forTheWork(set: SetDescription, { parts }: BoardParts): string {
  const isWound = set.coils.some((coil) => coil.shape !== 'measured');
  return [
    'solder with a rosin core',
    'fine emery paper to bare the wire',
    'wood screws and glue',
    isWound && 'tape or thread and a little varnish for the coil',
    parts.some((p) => p.kind === 'loop') && 'flexible wire for the leads to the board',
    'two sheets of spare paper',
    'a 1.5 V cell and a meter to try it with',
  ]
    .filter(Boolean)
    .join('; ');
}

/** The resistor across an earpiece is a part of its own. */
const loadValue = (load: SetDescription['load']): string =>
  load.kind === 'crystal earpiece'
    ? `${formatQuantity(load.capacitance, 'capacitance')}; the resistor across it is listed above`
    : loadText(load);

const isTube = (coil: SetDescription['coils'][number]): coil is CoilOf<'solenoid' | 'multilayer' | 'bank-wound'> =>
  coil.shape === 'solenoid' || coil.shape === 'multilayer' || coil.shape === 'bank-wound';

function insteadOfDetector(set: SetDescription): string {
  switch (set.detector.kind) {
    case 'galena':
      return 'a germanium diode while you learn the set, then the crystal';
    case 'germanium':
      return 'any point-contact germanium diode; a low-barrier Schottky one';
    case 'schottky':
      return 'another Schottky of the same saturation current, within three times';
    case 'valve':
      // Type numbers and heater current from memory.
      return Math.abs(set.detector.ratedHeaterVoltage - 6.3) < 0.4
        ? 'any small-signal diode valve with a 6.3 V heater, such as one half of a 6AL5 or EB91 (0.3 A)'
        : 'any small-signal diode valve for the same heater voltage';
    default:
      return '';
  }
}
