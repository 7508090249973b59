import { hasRanges } from '../../../../engine/index.ts';
import { earWords as texts, verdictWords } from '../../../../outputs/words/index.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { useChosenStation } from '../../../state/chosen-station.ts';
import { FigureList } from '../../../widgets/Figures.tsx';

export function Ear() {
  const station = useChosenStation();
  const range = station && hasRanges(station) ? station.ranges.soundPressureLevel : undefined;
  return (
    <section class="card" aria-labelledby="ear-title">
      <h3 id="ear-title">{texts.title}</h3>
      <div class="bench">
        <PartEditor path={['ear']} />
        {station && (
          <FigureList
            items={[
              {
                label: texts.atEar(station.name),
                term: 'soundPressureLevel',
                text: texts.soundPressureLevel(station.soundPressureLevel),
                range: range && texts.levelRange(range),
              },
              {
                label: texts.margin,
                term: 'hearingThreshold',
                text: texts.decibels(station.margin),
              },
              { label: texts.verdict, text: verdictWords[station.verdict] },
            ]}
          />
        )}
      </div>
    </section>
  );
}
