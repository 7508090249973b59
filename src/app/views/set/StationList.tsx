import { isAssumed } from '../../../engine/index.ts';
import {
  assumedWords,
  besideWords,
  stationFrequency,
  stationSentence,
  setWords as texts,
  verdictWords,
} from '../../../outputs/words/index.ts';
import { useLeftOut } from '../../state/pieces.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { HeardBars } from './Heard.tsx';

/** Every station, best first; choosing one puts the pointer and the path on it. */
export function StationList() {
  const { written, reception, chosen, chooseStation } = useOpenSet();
  const leftOut = useLeftOut();
  const now = reception.value;
  return (
    <section class="stations" aria-labelledby="stations-title">
      <h2 id="stations-title">{texts.stations}</h2>
      {now && now.stations.length === 0 && <p class="quiet">{texts.noStations}</p>}
      <ul>
        {now?.best.map((index) => {
          const station = now.stations[index];
          const isChosen = chosen.value?.index === index;
          const { verdict } = station;
          return (
            <li key={index}>
              <button
                type="button"
                class="station"
                aria-current={isChosen ? 'true' : undefined}
                title={leftOut.has(index) ? texts.leftOut : stationSentence(station)}
                onClick={() => chooseStation(index)}
              >
                <span class="station-name">
                  {station.name}{' '}
                  {isAssumed(written.value, ['place', 'stations', index]) && (
                    <span class="assumed-mark">{assumedWords.mark}</span>
                  )}
                </span>{' '}
                <span class="station-heard">
                  <span class="station-frequency">{stationFrequency(station.frequency)}</span>{' '}
                  {leftOut.has(index) ? (
                    texts.leftOut
                  ) : (
                    <>
                      <HeardBars verdict={verdict} /> {verdictWords[verdict]}
                    </>
                  )}
                </span>{' '}
                <span class="station-disturbed">{leftOut.has(index) ? '' : besideWords(station)}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
