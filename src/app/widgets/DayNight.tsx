import { dialWords as texts } from '../../outputs/words/index.ts';
import { useOpenSet } from '../state/set-context.ts';

/** Day or night, for the whole page. */
export function DayNight() {
  const { time } = useOpenSet();
  return (
    <fieldset class="day-night">
      <legend class="visually-hidden">{texts.timeOfDay}</legend>
      {(['day', 'night'] as const).map((word) => (
        <label key={word}>
          <input
            type="radio"
            name="time"
            value={word}
            checked={time.value === word}
            onChange={() => {
              time.value = word;
            }}
          />
          <span>{texts.times[word]}</span>
        </label>
      ))}
    </fieldset>
  );
}
