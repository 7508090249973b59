import { formatQuantity } from '../../engine/units/format.ts';
import { Cautions } from '../components/Cautions.tsx';
import { Drawing } from '../components/Drawing.tsx';
import { Figures } from '../components/Figures.tsx';
import { PartEditor } from '../editors/PartEditor.tsx';
import { chosen, reception } from '../state/reception.ts';

export function DetectorBench() {
  const detector = reception.value?.parts.detector;
  const station = chosen.value;
  return (
    <section class="card" aria-labelledby="detector-title">
      <h3 id="detector-title">Detector{detector ? `: ${detector.label}` : ''}</h3>
      <div class="bench">
        <PartEditor path={['detector']} kindLabel="Kind of detector" />
        <div>
          <Drawing part="detector" />
          {detector && (
            <Figures
              items={[
                {
                  label: 'Resistance near zero volts',
                  text: formatQuantity(detector.zeroBiasResistance, 'resistance'),
                },
                ...(station
                  ? [
                      {
                        label: `What it puts across the tuned circuit, on ${station.name}`,
                        text: formatQuantity(station.detectorInputResistance, 'resistance'),
                      },
                      { label: 'Carrier at it, peak', text: formatQuantity(station.detectorVoltage, 'voltage') },
                      { label: 'Direct voltage after it', text: formatQuantity(station.directVoltage, 'voltage') },
                    ]
                  : []),
              ]}
              warnings={detector.warnings}
            />
          )}
        </div>
      </div>
      <Cautions about="detector" />
    </section>
  );
}
