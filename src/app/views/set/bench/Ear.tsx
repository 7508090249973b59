import { formatNumber } from '../../../../engine/index.ts';
import { verdictWords } from '../../../../outputs/words/index.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { chosen } from '../../../state/reception.ts';
import { Figures } from '../../../widgets/Figures.tsx';

/** A level; a dash out of range of the dial. */
const decibels = (level: number | undefined, unit: string): string =>
  level === undefined ? '—' : `${formatNumber(level, 2)} ${unit}`;

export function Ear() {
  const station = chosen.value;
  return (
    <section class="card" aria-labelledby="ear-title">
      <h3 id="ear-title">Where you listen</h3>
      <div class="bench">
        <PartEditor path={['ear']} />
        {station && (
          <Figures
            items={[
              {
                label: `${station.name} at the ear`,
                text: decibels(station.soundPressureLevel, 'dB SPL'),
                range: `give or take ${formatNumber(station.spread, 1)} dB`,
              },
              {
                label: 'Above the hearing threshold here',
                text: decibels(station.margin, 'dB'),
              },
              { label: 'So it is', text: verdictWords[station.verdict] },
            ]}
          />
        )}
      </div>
    </section>
  );
}
