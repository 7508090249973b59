import { once } from '../../../engine/numerics/lazily.ts';
import type { Reception, StationReception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import { type Hertz, LIGHT_SPEED, type Volts } from '../../../engine/units/quantities.ts';
import { detectorName, type FigureName, figureMeanings, figureTexts } from '../../words/index.ts';
import { stationOf } from '../model/from-set.ts';
import { dischargedBy, loopOfSet, tunerOf } from '../model/scene-parts.ts';
import { USUAL_TONE } from '../model/wave-programme.ts';
import type { WaveSpec, WaveWorkingPoint } from '../model/wave-spec.ts';
import { createWaves, type Waves } from '../model/waves.ts';

/** What a caption may name in braces, and what stands there for this set. */
export type CaptionFigures = Readonly<Record<FigureName, string>>;

/** Every name a caption may use, with what it means: for who writes their own. */
export const meaningsOfFigures = (): readonly (readonly [name: string, meaning: string])[] =>
  Object.entries(figureMeanings);

/** Names that captions written earlier may hold. */
const FORMER_NAMES: Readonly<Record<string, FigureName>> = {
  quarter: 'quarterWave',
  toneQuarter: 'toneQuarterWave',
  aerialSays: 'aerialNote',
  loopSays: 'loopNote',
  tuner: 'tuningNote',
  lift: 'voltageGain',
  broad: 'bandwidth',
  buildUp: 'riseTime',
  tapSays: 'tapNote',
  detectorOut: 'detectorOutput',
  direct: 'directVoltage',
  audio: 'audioVoltage',
  drain: 'timeConstant',
  drains: 'dischargeNote',
  below: 'dipNote',
};

/** A detector tapped down to less than this share of the tuned circuit's voltage is worth a word. */
const TAPPED = 0.9;
/** Drawing and path are two ways to one figure; beyond this difference the drawing's is no more than "about". */
const ALIKE = 0.08;

const volts = (v: number): string => formatQuantity(v, 'voltage', 2);
const metres = (m: number): string => formatQuantity(m, 'length', 2);
const seconds = (t: number, digits = 2): string => formatQuantity(t, 'time', digits);

/** A set on another carrier with its own coil and with the carrier's. */
export interface CoilsAtCarrier {
  readonly carrier: Hertz;
  readonly reach: NonNullable<WaveWorkingPoint['reach']>;
  readonly kept: Pick<WaveWorkingPoint, 'atDetector' | 'loadedQ'>;
  readonly changed: Pick<WaveWorkingPoint, 'atDetector' | 'loadedQ'>;
}

/** What a scene has besides its own waves. */
export interface SceneVariants {
  /** Where it has the set on another carrier with its own coil. */
  readonly coils?: CoilsAtCarrier;
  /** Carrier at the detector in each row, V; left out: that of the scene. */
  readonly rowVoltages?: readonly Volts[];
}

/** The figures of the current set. */
export function figuresOf(
  waves: Waves,
  set?: SetDescription,
  reception?: Reception,
  index?: number,
  { coils, rowVoltages = [waves.spec.atDetector] }: SceneVariants = {},
): CaptionFigures {
  const { spec } = waves;
  const station = reception && stationOf(reception, index);
  const own = station && Math.abs(station.frequency - spec.carrier) < 100 ? station : undefined;
  const tone = spec.programme.kind === 'tones' ? (spec.programme.tones[0]?.frequency ?? USUAL_TONE) : USUAL_TONE;
  const arriving = reception ? reception.stations.filter((s) => s.emf > 0).length : spec.neighbours.length + 1;
  return {
    set: set?.name ?? figureTexts.exampleSet,
    place: set?.place.name ?? figureTexts.examplePlace,
    station: own?.name ?? figureTexts.exampleStation(0),
    stations: figureTexts.stations(arriving),
    heard: own ? figureTexts.heard(own.verdict) : '',
    ...sentFigures(spec, tone),
    ...tunedFigures(waves, set),
    ...outputFigures(waves, tone, set, own),
    ...coilFigures(coils),
    rowVoltages: figureTexts.rowVoltages(Math.min(...rowVoltages), Math.max(...rowVoltages)),
  };
}

/** Of a coil that stays on another band. */
function coilFigures(coils: CoilsAtCarrier | undefined) {
  if (!coils) return { oldCoilNote: '', oldCoilCause: '' };
  const { carrier, reach, kept, changed } = coils;
  const facts = {
    ...reach,
    carrier,
    kept: kept.atDetector,
    changed: changed.atDetector,
    keptQ: kept.loadedQ,
    changedQ: changed.loadedQ,
  };
  return { oldCoilNote: figureTexts.oldCoilNote(facts), oldCoilCause: figureTexts.oldCoilCause(facts) };
}

/** Of the carrier and its programme. */
function sentFigures({ carrier, depth }: WaveSpec, tone: number) {
  const wavelength = LIGHT_SPEED / carrier;
  return {
    carrier: formatQuantity(carrier, 'frequency', 4),
    cycle: seconds(1 / carrier, 3),
    wavelength: metres(wavelength),
    quarterWave: metres(wavelength / 4),
    cyclesPerTone: formatNumber(carrier / tone, 3),
    tone: formatQuantity(tone, 'frequency', 3),
    toneCycle: seconds(1 / tone),
    toneQuarterWave: metres(LIGHT_SPEED / tone / 4),
    depth: formatQuantity(depth, 'ratio', 2),
    sideband: formatQuantity(depth / 2, 'ratio', 2),
  };
}

/** Of aerial and tuned circuit. */
function tunedFigures(waves: Waves, set?: SetDescription) {
  const { carrier, atAerial, atTuned, loadedQ } = waves.spec;
  const loop = loopOfSet(set);
  return {
    aerialNote: figureTexts.aerialNote(loop),
    loopNote: figureTexts.loopNote(loop),
    aerialVoltage: volts(atAerial),
    tunedVoltage: volts(atTuned),
    tunedPeak: volts(waves.scale('tuned').high),
    tuningNote: figureTexts.tuningNote(tunerOf(set)),
    voltageGain: formatNumber(atTuned / atAerial, 2),
    q: formatNumber(loadedQ, 2),
    bandwidth: formatQuantity(carrier / loadedQ, 'frequency', 2),
    riseTime: seconds(loadedQ / Math.PI / carrier),
  };
}

/** Direct voltage of the carrier alone: a programme on it raises the mean, the more the fainter it is. */
function steadyVoltage({ spec }: Waves, tone: Hertz): Volts {
  const programme: WaveSpec['programme'] = { kind: 'tones', tones: [{ frequency: tone, share: 1 }] };
  return createWaves({ ...spec, programme, depth: 0, neighbours: [] }).meanAt('phones', 0);
}

/** Of the detector and of what comes after it. */
function outputFigures(waves: Waves, tone: number, set?: SetDescription, own?: StationReception) {
  const { atDetector, atTuned, detectorId, bothHalves = false, load } = waves.spec;
  // Following the capacitor takes time: only where the set's own figures do not say it.
  const trough = once(() => waves.meanAt('phones', 0.5 / tone));
  const crest = once(() => waves.meanAt('phones', 0));
  const drawn = (value: number, calculated = value): string =>
    Math.abs(value / calculated - 1) > ALIKE ? figureTexts.about(volts(value)) : volts(value);
  return {
    detectorVoltage: volts(atDetector),
    tapNote: atDetector < TAPPED * atTuned ? figureTexts.tapNote(atTuned) : '',
    detectorPeak: volts((waves.scale('tuned').high * atDetector) / atTuned),
    detectorOutput: volts(waves.scale('detector').high),
    detector: detectorName(detectorId),
    rectifierNote: figureTexts.rectifierNote(bothHalves),
    directVoltage: drawn(steadyVoltage(waves, tone), own?.directVoltage),
    audioVoltage: drawn(Math.abs(crest() - trough()) / 2, own?.audioVoltage),
    capacitor: formatQuantity(load.capacitance, 'capacitance', 2),
    timeConstant: seconds(load.resistance * load.capacitance),
    dischargeNote: figureTexts.dischargeNote(dischargedBy(set)),
    dipNote: load.inductance && trough() < 0 ? figureTexts.dipNote : '',
  };
}

/** A text with the figures put in; names that are not known stay as they are. */
export function filled(text: string, figures: Partial<CaptionFigures>): string {
  const known: Readonly<Record<string, string | undefined>> = figures;
  const valueFor = (name: string) =>
    Object.hasOwn(known, name)
      ? known[name]
      : Object.hasOwn(FORMER_NAMES, name)
        ? known[FORMER_NAMES[name]]
        : undefined;
  return text
    .replace(/\{(\w+)\}/g, (whole, name: string) => valueFor(name) ?? whole)
    .replace(/ {2,}/g, ' ')
    .trim();
}
