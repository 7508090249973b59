import type { SunState } from '../../../../engine/index.ts';
import { timeWords as texts } from '../../../../outputs/words/index.ts';
import { dayOf, onDay, type When } from '../../../description/when.ts';

interface Props {
  readonly when: When;
  /** The day shown while no moment is chosen. */
  readonly date: Date;
  readonly sunHere?: SunState;
  /** At the middle of the chosen station's path, and whose it is. */
  readonly sunBetween?: SunState;
  readonly stationName?: string;
  readonly onWhen: (when: When) => void;
}

const MINUTES = 1440;
const STEP = 5;
/** Middle of dusk for the button, after sunset. */
const DUSK_MS = 20 * 60_000;

/** Day, dusk or night, or any time of any day; with sunset and sunrise where the sky wave is reflected. */
export function TimeOfDay({ when, date, sunHere, sunBetween, stationName, onWhen }: Props) {
  const moment = when instanceof Date ? when : date;
  const sun = sunBetween ?? sunHere;
  const isMoment = when instanceof Date;
  const minutes = isMoment ? minutesOf(when) : middleOf(when, sun);
  const at = (minute: number) =>
    onWhen(new Date(Date.parse(`${dayOf(moment)}T00:00Z`) + Math.min(MINUTES - STEP, minute) * 60_000));
  const dusk = sun?.sunset && new Date(sun.sunset.getTime() + DUSK_MS);
  const isDusk = isMoment && (sun?.state === 'dusk' || sun?.state === 'dawn');
  return (
    <fieldset class="time-of-day">
      <legend>{texts.title}</legend>
      <div class="time-buttons">
        <button type="button" class="chip" aria-pressed={when === 'day'} onClick={() => onWhen('day')}>
          {texts.day}
        </button>
        <button
          type="button"
          class="chip"
          aria-pressed={isDusk}
          disabled={!dusk}
          title={dusk ? undefined : texts.needsPosition}
          onClick={() => dusk && onWhen(dusk)}
        >
          {texts.dusk}
        </button>
        <button type="button" class="chip" aria-pressed={when === 'night'} onClick={() => onWhen('night')}>
          {texts.night}
        </button>
        <label>
          <span class="visually-hidden">{texts.date}</span>
          <input
            type="date"
            value={dayOf(moment)}
            onInput={(event) => onWhen(onDay(moment, (event.currentTarget as HTMLInputElement).value))}
          />
        </label>
      </div>
      {sunHere && (
        <div class="time-slider">
          <SunBar sun={sun ?? sunHere} />
          <input
            type="range"
            class={`slider${isMoment ? '' : ' any-time'}`}
            min={0}
            max={MINUTES - STEP}
            step={STEP}
            value={minutes}
            aria-label={texts.slider}
            aria-valuetext={isMoment ? texts.moment(when) : texts.anyTime[when]}
            onInput={(event) => at(Number((event.currentTarget as HTMLInputElement).value))}
          />
          <div class="time-ends quiet" aria-hidden="true">
            {texts.hours.map((hour) => (
              <span key={hour}>{hour}</span>
            ))}
          </div>
        </div>
      )}
      <p aria-live="polite">{timeSentence(when, sunHere)}</p>
      {sun && <p class="quiet">{sunSentence(sun, sunBetween ? stationName : undefined)}</p>}
    </fieldset>
  );
}

const minutesOf = (date: Date): number => date.getUTCHours() * 60 + date.getUTCMinutes();

/** The middle of the day or of the night by the sun, minutes from midnight UTC; by the clock where the sun tells nothing. */
function middleOf(time: 'day' | 'night', sun: SunState | undefined): number {
  let noon = MINUTES / 2;
  if (sun?.sunrise && sun.sunset) {
    const rise = minutesOf(sun.sunrise);
    noon = rise + ((minutesOf(sun.sunset) - rise + MINUTES) % MINUTES) / 2;
  }
  const middle = (time === 'day' ? noon : noon + MINUTES / 2) % MINUTES;
  return Math.min(MINUTES - STEP, Math.round(middle / STEP) * STEP);
}

function timeSentence(when: When, sunHere: SunState | undefined): string {
  if (when === 'day') return texts.byDay;
  if (when === 'night') return texts.byNight;
  return texts.at(when, sunHere?.state);
}

function sunSentence({ sunset, sunrise, altitude }: SunState, name: string | undefined): string {
  return sunset && sunrise ? texts.sun(sunset, sunrise, name) : texts.sunStays(altitude > 0, name);
}

/** Night, dusk and day along the slider. */
function SunBar({ sun: { sunset, sunrise, altitude } }: { sun: SunState }) {
  const share = (date: Date) => ((date.getTime() / 60_000) % MINUTES) / MINUTES;
  const parts: [number, number][] = [];
  if (sunset && sunrise) {
    const [from, to] = [share(sunset), share(sunrise)];
    if (from < to) parts.push([from, to]);
    else parts.push([0, to], [from, 1]);
  } else if (altitude <= 0) parts.push([0, 1]);
  return (
    <div class="sun-bar" aria-hidden="true">
      {parts.map(([from, to]) => (
        <span key={from} style={{ left: `${100 * from}%`, width: `${100 * (to - from)}%` }} />
      ))}
    </div>
  );
}
