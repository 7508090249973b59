import type { Circuit } from '../../network/elements.ts';
import type { Hertz, Volts } from '../../units/quantities.ts';
import { type Device, type JunctionLaw, lawOf } from '../transient/devices.ts';
import type { EnvelopeLaw } from './device-law.ts';
import { lawTable, type ReducedDevice, reduceDevice } from './device-tables.ts';
import type { ListenerOptions } from './listener-types.ts';
import { type EnvelopeNetwork, envelopeNetwork } from './network.ts';

/** The detector of a listener, in the engine's units, and what of it becomes part of the network. */
export class FollowedDetector {
  law: EnvelopeLaw;
  private reduced: ReducedDevice;
  private closed: JunctionLaw | undefined;
  /** Largest voltage that will stand across it backwards. */
  private readonly backwards: Volts;
  private readonly options: ListenerOptions;

  constructor(options: ListenerOptions) {
    this.options = options;
    this.backwards = Math.max(5, 2.2 * (options.strongest ?? 0));
    this.reduced = reduceDevice(options.device, this.backwards);
    this.closed = lawOf(options.device);
    this.law = this.reduced.law;
  }

  /** A circuit taken apart, with this detector's resistance and leakage in it. */
  network(circuit: Circuit, frequency: Hertz): EnvelopeNetwork {
    const { outputs, radioOutputs = [] } = this.options;
    const { closed, reduced } = this;
    return envelopeNetwork(circuit, {
      frequency,
      law: closed,
      leakage: reduced.leakage,
      radioOutputs,
      audioOutputs: outputs,
    });
  }

  /** The tables for a network and the largest carrier to be met. @param rough made quickly, good to a decibel. */
  makeLaw(network: EnvelopeNetwork, strongest: () => Volts, rough = false): void {
    const { reduced, options } = this;
    if (!options.harmonics && reduced.curve === undefined) {
      this.law = reduced.law;
      return;
    }
    const harmonics = options.harmonics ? network.harmonics : [];
    const highest = strongest() / reduced.law.slope;
    this.law = { ...reduced.law, table: lawTable(reduced, { highest, harmonics, rough }) };
  }

  /** Another device in its place; `makeLaw` comes next. @returns whether circuits must be analysed again. */
  change(device: Device): boolean {
    const { reduced, closed } = this;
    this.reduced = reduceDevice(device, this.backwards);
    this.closed = lawOf(device);
    const partOfNetwork = (law: JunctionLaw | undefined) => [law?.seriesResistance ?? 0, law?.leakage ?? 0];
    const [before, after] = [partOfNetwork(closed), partOfNetwork(this.closed)];
    return this.reduced.leakage !== reduced.leakage || before.some((value, i) => value !== after[i]);
  }
}
