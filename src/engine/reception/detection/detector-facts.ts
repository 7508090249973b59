import type { DetectorDescription } from '../../kinds/detectors/detector-schema.ts';
import { detectorId } from '../../kinds/models.ts';
import { DETECTOR_KINDS, type DetectorKind } from '../../parts/detector/library.ts';
import { formatNumber, formatQuantity } from '../../units/format.ts';
import { temperatureVoltage } from '../../units/quantities.ts';

const PROVENANCE: Readonly<Record<DetectorKind['provenance'], string>> = {
  'looked up': 'figures looked up',
  'from memory': 'figures from memory',
  'ranges from memory, figures chosen within them': 'ranges from memory, figures chosen within them',
};

/** What is known of a detector's kind, in sentences: what it is, its usual figures, how far samples stray, who says so. */
export function detectorFacts(detector: DetectorDescription): string[] {
  if (detector.kind === 'valve')
    return [
      'A thermionic diode: electrons boil off a hot cathode and reach the anode against a little voltage, so some current flows with no signal at all.',
      'Its slope is kT/e of the cathode, some 88 mV at 1020 K: three times as blunt as a crystal’s, but it bears strong signals and knocks.',
      'Source: Langmuir’s solution for a planar diode (1923); emission, spacing and heater are typical of small valves and from memory, a factor of three either way.',
    ];
  if (detector.kind === 'measured') return ['Known by the points you measured. Source: your own bench.'];
  const kind = DETECTOR_KINDS.find((k) => k.id === detectorId(detector));
  if (!kind) return [];
  const { typical, range } = kind;
  const amps = (i: number) => formatQuantity(i, 'current', 2);
  const near0 = (Is: number, n: number) => (n * temperatureVoltage(300)) / Is;
  const ohms = (r: number) => formatQuantity(r, 'resistance', 2);
  const facts = [
    kind.about,
    `Usual figures: saturation current ${amps(typical.saturationCurrent)} (${amps(range.saturationCurrent[0])} to ${amps(range.saturationCurrent[1])}), ideality ${formatNumber(typical.ideality, 3)} (${formatNumber(range.ideality[0], 3)} to ${formatNumber(range.ideality[1], 3)}), ${ohms(typical.seriesResistance)} in series${typical.leakage > 0 ? `, leaking like ${ohms(1 / typical.leakage)}` : ''}, ${formatQuantity(typical.junctionCapacitance, 'capacitance', 2)} across it.`,
  ];
  if (kind.family === 'silicon')
    facts.push(
      `Why it is deaf: near 0 V its junction is ${ohms(near0(typical.saturationCurrent, typical.ideality))}, hundreds of times a germanium diode’s, so that a faint carrier sends next to no current through it into phones; only where the carrier itself swings past some 0.4 V does it open. A bias of 0.2 to 0.3 V, a transformer to high-resistance phones or a very strong station wakes it.`,
    );
  facts.push(
    kind.knocks ? 'A knock may lose its working point.' : 'A knock does not disturb it.',
    `Source: ${kind.source} (${PROVENANCE[kind.provenance]}).`,
  );
  return facts;
}
