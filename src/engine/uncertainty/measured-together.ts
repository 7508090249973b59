import type { SetCircuit } from '../built/set-circuit.ts';
import type { Path } from '../kinds/adjustment.ts';
import type { MeasuredValue } from '../kinds/measured/measured-schema.ts';
import { standardErrorOf, USUAL_ERROR } from '../kinds/measured/usual-errors.ts';
import { correlationBetween, readCorrelations } from '../set/correlations.ts';
import type { SetDescription } from '../set/description.ts';
import { valueAtPath } from '../set/write.ts';
import { correlationFactor } from './correlation-factor.ts';
import type { Following, PartInput, SetInput } from './input.ts';
import { NINETY } from './spread.ts';

/** A measured value that an input is about, and the share that its error has in the input's deviate. */
interface Share {
  readonly path: Path;
  readonly share: number;
}

interface Tied {
  readonly input: SetInput;
  readonly shares: readonly Share[];
}

/**
 * Inputs that were measured, drawn as the readings leave them: figures that follow from the same readings have errors that
 * go together (coil and strays of one dial), and each sum of them is as sure as they are together.
 * @param inputs of the set, each with the spread that its own measured value leaves it
 * @param circuit of the set, whose description has the correlations
 * @returns the same inputs, those tied with the shares of the others that they follow
 */
export function measuredTogether(inputs: readonly SetInput[], circuit: SetCircuit): readonly SetInput[] {
  const { set } = circuit;
  const known = readCorrelations(set.correlations).filter(({ first, second }) =>
    [first, second].every((path) => isMeasured(set, path)),
  );
  // The strays lie in both ends of the scale, whether or not anything is said to go together.
  if (known.length === 0 && !set.tuning.measured) return inputs;
  const between = (a: Path, b: Path): number => correlationBetween(known, a, b);
  const tied = inputs.flatMap((input) => tiedInput(input, circuit, between) ?? []);
  const covariance = (a: readonly Share[], b: readonly Share[]): number =>
    a.reduce((sum, one) => sum + b.reduce((s, two) => s + one.share * two.share * between(one.path, two.path), 0), 0);
  const group = tied.filter((one) => tied.some((two) => one !== two && covariance(one.shares, two.shares) !== 0));
  const n = group.length;
  const R = correlationFactor(
    Float64Array.from({ length: n * n }, (_, k) => {
      const [i, j] = [Math.floor(k / n), k % n];
      return i === j ? 1 : covariance(group[i].shares, group[j].shares);
    }),
    n,
  );
  return inputs.map((input) => {
    const j = group.findIndex((one) => one.input.id === input.id);
    if (j < 0) return tied.find((one) => one.input.id === input.id)?.input ?? input;
    const follows = group
      .slice(0, j)
      .map((one, i): Following => ({ other: one.input.id, share: R[i * n + j] }))
      .filter(({ share }) => share !== 0);
    return { ...group[j].input, follows };
  });
}

const isMeasured = (set: SetDescription, path: Path): boolean => valueAtPath(set, path) !== undefined;

/** Which measured value an input is about, where it is one alone; −1: the input falls as the value rises. */
function aloneOf(id: PartInput, set: SetDescription): Share | undefined {
  const of = (part: Path, key: string, share = 1): Share => ({ path: [...part, 'measured', key], share });
  const coil = /^coil (\d+) (loss|inductance)$/.exec(id);
  if (coil) {
    const part = ['coils', Number(coil[1]) - 1];
    return coil[2] === 'loss' ? of(part, 'q', -1) : of(part, 'inductance');
  }
  switch (id) {
    case 'loop inductance':
      return of(['aerial'], 'inductance');
    case 'loop loss':
      return of(['aerial'], 'q', -1);
    case 'self-capacitance':
      // One draw serves all coils: of several it is none's own.
      return set.coils.length > 1
        ? undefined
        : of(set.coils.length === 1 ? ['coils', 0] : ['aerial'], 'selfCapacitance');
    case 'coupling':
      return of(['arrangement'], 'coupling');
    case 'aerial capacitance':
      return of(['aerial'], 'capacitance');
    case 'effective height':
      return of(['aerial'], 'effectiveHeight');
    case 'contact with the soil':
      return of(['earth'], 'resistance');
    case 'saturation current':
      return of(['detector'], 'saturationCurrent');
    case 'ideality':
      return of(['detector'], 'ideality');
    case 'series resistance':
      return of(['detector'], 'seriesResistance');
    case 'leakage':
      return of(['detector'], 'leakage');
    default:
      return undefined;
  }
}

function tiedInput(input: SetInput, circuit: SetCircuit, between: (a: Path, b: Path) => number): Tied | undefined {
  if (input.id === 'capacitor minimum' || input.id === 'capacitor maximum') return tiedEnd(input, circuit, between);
  const share = aloneOf(input.id, circuit.set);
  return share && isMeasured(circuit.set, share.path) ? { input, shares: [share] } : undefined;
}

/**
 * An end of the scale is the capacitor's own with the strays: what is measured of either has its part in the error.
 * Independent errors add in quadrature, those that go together by their correlation.
 */
function tiedEnd(
  input: SetInput,
  { set, tuning }: SetCircuit,
  between: (a: Path, b: Path) => number,
): Tied | undefined {
  const { measured, padder } = set.tuning;
  if (!measured || padder) return undefined;
  const end = input.id === 'capacitor minimum' ? 'minimum' : 'maximum';
  const value = end === 'minimum' ? tuning.min : tuning.max;
  const { [end]: own, stray } = measured;
  const amounts = [
    ...(own ? [{ path: pathOf(end), amount: errorOf(own, end) }] : []),
    ...(stray ? [{ path: pathOf('stray'), amount: errorOf(stray, 'stray') }] : []),
  ];
  const { low, high } = input.spread;
  const whole = (value * (high - low)) / (2 * NINETY);
  // What is not measured of it is its own.
  const rest = Math.max(0, whole - amounts.reduce((sum, { amount }) => sum + amount, 0));
  const variance = amounts.reduce(
    (sum, a) => sum + amounts.reduce((s, b) => s + a.amount * b.amount * between(a.path, b.path), 0),
    rest * rest,
  );
  if (!(variance > 0)) return undefined;
  const deviation = Math.sqrt(variance);
  const narrower = Math.min(1, deviation / whole);
  return {
    input: { ...input, spread: { ...input.spread, low: 1 - (1 - low) * narrower, high: 1 + (high - 1) * narrower } },
    shares: amounts.map(({ path, amount }) => ({ path, share: amount / deviation })),
  };
}

const pathOf = (key: string): Path => ['tuning', 'measured', key];

/** One standard error, F. */
const errorOf = (measured: MeasuredValue, of: 'minimum' | 'maximum' | 'stray'): number =>
  of === 'maximum'
    ? measured.value * standardErrorOf(measured, USUAL_ERROR.capacitance)
    : standardErrorOf(measured, USUAL_ERROR.smallCapacitance);
