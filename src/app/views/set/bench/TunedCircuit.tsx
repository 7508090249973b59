import { useMemo } from 'preact/hooks';
import { formatQuantity, type Path, type Reception, valueAtPath } from '../../../../engine/index.ts';
import {
  bandResponse,
  type Coverage,
  coverage,
  qAgainstFrequency,
  resonanceCurve,
} from '../../../../outputs/plots/index.ts';
import { coilNames } from '../../../description/change-kind.ts';
import { addItem, removeItem } from '../../../description/lists.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { curves } from '../../../state/curves.ts';
import { change, written } from '../../../state/document.ts';
import { chosen, reception } from '../../../state/reception.ts';
import { Diagram } from '../../../widgets/Diagram.tsx';
import { Drawing } from '../../../widgets/Drawing.tsx';
import { Figures } from '../../../widgets/Figures.tsx';
import { kilohertz } from '../../../widgets/figure.ts';
import { Plot } from '../../../widgets/Plot.tsx';
import { Matching } from './Matching.tsx';

const COILS: Path = ['coils'];
const TAPS = ['aerial tap', 'detector tap', 'distance of the coils'] as const;

export function TunedCircuit() {
  const now = reception.value;
  const station = chosen.value;
  const coils = valueAtPath(written.value, COILS);
  const count = Array.isArray(coils) ? coils.length : 0;
  const tuning = now?.parts.tuning;
  const covered = useMemo(() => now && coverageOf(now), [now]);
  return (
    <>
      {station && (
        <Figures
          items={[
            { label: `Q with all connected, on ${station.name}`, text: station.loadedQ.toFixed(0) },
            { label: 'Q of coil and capacitor alone', text: station.unloadedQ.toFixed(0) },
            { label: 'Width between −3 dB points', text: formatQuantity(station.bandwidth, 'frequency') },
          ]}
          warnings={[]}
        />
      )}
      <CircuitPlots />
      <section class="card" aria-labelledby="arrangement-title">
        <h3 id="arrangement-title">How it is connected</h3>
        <Diagram />
        <PartEditor path={['arrangement']} kindLabel="Arrangement" />
      </section>
      <Matching of={TAPS} />
      {Array.from({ length: count }, (_, i) => (
        <CoilCard key={i} index={i} />
      ))}
      <p>
        <button
          type="button"
          class="chip"
          onClick={() => change((base) => addItem(base, COILS), { label: 'add a coil' })}
        >
          Add a coil
        </button>
      </p>
      <section class="card" aria-labelledby="tuning-title">
        <h3 id="tuning-title">Tuning capacitor</h3>
        <div class="bench">
          <PartEditor path={['tuning']} kindLabel="Kind of capacitor" />
          <div>
            <Drawing part="tuning" />
            {tuning && now && (
              <Figures
                items={[
                  {
                    label: 'In all, open to meshed',
                    text: `${formatQuantity(tuning.minimum, 'capacitance')} to ${formatQuantity(tuning.maximum, 'capacitance')}`,
                  },
                  {
                    label: 'Covers',
                    text: `${Math.round(now.dial.lowest / 1e3)} to ${Math.round(now.dial.highest / 1e3)} kHz`,
                  },
                ]}
                warnings={tuning.warnings}
              />
            )}
            {covered && <Plot title="What the set covers" data={covered} draw={coverage} />}
          </div>
        </div>
      </section>
    </>
  );
}

function CircuitPlots() {
  const drawn = curves.value;
  if (!drawn) return null;
  return (
    <section class="card plots" aria-labelledby="plots-title">
      <h3 id="plots-title">What it lets through</h3>
      <div class="plot-grid">
        <Plot title={`Tuned to ${drawn.resonance.station.name}`} data={drawn.resonance} draw={resonanceCurve} />
        <Plot title="Across the band, as left there" data={drawn.band} draw={bandResponse} />
      </div>
    </section>
  );
}

const coverageOf = ({ dial, stations }: Reception): Coverage => ({
  bands: [
    {
      label: 'as it is',
      lowest: dial.lowest,
      highest: dial.highest,
      lowestRange: dial.lowestRange,
      highestRange: dial.highestRange,
    },
  ],
  stations,
});

function CoilCard({ index }: { index: number }) {
  const figures = reception.value?.parts.coils[index];
  const q = curves.value?.q[index];
  const name = coilNames(written.value)[index];
  const title = `coil-${index}-title`;
  const isOnly = coilNames(written.value).length === 1;
  return (
    <section class="card" aria-labelledby={title}>
      <h3 id={title}>
        Coil{isOnly ? '' : ` “${name}”`}
        {!isOnly && (
          <button
            type="button"
            class="chip"
            onClick={() => change((base) => removeItem(base, COILS, index), { label: `remove coil ${name}` })}
          >
            Remove
          </button>
        )}
      </h3>
      <div class="bench">
        <PartEditor path={['coils', index]} kindLabel="Shape" />
        <div>
          <Drawing part={{ coil: index }} />
          {figures && (
            <Figures
              items={[
                { label: 'Inductance', text: formatQuantity(figures.inductance, 'inductance') },
                {
                  label: `Q at ${kilohertz(figures.qAt)}`,
                  text: figures.q.toFixed(0),
                  range: `${figures.qRange[0].toFixed(0)} to ${figures.qRange[1].toFixed(0)}`,
                },
                { label: 'Self-capacitance', text: formatQuantity(figures.selfCapacitance, 'capacitance') },
                { label: 'Resonates by itself at', text: formatQuantity(figures.selfResonance, 'frequency') },
                { label: 'Wire to wind', text: formatQuantity(figures.wireLength, 'length') },
                { label: 'Direct-current resistance', text: formatQuantity(figures.dcResistance, 'resistance') },
              ]}
              warnings={figures.warnings}
            />
          )}
          {q && <Plot title="Q against frequency" data={q} draw={qAgainstFrequency} />}
        </div>
      </div>
    </section>
  );
}
