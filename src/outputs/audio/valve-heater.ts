import { heatCathode } from '../../engine/parts/detector/thermionic/heater.ts';
import type { FieldOptions } from '../../engine/reception/field.ts';
import { type HeatedSet, heatedSet } from '../../engine/reception/heater.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { Kelvins, Ratio, Seconds } from '../../engine/units/quantities.ts';

/** Colder than this no electrons leave that anybody could hear. */
const COLDEST: Kelvins = 450;
const STEP: Kelvins = 30;
/** Quieter than this beside the warm valve is silence, dB. */
const SILENT = -120;

/**
 * The heater of a valve, switched on and off while it is listened to. Its cathode warms and cools by the engine's own
 * law, and the loudness follows what the engine has for the station listened to at every temperature; that the sound's
 * colour changes a little too is left out.
 */
export class ValveHeater {
  readonly #heated: HeatedSet;
  /** Loudness beside the warm valve, dB, from `COLDEST` up by `STEP`. */
  readonly #levels: number[];
  on = true;
  temperature: Kelvins;

  private constructor(heated: HeatedSet) {
    this.#heated = heated;
    this.temperature = heated.temperature;
    const warm = heated.pointAt(heated.temperature).soundPressureLevel;
    const count = Math.max(2, Math.ceil((heated.temperature - COLDEST) / STEP) + 1);
    this.#levels = Array.from({ length: count }, (_, k) => {
      const T = Math.min(COLDEST + k * STEP, heated.temperature);
      return Math.max(SILENT, heated.pointAt(T).soundPressureLevel - warm);
    });
  }

  /** @returns undefined for a set whose detector is no valve. */
  static of(set: SetDescription, station: number, fields: FieldOptions): ValveHeater | undefined {
    const heated = heatedSet(set, station, fields);
    return heated && new ValveHeater(heated);
  }

  /** As cold as the room, to be switched on. */
  cool(): void {
    this.temperature = this.#heated.heater.roomTemperature;
  }

  /** With other volts on it or another valve's rating: as warm as the one before was, and as much on or off. */
  asWarmAs(before: ValveHeater): this {
    this.on = before.on;
    this.temperature = before.temperature;
    return this;
  }

  /** Go on by so long. @returns amplitude beside the warm valve's. */
  after(time: Seconds): Ratio {
    const { heater, voltage } = this.#heated;
    this.temperature = heatCathode(this.temperature, this.on ? voltage : 0, time, heater);
    const at = (this.temperature - COLDEST) / STEP;
    if (!(at > 0)) return 0;
    const k = Math.min(Math.floor(at), this.#levels.length - 2);
    const t = Math.min(1, at - k);
    const level = this.#levels[k] + t * (this.#levels[k + 1] - this.#levels[k]);
    return level > SILENT + 1 ? 10 ** (level / 20) : 0;
  }
}
