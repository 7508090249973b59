import { setCircuit } from '../../built/set-circuit.ts';
import { AERIAL } from '../../kinds/arrangements/assembly.ts';
import { owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import { magnitude } from '../../numerics/complex.ts';
import type { SetDescription } from '../../set/description.ts';
import { linearSolver } from '../../solvers/linear/solve.ts';
import type { Volts } from '../../units/quantities.ts';
import { fieldsAtSite } from './field.ts';
import { receiver, receiveStation } from './receive-station.ts';
import type { StationReception } from './types.ts';

/**
 * What a station sends to the aerial's terminal with the set joined to it and tuned in, peak volts against earth: the
 * set draws on the aerial, so that it is another than the emf.
 * @returns undefined where the set has no such terminal.
 */
export function leadVoltage(set: SetDescription, station: StationReception): Volts | undefined {
  const circuit = setCircuit(set);
  const { assembly } = circuit;
  const usual = fieldsAtSite(set.place);
  // The field it was received with, whatever the time of day.
  const ready = receiver(circuit, (s) => ({ ...usual(s), fieldStrength: station.fieldStrength }));
  const { position, other, steady } = receiveStation(ready, set.place.stations[station.index]);
  const tuned = assembly.circuitAt(position, other);
  const has = tuned.elements.some((e) => e.kind !== 'mutual' && (e.from === AERIAL || e.to === AERIAL));
  if (!has) return undefined;
  const detector = {
    kind: 'resistor',
    ...owned(PART.detector, 'device', { detail: 'input resistance' }),
    from: assembly.carrierPort.from,
    to: assembly.carrierPort.to,
    resistance: steady.inputResistance,
  } as const;
  const solution = linearSolver({ ...tuned, elements: [...tuned.elements, detector] }).solve(station.frequency);
  return station.emf * magnitude(solution.voltage(AERIAL));
}
