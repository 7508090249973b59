import { formatQuantity, type StationReception, valueAtPath, type Warning } from '../../../../engine/index.ts';
import {
  audioLimitSentences,
  loadWords,
  afterDetectorWords as texts,
  warningSentences,
} from '../../../../outputs/words/index.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { Drawing } from '../../../widgets/Drawing.tsx';
import { FigureList } from '../../../widgets/Figures.tsx';
import { Cautions } from '../Cautions.tsx';
import '../detector/detector.css';
import { useChosenStation } from '../../../state/chosen-station.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { Matching } from './Matching.tsx';
import { MeasuredHere } from './MeasuredHere.tsx';

/** What stands between the detector and the phones. */
const AFTER = ['bypass', 'equalizer'];

const afterTitle = (kind: string | undefined): string =>
  texts.title[kind === 'amplifier' || kind === 'crystal earpiece' ? kind : 'phones'];

export function AfterDetector() {
  const { curves, receptionSet } = useOpenSet();
  const station = useChosenStation();
  return (
    <section class="card" aria-labelledby="after-title">
      <h3 id="after-title">{afterTitle(receptionSet.value?.load.kind)}</h3>
      <div class="bench">
        <PartEditor path={['load']} only={AFTER} />
        {station && (
          <FigureList
            items={[
              {
                label: texts.directVoltage,
                term: 'directVoltage',
                text: formatQuantity(station.directVoltage, 'voltage'),
              },
              { label: texts.audioVoltage, text: formatQuantity(station.audioVoltage, 'voltage') },
              { label: texts.distortion, term: 'distortion', text: formatQuantity(station.distortion, 'ratio', 2) },
            ]}
          />
        )}
      </div>
      {curves.value && station?.name === curves.value.resonance.station.name && (
        <>
          <h4>{texts.programme(station.name)}</h4>
          <ul class="bench-words">
            {audioLimitSentences({ ...curves.value.audio, distortion: station.distortion }).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** What the sentence of the stage above has not said yet. */
function notShownAbove(warnings: readonly Warning[], station: StationReception | undefined): readonly Warning[] {
  const shownAbove = warningSentences(station?.path.find(({ id }) => id === 'phones')?.warnings ?? []);
  return warnings.filter((warning) => !shownAbove.includes(warningSentences([warning])[0]));
}

/** Loads that a transformer may stand before. */
const TRANSFORMED = new Set(['phones', 'moving-coil phones']);
const TRANSFORMER = ['transformer'] as const;

export function Phones() {
  const { reception, written } = useOpenSet();
  const load = reception.value?.parts.load;
  const station = useChosenStation();
  return (
    <>
      <section class="card" aria-labelledby="load-title">
        <h3 id="load-title">{loadWords.title}</h3>
        <div class="bench">
          <PartEditor path={['load']} kindLabel={loadWords.kind} except={AFTER} />
          <div>
            <Drawing part="load" />
            {load && (
              <FigureList
                items={[
                  { label: loadWords.directResistance, text: formatQuantity(load.directResistance, 'resistance') },
                  {
                    label: loadWords.impedance,
                    term: 'impedance',
                    text: formatQuantity(load.impedanceAt1kHz, 'resistance'),
                  },
                  ...(station
                    ? [{ label: loadWords.power(station.name), text: formatQuantity(station.phonesPower, 'power') }]
                    : []),
                ]}
                warnings={notShownAbove(load.warnings, station)}
              />
            )}
          </div>
        </div>
        <MeasuredHere part={['load']} />
        <Cautions about="load" />
      </section>
      {written.value !== undefined && TRANSFORMED.has(String(valueAtPath(written.value, ['load', 'kind']))) && (
        <Matching of={TRANSFORMER} />
      )}
    </>
  );
}
