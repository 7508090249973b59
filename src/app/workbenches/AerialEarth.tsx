import { formatQuantity } from '../../engine/units/format.ts';
import { Cautions } from '../components/Cautions.tsx';
import { Drawing } from '../components/Drawing.tsx';
import { Figures } from '../components/Figures.tsx';
import { PartEditor } from '../editors/PartEditor.tsx';
import { reception } from '../state/reception.ts';

export function AerialEarth() {
  const parts = reception.value?.parts;
  return (
    <>
      <section class="card" aria-labelledby="aerial-title">
        <h3 id="aerial-title">Aerial</h3>
        <div class="bench">
          <PartEditor path={['aerial']} kindLabel="Kind of aerial" />
          <div>
            <Drawing part="aerial" />
            {parts && (
              <Figures
                items={[
                  { label: 'Effective height', text: formatQuantity(parts.aerial.effectiveHeight, 'length') },
                  { label: 'Capacitance', text: formatQuantity(parts.aerial.capacitance, 'capacitance') },
                  {
                    label: 'Radiation resistance',
                    text: formatQuantity(parts.aerial.radiationResistance, 'resistance'),
                  },
                ]}
                warnings={parts.aerial.warnings}
              />
            )}
          </div>
        </div>
        <Cautions about="aerial" />
      </section>
      <section class="card" aria-labelledby="earth-title">
        <h3 id="earth-title">Earth</h3>
        <div class="bench">
          <PartEditor path={['earth']} kindLabel="Kind of earth" />
          <div>
            {parts && (
              <Figures
                items={[
                  {
                    label: 'Resistance',
                    text: formatQuantity(parts.earth.resistance, 'resistance'),
                    range: `${formatQuantity(parts.earth.range[0], 'resistance', 2)} to ${formatQuantity(parts.earth.range[1], 'resistance', 2)}`,
                  },
                ]}
                warnings={parts.earth.warnings}
              />
            )}
          </div>
        </div>
        <Cautions about="earth" />
      </section>
    </>
  );
}
