import { type AdjustmentCode, adjustmentCode } from '../../../../engine/kinds/adjustment.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import type { QuantityKind } from '../../../../engine/units/parse.ts';
import type { Change, Setting } from '../../../../engine/vary/question.ts';
import { printable } from '../../printable.ts';
import { optionName } from '../fields/options.ts';
import { numeral, plural } from '../grammar.ts';

/** One setting that is changed, with all that is written for it. */
interface Changed {
  readonly setting: Setting;
  readonly changes: readonly Change[];
}

const figure = (value: unknown, kind?: QuantityKind): string => {
  if (typeof value === 'string') return value;
  if (typeof value !== 'number') return '';
  return kind === undefined ? formatNumber(value, 3) : formatQuantity(value, kind, 3);
};
const turnsOf = (value: unknown): string => `${figure(value)} ${plural(Number(value), 'turn', 'turns')}`;
/** "12 m (now 8 m)"; without what there is where it is not fitted. */
const insteadOf = ({ from, to }: Setting, kind?: QuantityKind): string =>
  from === undefined ? figure(to, kind) : `${figure(to, kind)} (now ${figure(from, kind)})`;
const isMore = ({ from, to }: Setting): boolean => Number(to) > Number(from);
const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};

const wireWords = ({ setting }: Changed): string => {
  const [wire, was] = [record(setting.to), record(setting.from)];
  return wire.strands === undefined
    ? `Thicker wire: ${figure(wire.size, 'length')} (now ${figure(was.size, 'length')})`
    : `Litz wire of ${figure(wire.strands)} strands of ${figure(wire.size, 'length')}`;
};

const TRAP_PLACES: Readonly<Record<string, string>> = {
  parallel: 'in the aerial lead',
  series: 'across aerial and earth',
  absorption: 'loosely coupled to the coil',
};
const trapWords = ({ setting, changes }: Changed): string => {
  // The first trap begins the list.
  const { stops, kind } = record(Array.isArray(setting.to) ? setting.to[0] : setting.to);
  const { turns, formerDiameter } = record(changes.find(({ path }) => path[0] === 'coils')?.to);
  return `A wave trap for ${printable(String(stops))}: coil of ${turnsOf(turns)} on a ${formerDiameter} tube, ${TRAP_PLACES[String(kind)]}`;
};

/** Of a coil that had the aerial straight across it. */
const WIDENS = ', so that less of the aerial’s capacitance lies across the coil and the tuning range is wider';

const largerEarth = ({ setting }: Changed): string => `A larger earth: ${insteadOf(setting, 'length')}`;
/** One phrase for each adjustment. */
const PHRASES: Readonly<Record<AdjustmentCode, (changed: Changed) => string>> = {
  turns: (changed) => `${isMore(changed.setting) ? 'More' : 'Fewer'} turns on every winding, taps in proportion`,
  'arrangement.aerialTap': ({ setting }) => `Aerial tap at ${turnsOf(setting.to)} (now ${figure(setting.from)})`,
  'arrangement.detectorTap': ({ setting }) =>
    setting.from === undefined
      ? `Detector tap at ${turnsOf(setting.to)}`
      : `Detector tap at ${turnsOf(setting.to)} (now ${figure(setting.from)})`,
  'arrangement.usedTurns': ({ setting }) => `${turnsOf(setting.to)} of the coil in use (now ${figure(setting.from)})`,
  'arrangement.seriesCapacitor': ({ setting, changes }) =>
    `Series capacitor of ${insteadOf(setting, 'capacitance')} in the aerial lead${
      changes.some(({ path }) => path.at(-1) === 'kind') ? WIDENS : ''
    }`,
  'arrangement.parallelCapacitor': ({ setting }) => `Capacitor of ${insteadOf(setting, 'capacitance')} across the coil`,
  'arrangement.distance': ({ setting }) => `Distance of the coils ${insteadOf(setting, 'length')}`,
  'arrangement.coupling': ({ setting }) => `Coupling coefficient ${insteadOf(setting, 'ratio')}`,
  'arrangement.traps': trapWords,
  'aerial.height': ({ setting }) => `A higher aerial: ${insteadOf(setting, 'length')}`,
  'aerial.length': ({ setting }) => `A longer aerial: ${insteadOf(setting, 'length')}`,
  'aerial.side': ({ setting, changes }) =>
    `A larger frame: ${insteadOf(setting, 'length')}, ${turnsOf(changes.find(({ path }) => path.at(-1) === 'turns')?.to)}`,
  'aerial.direction': ({ setting }) => `Frame or rod turned to ${figure(setting.to)}°`,
  'aerial.wire': wireWords,
  'coil.wire': wireWords,
  'aerial.turns': ({ setting }) =>
    `${isMore(setting) ? 'More' : 'Fewer'} turns on the frame or rod: ${insteadOf(setting)}`,
  'coil.turnsPerLayer': ({ setting }) =>
    `${isMore(setting) ? 'More' : 'Fewer'} turns in each layer of the coil: ${insteadOf(setting)}`,
  'coil.turns': ({ setting }) => `${isMore(setting) ? 'More' : 'Fewer'} turns on the coil: ${insteadOf(setting)}`,
  'coil.former': ({ setting }) =>
    `A former of ${optionName('coil.former', String(setting.to))} (now ${optionName('coil.former', String(setting.from))})`,
  'tuning.trimmer': ({ setting }) => `Capacitor of ${insteadOf(setting, 'capacitance')} across the tuning capacitor`,
  'tuning.kind': ({ setting }) => `A bought tuning capacitor of ${record(setting.to).maximum}`,
  'tuning.maximum': ({ setting }) => `A larger tuning capacitor: ${insteadOf(setting, 'capacitance')}`,
  'earth.kind': ({ setting }) => {
    const { count, spacing } = record(setting.to);
    return `Earth rods: ${numeral(Number(count))} like this one, ${spacing} apart`;
  },
  'earth.resistance': ({ setting }) => `A better earth: ${insteadOf(setting, 'resistance')}`,
  'earth.count': ({ setting }) => `More earth rods or wires: ${insteadOf(setting)}`,
  'earth.length': largerEarth,
  'earth.side': largerEarth,
  'detector.spot': () => 'A good spot on the crystal',
  'detector.kind': () => 'A germanium diode',
  'detector.bias': ({ setting }) => `A bias of ${insteadOf(setting, 'voltage')}`,
  'load.make': () => 'Balanced-armature phones',
  'load.transformer.ratio': ({ setting }) =>
    setting.from === undefined
      ? `A transformer of ${figure(setting.to)} to 1`
      : `A transformer of ${figure(setting.to)} to 1 (now ${figure(setting.from)} to 1)`,
  'load.resistor': ({ setting }) => `A resistor of ${insteadOf(setting, 'resistance')} across the earpiece`,
};

/** "Aerial tap at 20 turns (now 11) with detector tap at 13 turns (now 18)": what is changed, with figures. */
export function settingsWords({
  settings,
  changes,
}: {
  readonly settings: readonly Setting[];
  readonly changes: readonly Change[];
}): string {
  const phrases = settings.map((setting) => {
    const own = changes.filter(({ adjustment }) => adjustment === setting.adjustment);
    return PHRASES[adjustmentCode(setting.adjustment)]({ setting, changes: own });
  });
  return phrases.join('; ');
}
