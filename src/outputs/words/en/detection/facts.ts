import type { DetectorFacts } from '../../../../engine/reception/detection/detector-facts.ts';
import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';

const amperes = (i: number): string => formatQuantity(i, 'current', 2);
const ohms = (r: number): string => formatQuantity(r, 'resistance', 2);

type Library = Extract<DetectorFacts, { of: 'library' }>;

/** What each kind of the library is good at, by its id. */
const ABOUT: Readonly<Record<string, string>> = {
  'galena-good': 'A sensitive contact point under a light whisker: as good as a germanium diode.',
  'galena-fair': 'A contact point found in a minute of searching: a few dB less sensitive than a good one.',
  'galena-poor': 'Most contact points that work at all: high leakage and low sensitivity.',
  'iron-pyrites': 'Needs a firmer point than galena and keeps its contact better; somewhat less sensitive.',
  'zincite-bornite': 'Two crystals pressed together: steadier than a whisker and nearly as sensitive as galena.',
  carborundum: 'Needs a bias of about 1 V; with it, steady and not disturbed by knocks.',
  'silicon-crystal': 'Fused silicon under a firm point: steady, less sensitive than galena.',
  germanium: 'A point contact sealed in glass: sensitive and stable. Samples differ tenfold.',
  'gold-bonded-germanium':
    'A sharper curvature than the point contact, and a low resistance: for a tap or a low-resistance load.',
  'HSMS-2850': 'A zero-bias type of low resistance, ready without bias; low reverse-voltage rating.',
  'HSMS-2860': 'High resistance without bias: needs a high-impedance tuned circuit or a little bias.',
  'HSMS-2820': 'Very high resistance without bias; several in parallel have less.',
  'HSMS-2810': 'Low sensitivity without bias.',
  'HSMS-2800': 'Very high resistance without bias; high reverse-voltage rating.',
  '1N5711': 'Very high resistance without bias; high reverse-voltage rating.',
  silicon: 'Megohms below half a volt, so insensitive near 0 V: needs a bias of 0.2 to 0.3 V or a very strong station.',
};

const PROVENANCE: Readonly<Record<Library['provenance'], string>> = {
  'looked up': 'figures looked up',
  'from memory': 'figures from memory',
  'ranges from memory, figures chosen within them': 'ranges from memory, figures chosen within them',
};

/** Of the spreads, where nobody states one. */
const PRACTICE = 'common practice, no source';
const ratio = (x: number): string => formatNumber(x, 2);

function usual({ typical, spread }: Library): string {
  const { saturationCurrent: Is, ideality: n, seriesResistance: Rs } = typical;
  const shunt =
    typical.leakage > 0
      ? `${ohms(1 / typical.leakage)} and ${formatQuantity(typical.junctionCapacitance, 'capacitance', 2)} in parallel`
      : `${formatQuantity(typical.junctionCapacitance, 'capacitance', 2)} in parallel`;
  const current = `${amperes(Is / spread.saturationCurrent)} to ${amperes(Is * spread.saturationCurrent)}`;
  const ideality = `${formatNumber(n - spread.ideality, 3)} to ${formatNumber(n + spread.ideality, 3)}`;
  const series = spread.seriesResistance.map(ohms).join(' to ');
  const { seriesResistance: ofSeries = PRACTICE, rest = PRACTICE } = spread.source;
  const sources = ofSeries === rest ? rest : `series resistance: ${ofSeries}; the rest: ${rest}`;
  return `Typical values, and 90 % ranges of samples: saturation current ${amperes(Is)} (${current}), ideality ${formatNumber(n, 3)} (${ideality}), ${ohms(Rs)} in series (${series}), ${shunt}${spread.leakage > 1 && typical.leakage > 0 ? ` (leakage ×/÷ ${ratio(spread.leakage)})` : ''}. Source of the ranges: ${sources}.`;
}

function library(facts: Library): string[] {
  const about = ABOUT[facts.id];
  return [
    ...(about === undefined ? [] : [about]),
    usual(facts),
    ...(facts.insensitiveNearZero === undefined
      ? []
      : [
          `Near 0 V its junction has ${ohms(facts.insensitiveNearZero)}, hundreds of times that of a germanium diode, so that a weak carrier sends almost no current through it; it conducts only where the carrier itself exceeds about 0.4 V. A bias of 0.2 to 0.3 V, a transformer to high-resistance phones or a very strong station helps.`,
        ]),
    facts.knocks ? 'A knock may move it off its working point.' : 'A knock does not disturb it.',
    `Source: ${facts.source} (${PROVENANCE[facts.provenance]}).`,
  ];
}

/** What is known of a detector's kind: what it is, its typical values, how far samples differ, and the source. */
export function detectorFactSentences(facts: DetectorFacts): string[] {
  switch (facts.of) {
    case 'valve':
      return [
        'A thermionic diode: a hot cathode emits electrons, which reach the anode against a small voltage, so that some current flows without a signal.',
        'Its slope is kT/e of the cathode, about 88 mV at 1020 K: three times that of a crystal; it withstands strong signals and knocks.',
        'Source: Langmuir’s solution for a planar diode (1923); emission, spacing and heater are typical of small valves and from memory, a factor of three either way.',
      ];
    case 'measured':
      return ['Known by the points you measured. Source: your own bench.'];
    case 'library':
      return library(facts);
    case 'own':
      return [];
  }
}
