import type { StationDescription } from '../../engine/set/place.ts';
import { ArrivingStation } from './fading.ts';
import { BLOCK, type ListeningOptions, SOUND_RATE } from './listening-types.ts';
import { madeProgramme, type ProgrammeLoop } from './programme.ts';
import { type OnAir, openLevels, type Pointed, type SetOnAir, seedOf } from './set-on-air.ts';

/** As far as this from the pointer a station is heard however faint it is there, Hz. */
const BESIDE = 66e3;
/** Share of the strongest station's voltage from which on another is heard wherever the pointer stands. */
const HEARD = 0.01;

/** What every station sends, block by block, as it arrives: its programme, and its fading by night. */
export class ProgrammesOnAir {
  /** Of each station, about 1: in phase with its carrier, and across it where it fades. */
  envelopes: Float32Array[] = [];
  quadratures: (Float32Array | undefined)[] = [];

  private readonly seed: number;
  private readonly prepared: boolean;
  /** By the station's place in the description's list. */
  private readonly given: Map<number, ProgrammeLoop>;
  /** By the station's name, once made up. */
  private readonly made = new Map<string, ProgrammeLoop>();
  /** By name and way, so that fading goes on when parts change. */
  private readonly arriving = new Map<string, ArrivingStation>();
  private onAir: readonly OnAir[] = [];
  private ways: ArrivingStation[] = [];
  private loops: (ProgrammeLoop | undefined)[] = [];
  private spare: Float32Array[] = [];
  private isHeard: boolean[] = [];

  constructor(seed: number, { programmes, prepared = false }: Pick<ListeningOptions, 'programmes' | 'prepared'>) {
    this.seed = seed;
    this.prepared = prepared;
    this.given = new Map(programmes);
  }

  setProgramme(index: number, loop: ProgrammeLoop | undefined): void {
    if (loop) this.given.set(index, loop);
    else this.given.delete(index);
  }

  /** The stations that are followed from now on. */
  follow(onAir: readonly OnAir[]): void {
    this.onAir = onAir;
    this.ways = onAir.map((one) => this.wayOf(one));
    this.loops = onAir.map((one) => this.given.get(one.index) ?? (this.prepared ? this.loopFor(one) : undefined));
    if (this.envelopes.length === onAir.length) return;
    this.envelopes = onAir.map(() => new Float32Array(BLOCK).fill(1));
    this.spare = onAir.map(() => new Float32Array(BLOCK));
    this.quadratures = this.spare.slice();
  }

  /** Which stations are worth a programme where the pointer stands. */
  listenAt(set: SetOnAir, at: Pointed): void {
    const levels = openLevels(set, at);
    const most = Math.max(1e-12, ...levels);
    this.isHeard = this.onAir.map(
      ({ station }, k) => Math.abs(station.frequency - at.pointer) < BESIDE || levels[k] > HEARD * most,
    );
    for (const [k, one] of this.onAir.entries()) if (this.isHeard[k]) this.loops[k] ??= this.loopFor(one);
  }

  /** The next block. @param clock samples since the beginning. @param isSilent carriers alone. */
  fill(clock: number, frames: number, isSilent: boolean): void {
    for (let k = 0; k < this.loops.length; k++) {
      const way = this.ways[k];
      const loop = this.isHeard[k] && !isSilent ? this.loops[k] : undefined;
      const depth = Math.min(this.onAir[k].station.modulation, 1);
      way.fill(loop, depth, clock, frames, this.envelopes[k], this.spare[k]);
      this.quadratures[k] = way.fades ? this.spare[k] : undefined;
    }
  }

  private wayOf({ station, field: { how, fading } }: OnAir): ArrivingStation {
    const key = `${station.name} ${how} ${fading}`;
    let way = this.arriving.get(key);
    if (!way) {
      const arrival = { how: how === 'off the air' ? ('nothing' as const) : how, fading, seed: this.seedOf(station) };
      this.arriving.set(key, (way = new ArrivingStation(arrival, SOUND_RATE)));
    }
    return way;
  }

  private loopFor({ index, station }: OnAir): ProgrammeLoop {
    let loop = this.made.get(station.name);
    if (!loop) this.made.set(station.name, (loop = madeProgramme(station.programme, this.seedOf(station))));
    return this.given.get(index) ?? loop;
  }

  private seedOf(station: StationDescription): number {
    return seedOf(station, this.seed);
  }
}
