import { ImpossibleValues } from '../facts/impossible-values.ts';
import type { Problem } from '../fields/problem.ts';
import {
  coilModel,
  detectorModel,
  earthModel,
  impedanceModel,
  loadModel,
  tuningModel,
  wireAerialModel,
} from '../kinds/models.ts';
import { cholesky } from '../numerics/cholesky.ts';
import { ferriteRod } from '../parts/aerial/ferrite-rod.ts';
import { frameAerial } from '../parts/aerial/frame.ts';
import { givenValue } from '../units/refusal.ts';
import type { SetDescription } from './description.ts';
import { windingProblems } from './windable.ts';
import { valueAtPath } from './write.ts';

const textOf = (path: readonly (string | number)[]): string =>
  path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');

/** Two fields are at odds: both are named, with what is in them. */
function capacitorEnds(path: string, part: object, { reason }: ImpossibleValues): Omit<Problem, 'path'> | undefined {
  const { minimum, maximum } = part as { minimum?: unknown; maximum?: unknown };
  if (reason.code !== 'capacitor.ends' || typeof minimum !== 'number' || typeof maximum !== 'number') return undefined;
  const field = `${path}.maximum`;
  return {
    expected: { code: 'less-than-field', max: maximum, field },
    given: { code: 'capacitance', value: minimum },
    hint: { code: 'lower-or-raise', field },
  };
}

/** Sizes a hair from nothing leave sums that no longer mean anything. */
function sensible(coil: { inductance: number; selfCapacitance?: number }): void {
  const { inductance: L, selfCapacitance: C = 0 } = coil;
  if (!(L > 0 && L < 1e4 && C >= 0 && C < 1e-6)) throw new ImpossibleValues({ code: 'coil.no-coil', inductance: L });
}

/**
 * Parts whose sizes are each possible but do not go together: what the models refuse, as problems with their path.
 * A set without any can be built.
 */
export function buildProblems(set: SetDescription): Problem[] {
  const problems: Problem[] = [];
  const build = (path: readonly (string | number)[], make: () => unknown): void => {
    try {
      make();
    } catch (refusal) {
      if (!(refusal instanceof RangeError)) throw refusal;
      if (!(refusal instanceof ImpossibleValues)) {
        problems.push({
          path: textOf(path),
          expected: { code: 'buildable' },
          given: givenValue(valueAtPath(set, path)),
        });
        return;
      }
      const part = valueAtPath(set, path) as object;
      const { field, reason } = refusal;
      const at = field !== undefined && field in part ? [...path, field] : path;
      const problem = capacitorEnds(textOf(path), part, refusal) ?? {
        expected: { code: 'buildable' },
        given: givenValue(valueAtPath(set, at)),
        hint: { code: 'unbuildable', reason },
      };
      problems.push({ path: textOf(at), ...problem });
    }
  };
  const { aerial, arrangement } = set;
  build(['aerial'], () => {
    switch (aerial.kind) {
      case 'frame':
        return sensible(frameAerial({ ...aerial, wire: { diameter: aerial.wire.size } }));
      case 'ferrite rod':
        return sensible(ferriteRod({ ...aerial }));
      case 'measured':
        return undefined;
      case 'impedance':
        return impedanceModel(aerial);
      default:
        return wireAerialModel(aerial);
    }
  });
  build(['earth'], () => earthModel(set.earth));
  set.coils.forEach((coil, i) => {
    const clashes = windingProblems(coil, `coils[${i}]`);
    if (clashes.length > 0) problems.push(...clashes);
    else build(['coils', i], () => sensible(coilModel(coil)));
  });
  build(['tuning'], () => tuningModel(set.tuning));
  const second = (path: readonly (string | number)[], of: SetDescription['arrangement'] | undefined): void => {
    if (of?.kind === 'two circuits' && of.aerialTuning) build(path, () => tuningModel(of.aerialTuning!));
  };
  second(['arrangement', 'aerialTuning'], arrangement);
  for (const [i, band] of (set.bands ?? []).entries())
    second(['bands', i, 'arrangement', 'aerialTuning'], band.arrangement);
  if (arrangement.kind === 'elements' && problems.length === 0) problems.push(...closeCoupling(set, arrangement));
  build(['detector'], () => detectorModel(set.detector));
  build(['load'], () => loadModel(set.load));
  return problems;
}

/** Mutuals of a list that no coils could have: k of 1 and more, or three coils each too close to the others. */
function closeCoupling(
  set: SetDescription,
  { elements }: Extract<SetDescription['arrangement'], { kind: 'elements' }>,
): Problem[] {
  const windings = elements.flatMap((e) => {
    if (e.kind === 'inductor') return [{ name: e.name, inductance: e.inductance }];
    if (e.kind !== 'coil') return [];
    return [{ name: e.name, inductance: coilModel(set.coils.find((c) => c.name === e.coil)!).inductance }];
  });
  const n = windings.length;
  const matrix = new Float64Array(n * n);
  const index = (name: string) => windings.findIndex((w) => w.name === name);
  windings.forEach(({ inductance }, i) => {
    matrix[i * n + i] = inductance;
  });
  for (const [i, e] of elements.entries()) {
    if (e.kind !== 'mutual') continue;
    const [a, b] = [index(e.first), index(e.second)];
    matrix[a * n + b] += e.mutual;
    matrix[b * n + a] += e.mutual;
    if (cholesky(matrix, n, 1e-9)) continue;
    const most = Math.sqrt(windings[a].inductance * windings[b].inductance);
    return [
      {
        path: `arrangement.elements[${i}].mutual`,
        expected: { code: 'mutual.less-than', max: most },
        given: givenValue(e.mutual),
        hint: { code: 'coupling-too-close' },
      },
    ];
  }
  return [];
}
