import {
  type DetectorOnStation,
  formatQuantity,
  hasHeater,
  hasSpots,
  USUAL_CRYSTAL,
  withValueAt,
} from '../../../../engine/index.ts';
import { detectorCurve } from '../../../../outputs/plots/index.ts';
import { detectorFactSentences, detectorName, detectorBenchWords as texts } from '../../../../outputs/words/index.ts';
import { tidy } from '../../../description/quantity-text.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { useChosenStation } from '../../../state/chosen-station.ts';
import type { Document } from '../../../state/document.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { Drawing } from '../../../widgets/Drawing.tsx';
import { FigureList } from '../../../widgets/Figures.tsx';
import { Plot } from '../../../widgets/Plot.tsx';
import { Cautions } from '../Cautions.tsx';
import { Compare } from '../detector/Compare.tsx';
import { Crystal, type SpotFound } from '../detector/Crystal.tsx';
import { Heater } from '../detector/Heater.tsx';
import { NodeWaves } from '../detector/NodeWaves.tsx';
import { MeasuredHere } from './MeasuredHere.tsx';

export function DetectorBench() {
  const { reception, receptionSet, curves, time, change } = useOpenSet();
  const detector = reception.value?.parts.detector;
  const facts = detector ? detectorFactSentences(detector.facts) : [];
  const station = useChosenStation();
  return (
    <>
      <section class="card" aria-labelledby="detector-title">
        <h3 id="detector-title">{texts.title(detector && detectorName(detector.id))}</h3>
        <div class="bench">
          <PartEditor path={['detector']} kindLabel={texts.kind} />
          <div>
            <Drawing part="detector" />
            {detector && (
              <FigureList
                items={[
                  {
                    label: texts.zeroBiasResistance,
                    term: 'zeroBiasResistance',
                    text: formatQuantity(detector.zeroBiasResistance, 'resistance'),
                  },
                  ...(station
                    ? [
                        {
                          label: texts.inputResistance(station.name),
                          term: 'inputResistance' as const,
                          text: formatQuantity(station.detectorInputResistance, 'resistance'),
                        },
                        { label: texts.carrier, text: formatQuantity(station.detectorVoltage, 'voltage') },
                        {
                          label: texts.directVoltage,
                          term: 'directVoltage' as const,
                          text: formatQuantity(station.directVoltage, 'voltage'),
                        },
                      ]
                    : []),
                ]}
                warnings={detector.warnings}
              />
            )}
            {facts.length > 0 && (
              <details class="in-words">
                <summary>{texts.facts}</summary>
                {facts.map((fact) => (
                  <p key={fact}>{fact}</p>
                ))}
              </details>
            )}
            {curves.value && (
              <Plot
                title={texts.curve(curves.value.resonance.station.name)}
                data={curves.value.detector}
                draw={detectorCurve}
              />
            )}
          </div>
        </div>
        <MeasuredHere part={['detector']} />
        <Cautions about="detector" />
      </section>
      {receptionSet.value && hasSpots(receptionSet.value.detector) && (
        <Crystal
          seed={USUAL_CRYSTAL}
          set={receptionSet.value}
          station={station}
          time={time.value}
          onFound={(spot) => takeSpot(change, spot)}
        />
      )}
      {receptionSet.value && hasHeater(receptionSet.value.detector) && station && (
        <Heater set={receptionSet.value} station={station} time={time.value} />
      )}
      {receptionSet.value && station && (
        <Compare
          time={time.value}
          set={receptionSet.value}
          station={station}
          onChoose={(detector, label) =>
            change((base) => withValueAt(base, ['detector'], asWritten(detector)), { label: texts.changeLabel(label) })
          }
        />
      )}
      {receptionSet.value && station && <NodeWaves set={receptionSet.value} station={station} time={time.value} />}
    </>
  );
}

const takeSpot = (
  change: Document['change'],
  { saturationCurrent, ideality, seriesResistance, leakage, words }: SpotFound,
): void =>
  change(
    (base) =>
      Object.entries({
        saturationCurrent: tidy(formatQuantity(saturationCurrent, 'current')),
        ideality: Number(ideality.toFixed(2)),
        seriesResistance: tidy(formatQuantity(seriesResistance, 'resistance')),
        leakage: tidy(formatQuantity(leakage, 'resistance')),
      }).reduce((written: unknown, [key, value]) => withValueAt(written, ['detector', key], value), base),
    { label: texts.spotLabel(words) },
  );

/** As a person would write it: volts and kelvins with their units. */
const asWritten = (detector: DetectorOnStation['description']): unknown => {
  const { temperature: _room, wiring: _single, ...rest } = detector as Record<string, unknown>;
  for (const key of ['bias', 'heaterVoltage', 'ratedHeaterVoltage'])
    if (typeof rest[key] === 'number') rest[key] = `${rest[key]} V`;
  return rest;
};
