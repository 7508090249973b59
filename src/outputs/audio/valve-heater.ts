import type { Detector } from '../../engine/parts/detector/detector.ts';
import { cold, type HeaterState, heatCathode } from '../../engine/parts/detector/thermionic/heater.ts';
import { type HeatedSet, heatedSet } from '../../engine/reception/detection/heater.ts';
import type { FieldOptions } from '../../engine/reception/path/field.ts';
import type { SetDescription } from '../../engine/set/description.ts';
import type { Kelvins, Ratio, Seconds } from '../../engine/units/quantities.ts';

/** Colder than this no electrons leave that anybody could hear. */
const COLDEST: Kelvins = 450;
/** From here up the valve itself is heard at its temperature; below, where next to nothing is left, only its loudness. */
const SOLVED: Kelvins = 650;
const STEP: Kelvins = 20;
/** The valve's curve is made anew when its cathode is this much warmer or colder. */
const NEW_CURVE: Kelvins = 15;
/** Quieter than this beside the warm valve is silence, dB. */
const SILENT = -120;

/**
 * The heater of a valve, switched on and off while it is listened to: its cathode warms and cools by the engine's own law,
 * and what is heard is the valve at that temperature.
 */
export class ValveHeater {
  readonly #heated: HeatedSet;
  readonly #warm: Detector;
  /** Loudness beside that at `SOLVED`, dB, from `COLDEST` up by `STEP`. */
  readonly #levels: number[];
  /** Of the curve that is played; undefined until it is first asked for. */
  #curveAt: Kelvins | undefined;
  #state: HeaterState;
  on = true;

  private constructor(heated: HeatedSet, warm: Detector) {
    this.#heated = heated;
    this.#warm = warm;
    this.#state = heated.warm;
    this.#curveAt = heated.warm.cathode;
    const full = heated.pointAt(SOLVED).soundPressureLevel;
    const count = (SOLVED - COLDEST) / STEP + 1;
    this.#levels = Array.from({ length: count }, (_, k) =>
      Math.max(SILENT, heated.pointAt(COLDEST + k * STEP).soundPressureLevel - full),
    );
  }

  /** @param warm the set's own detector. @returns undefined for a set whose detector is no valve. */
  static of(set: SetDescription, station: number, warm: Detector, fields: FieldOptions): ValveHeater | undefined {
    const heated = heatedSet(set, station, fields);
    return heated && new ValveHeater(heated, warm);
  }

  /** Of the cathode, now. */
  get temperature(): Kelvins {
    return this.#state.cathode;
  }

  /** As cold as the room, to be switched on. */
  cool(): void {
    this.#state = cold(this.#heated.heater);
  }

  /** With other volts on it or another valve's rating: as warm as the one before was, and as much on or off. */
  asWarmAs(before: ValveHeater): this {
    this.on = before.on;
    this.#state = before.#state;
    return this;
  }

  /** Go on by so long. */
  wait(time: Seconds): void {
    const { heater, voltage } = this.#heated;
    this.#state = heatCathode(this.#state, this.on ? voltage : 0, time, heater);
  }

  /** The valve as it is now, where that is noticeably not as it was when last asked; rough while it is on its way. */
  newCurve(): { readonly device: Detector; readonly rough: boolean } | undefined {
    const { detectorAt } = this.#heated;
    const temperature = this.#heated.warm.cathode;
    const isWarm = Math.abs(this.temperature - temperature) < 3;
    const wanted = isWarm ? temperature : Math.max(SOLVED, this.temperature);
    if (wanted === this.#curveAt) return undefined;
    if (!isWarm && this.#curveAt !== undefined && Math.abs(wanted - this.#curveAt) < NEW_CURVE) return undefined;
    this.#curveAt = wanted;
    return isWarm ? { device: this.#warm, rough: false } : { device: detectorAt(wanted), rough: true };
  }

  /** Amplitude beside what the curve gives: 1 but for the coldest. */
  get share(): Ratio {
    if (this.temperature >= SOLVED) return 1;
    const at = (this.temperature - COLDEST) / STEP;
    if (!(at > 0)) return 0;
    const k = Math.min(Math.floor(at), this.#levels.length - 2);
    const level = this.#levels[k] + (at - k) * (this.#levels[k + 1] - this.#levels[k]);
    return level > SILENT + 1 ? 10 ** (level / 20) : 0;
  }
}
