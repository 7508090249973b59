import { EARTH, type Element } from '../../network/elements.ts';
import { owned, type PartId } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import type { Port } from '../../network/port.ts';
import { type Assembly, OUT } from './assembly.ts';

export type Wiring = Assembly['wiring'];

export interface WiredDetector {
  readonly elements: readonly Element[];
  readonly carrierPort: Port;
  readonly outputPort: Port;
}

/** Pump capacitor of a doubler: passes the carrier, keeps the direct voltage in. */
export const PUMP_CAPACITANCE = 1e-9;

/**
 * The detector between the tuned circuit and the load.
 * @param live where the carrier is taken; `other` the opposite end for full-wave, whose middle must be earthed.
 * @param bias volts in the direction that helps conduction; 0 for none.
 * @param junction capacitance across each device. @param cathode where a single one's other end goes.
 */
export function wireDetector(
  wiring: Wiring,
  live: string,
  other: string,
  bias: number,
  junction: number,
  cathode = OUT,
): WiredDetector {
  const elements: Element[] = [];
  let anode = live;
  if (bias !== 0) {
    anode = 'biased';
    elements.push({ kind: 'cell', ...owned(PART.biasCell, 'bias'), from: live, to: anode, voltage: bias });
  }
  const device = (part: PartId, from: string, to: string): void => {
    elements.push({ kind: 'detector', ...owned(part, 'device'), from, to });
    if (junction > 0)
      elements.push({
        kind: 'capacitor',
        ...owned(part, 'junction-capacitance'),
        from,
        to,
        capacitance: junction,
      });
  };
  if (wiring === 'single') {
    device(PART.detector, anode, cathode);
    return { elements, carrierPort: { from: anode, to: cathode }, outputPort: { from: anode, to: cathode } };
  }
  if (wiring === 'full-wave') {
    device(PART.detector, live, OUT);
    device(PART.secondDetector, other, OUT);
    return {
      elements: elements.filter((e) => e.kind !== 'cell'),
      carrierPort: { from: live, to: other },
      outputPort: { from: live, to: OUT },
    };
  }
  elements.push({
    kind: 'capacitor',
    ...owned(PART.pumpCapacitor, 'part'),
    from: live,
    to: 'pump',
    capacitance: PUMP_CAPACITANCE,
  });
  device(PART.detector, 'pump', OUT);
  device(PART.secondDetector, EARTH, 'pump');
  return {
    elements: elements.filter((e) => e.kind !== 'cell'),
    carrierPort: { from: 'pump', to: EARTH },
    outputPort: { from: EARTH, to: OUT },
  };
}
