import type { Metres } from '../../units/quantities.ts';
import { conductorDiameter, isCoveringUnknown, overallDiameter, overallRange, UNKNOWN_COVER } from '../wire/wire.ts';
import { windingOf } from './shapes.ts';
import type { WoundSpec } from './spec.ts';

/** A length of winding measured over many turns, ×/÷, 90 %. Common practice, no source. */
const MEASURED_PITCH = 1.02;
/** Turns wound touching stand 1.00 to 1.06 overall diameters apart, usually 1.02. Common practice, no source. */
const BY_HAND = { least: 1 / 1.02, most: 1.06 / 1.02 };
/** Turns further apart than this, bare diameter over pitch, keep their resistance when the pitch changes a little. */
const FAR = 0.6;

/**
 * The coil as it may come out closer and more open than described, 90 %: one thickness of the covering, with the room
 * that hands leave, sets pitch and length, and with them inductance, resistance and self-capacitance.
 * @param spec the coil as described, SI
 * @returns the closest and the most open winding; undefined where the pitch is measured and does not matter
 */
export function pitchEnds(spec: WoundSpec): readonly [WoundSpec, WoundSpec] | undefined {
  const { wire } = spec;
  const bare = conductorDiameter(wire);
  const wound = (pitch: Metres, overall?: Metres): WoundSpec => {
    const end = { ...spec, pitch: Math.max(pitch, 1.005 * bare), wire: overall ? { ...wire, overall } : wire };
    return end.shape === 'multilayer' ? { ...end, layerPitch: end.layerPitch ?? end.pitch } : end;
  };
  if ('pitch' in spec && spec.pitch !== undefined) {
    if (!(bare / spec.pitch > FAR)) return undefined;
    return [wound(spec.pitch / MEASURED_PITCH), wound(spec.pitch * MEASURED_PITCH)];
  }
  if (isCoveringUnknown(wire)) return [wound(bare / UNKNOWN_COVER.most), wound(bare / UNKNOWN_COVER.least)];
  const { pitch } = windingOf(spec);
  // Bare wire is laid with a thread, as thick as it happens to be.
  if ((wire.covering ?? 'bare') === 'bare' && (wire.strands ?? 1) === 1)
    return [wound(pitch / 1.2), wound(pitch * 1.2)];
  const over = overallDiameter(wire);
  const [thin, thick] = overallRange(wire);
  const together = (covering: number, hands: number): number =>
    Math.exp(Math.hypot(Math.log(covering), Math.log(hands)));
  return [
    wound(pitch / together(over / thin, BY_HAND.least), thin),
    wound(pitch * together(thick / over, BY_HAND.most), thick),
  ];
}
