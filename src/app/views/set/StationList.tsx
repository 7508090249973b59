import { isAssumed } from '../../../engine/index.ts';
import {
  assumedWords,
  bandSwitchWords,
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
  const { written, reception, chosen, chooseOnBestBand, band, bandsReceived } = useOpenSet();
  const leftOut = useLeftOut();
  const now = reception.value;
  /** The band that has a station, where it is not the one that is looked at. */
  const otherBand = (index: number): string | undefined => {
    const { bands, bestOf } = bandsReceived.value ?? { bands: [], bestOf: [] };
    const best = bestOf[index];
    return band.value === undefined || best === undefined || best === band.value ? undefined : bands[best]?.name;
  };
  return (
    <section class="stations" aria-labelledby="stations-title">
      <h2 id="stations-title">{texts.stations}</h2>
      {now && now.stations.length === 0 && <p class="quiet">{texts.noStations}</p>}
      <ul>
        {now?.best.map((index) => {
          const station = now.stations[index];
          const isChosen = chosen.value?.index === index;
          const { verdict } = station;
          const other = verdict === 'out of range' ? otherBand(index) : undefined;
          return (
            <li key={index}>
              <button
                type="button"
                class="station"
                aria-current={isChosen ? 'true' : undefined}
                title={leftOut.has(index) ? texts.leftOut : stationSentence(station)}
                onClick={() => chooseOnBestBand(index)}
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
                      <HeardBars verdict={verdict} />{' '}
                      {other === undefined ? verdictWords[verdict] : bandSwitchWords.onBand(other)}
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
