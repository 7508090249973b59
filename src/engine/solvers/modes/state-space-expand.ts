import { type Warning, warning } from '../../facts/warning.ts';
import { type Circuit, type Mutual, valueAt } from '../../network/elements.ts';
import type { Complex } from '../../numerics/complex.ts';
import type { Hertz } from '../../units/quantities.ts';
import { impedanceSections } from './state-space-impedance.ts';

interface Branch {
  readonly from: string;
  readonly to: string;
}
/** A circuit as constant R, L, C, emfs and detectors only: what differential equations can be written for. */
export interface Primitives {
  readonly conductances: (Branch & { readonly siemens: number })[];
  readonly capacitors: (Branch & { readonly farads: number })[];
  readonly inductors: (Branch & { readonly name: string; readonly henries: number; readonly ohms: number })[];
  /** Joins of no resistance. */
  readonly shorts: Branch[];
  readonly emfs: (Branch & { readonly name: string; readonly source?: Complex; readonly volts?: number })[];
  readonly detectors: (Branch & { readonly name: string })[];
  readonly mutuals: readonly Mutual[];
  readonly warnings: Warning[];
}

export interface FreezeOptions {
  /** Where values that vary with frequency are read, Hz: the carrier. */
  readonly frequency: Hertz;
  /** Where the resistance of phones, chokes and transformer windings is read, Hz. Default 1000. */
  readonly audioFrequency?: Hertz;
}

/** From here up a winding is for audio, H: its loss at radio frequency is of no interest, that at audio is. */
const AUDIO_WINDING = 0.05;

/** @throws RangeError naming the element whose value no part can have. */
export function expandCircuit(circuit: Circuit, { frequency, audioFrequency = 1000 }: FreezeOptions): Primitives {
  if (!(frequency > 0 && Number.isFinite(frequency)))
    throw new RangeError(`a frequency must be above 0 Hz, not ${frequency}`);
  const out: Primitives = {
    conductances: [],
    capacitors: [],
    inductors: [],
    shorts: [],
    emfs: [],
    detectors: [],
    mutuals: circuit.elements.filter((e): e is Mutual => e.kind === 'mutual'),
    warnings: [],
  };
  const dc = directPaths(circuit);
  const resistor = (from: string, to: string, ohms: number, name: string) => {
    if (!(ohms >= 0)) throw new RangeError(`the resistance of "${name}" must be 0 Ω or more, not ${ohms}`);
    if (ohms === 0) out.shorts.push({ from, to });
    else if (Number.isFinite(ohms)) out.conductances.push({ from, to, siemens: 1 / ohms });
  };
  const inductor = (from: string, to: string, henries: number, ohms: number, name: string) => {
    if (!(henries >= 0 && Number.isFinite(henries)))
      throw new RangeError(`the inductance of "${name}" must be 0 H or more, not ${henries}`);
    if (!(ohms >= 0)) throw new RangeError(`the resistance of "${name}" must be 0 Ω or more, not ${ohms}`);
    if (henries === 0) resistor(from, to, ohms, name);
    else if (Number.isFinite(ohms)) out.inductors.push({ from, to, name, henries, ohms });
  };
  const capacitor = (from: string, to: string, farads: number, tan: number, name: string) => {
    if (!(farads >= 0 && Number.isFinite(farads)))
      throw new RangeError(`the capacitance of "${name}" must be 0 F or more, not ${farads}`);
    if (!(tan >= 0 && Number.isFinite(tan)))
      throw new RangeError(`the loss tangent of "${name}" must be 0 or more, not ${tan}`);
    if (farads === 0) return;
    const w = 2 * Math.PI * frequency;
    if (tan === 0) out.capacitors.push({ from, to, farads });
    else if (dc(from, to)) {
      out.capacitors.push({ from, to, farads });
      out.conductances.push({ from, to, siemens: w * farads * tan });
    } else {
      // In series, so that a dielectric loss does not become a leak for direct current:
      // 1/(jωC(1 − j·tan δ)) = (tan δ − j)/(ωC(1 + tan²δ)).
      const k = 1 + tan * tan;
      const middle = `${name}\u0000loss`;
      out.capacitors.push({ from, to: middle, farads: farads * k });
      out.conductances.push({ from: middle, to, siemens: (w * farads * k) / tan });
    }
  };
  for (const e of circuit.elements) {
    switch (e.kind) {
      case 'resistor':
        resistor(e.from, e.to, valueAt(e.resistance, frequency), e.id);
        break;
      case 'inductor': {
        const at = e.inductance >= AUDIO_WINDING ? audioFrequency : frequency;
        inductor(e.from, e.to, e.inductance, valueAt(e.resistance, at), e.id);
        break;
      }
      case 'capacitor':
        capacitor(e.from, e.to, e.capacitance, valueAt(e.lossTangent ?? 0, frequency), e.id);
        break;
      case 'impedance': {
        const { sections, misfit } = impedanceSections(e.impedance, frequency);
        if (misfit > 0.01) {
          out.warnings.push(warning('waves.impedance-misfit', { part: e.owner.part, misfit, frequency }));
        }
        let node = e.from;
        sections.forEach((s, i) => {
          const next = i === sections.length - 1 ? e.to : `${e.id}\u0000${i}`;
          const part = `${e.id} (part ${i + 1})`;
          if (s.kind === 'resistance' || s.kind === 'lag' || s.kind === 'choke') resistor(node, next, s.value, part);
          if (s.kind === 'inductance') inductor(node, next, s.value, 0, part);
          if (s.kind === 'choke') inductor(node, next, s.value / s.corner!, 0, part);
          if (s.kind === 'capacitance') capacitor(node, next, s.value, 0, part);
          if (s.kind === 'lag') capacitor(node, next, 1 / (s.corner! * s.value), 0, part);
          node = next;
        });
        if (sections.length === 0) out.shorts.push(e);
        break;
      }
      case 'source':
        out.emfs.push({ from: e.from, to: e.to, name: e.id, source: e.emf });
        break;
      case 'cell':
        out.emfs.push({ from: e.from, to: e.to, name: e.id, volts: e.voltage });
        break;
      case 'detector':
        out.detectors.push({ from: e.from, to: e.to, name: e.id });
        break;
    }
  }
  return out;
}

/** Whether a steady current can pass between two nodes by coils and joins alone. */
function directPaths(circuit: Circuit): (a: string, b: string) => boolean {
  const parent = new Map<string, string>();
  const root = (n: string): string => {
    const p = parent.get(n) ?? n;
    return p === n ? n : root(p);
  };
  for (const e of circuit.elements) {
    if (e.kind === 'inductor' || e.kind === 'source' || e.kind === 'cell') parent.set(root(e.from), root(e.to));
  }
  return (a, b) => root(a) === root(b);
}
