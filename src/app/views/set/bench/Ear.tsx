import { verdictOf } from '../../../../engine/reception/path/summary.ts';
import { formatNumber } from '../../../../engine/units/format.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { chosen } from '../../../state/reception.ts';
import { Figures } from '../../../widgets/Figures.tsx';

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
                text: `${formatNumber(station.soundPressureLevel, 2)} dB SPL`,
                range: `give or take ${formatNumber(station.spread, 1)} dB`,
              },
              {
                label: 'Over what can just be heard here',
                text: `${formatNumber(station.margin, 2)} dB`,
              },
              { label: 'So it is', text: verdictOf(station) },
            ]}
          />
        )}
      </div>
    </section>
  );
}
