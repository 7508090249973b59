import { useMemo } from 'preact/hooks';
import {
  coilNamesOf,
  formatQuantity,
  type Path,
  type Reception,
  valueAtPath,
  variantChoices,
} from '../../../../engine/index.ts';
import {
  bandResponse,
  type CoveragePlot,
  coverage,
  qAgainstFrequency,
  resonanceCurve,
} from '../../../../outputs/plots/index.ts';
import { bandSwitchWords, tunedCircuitWords as texts } from '../../../../outputs/words/index.ts';
import { coilNames } from '../../../description/change-kind.ts';
import { addItem, removeItem } from '../../../description/lists.ts';
import { bandNameOf } from '../../../description/on-band.ts';
import { schemaAt } from '../../../description/schema-at.ts';
import { KindChoice, PartEditor } from '../../../editing/PartEditor.tsx';
import { useChosenStation } from '../../../state/chosen-station.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { CircuitDiagram } from '../../../widgets/Diagram.tsx';
import { Drawing } from '../../../widgets/Drawing.tsx';
import { FigureList } from '../../../widgets/Figures.tsx';
import { Plot } from '../../../widgets/Plot.tsx';
import { Bands } from './Bands.tsx';
import { BandTurns } from './BandTurns.tsx';
import { Matching } from './Matching.tsx';
import { MeasuredHere } from './MeasuredHere.tsx';
import { Traps, TwoCircuitsCard } from './Rework.tsx';
import { useTwoCircuits } from './use-two-circuits.ts';

const COILS: Path = ['coils'];
const ARRANGEMENT: Path = ['arrangement'];
const TAPS = ['aerial tap', 'detector tap', 'distance of the coils'] as const;

export function TunedCircuit() {
  const { reception, written, change, band } = useOpenSet();
  const name = bandNameOf(written.value, band.value);
  const now = reception.value;
  const station = useChosenStation();
  const coils = valueAtPath(written.value, COILS);
  const count = Array.isArray(coils) ? coils.length : 0;
  const tuning = now?.parts.tuning;
  const covered = useMemo(() => now && coverageOf(now), [now]);
  return (
    <>
      {station && (
        <FigureList
          items={[
            { label: texts.loadedQ(station.name), term: 'loadedQ', text: station.loadedQ.toFixed(0) },
            { label: texts.unloadedQ, term: 'unloadedQ', text: station.unloadedQ.toFixed(0) },
            { label: texts.bandwidth, term: 'bandwidth', text: texts.bandwidthText(station.bandwidth) },
          ]}
          warnings={[]}
        />
      )}
      <CircuitPlots />
      <section class="card" aria-labelledby="arrangement-title">
        <h3 id="arrangement-title">{texts.arrangement}</h3>
        {name !== undefined && <p class="about">{bandSwitchWords.arrangementOf(name)}</p>}
        <CircuitDiagram />
        <div class="part">
          <ArrangementKind />
        </div>
        <PartEditor path={ARRANGEMENT} kindLabel={texts.arrangementKind} isKindFixed />
        <MeasuredHere part={ARRANGEMENT} />
      </section>
      <Matching of={TAPS} />
      <BandTurns />
      <Bands />
      <TwoCircuitsCard />
      <Traps />
      {Array.from({ length: count }, (_, i) => (
        <CoilCard key={i} index={i} />
      ))}
      <p>
        <button
          type="button"
          class="chip"
          onClick={() => change((base) => addItem(base, COILS), { label: texts.addCoilLabel })}
        >
          {texts.addCoil}
        </button>
      </p>
      <section class="card" aria-labelledby="tuning-title">
        <h3 id="tuning-title">{texts.capacitor}</h3>
        <div class="bench">
          <PartEditor path={['tuning']} kindLabel={texts.capacitorKind} />
          <div>
            <Drawing part="tuning" />
            {tuning && now && (
              <FigureList
                items={[
                  {
                    label: texts.total,
                    text: texts.totalRange(tuning.minimum, tuning.maximum),
                  },
                  {
                    label: texts.covers,
                    text: texts.coversRange(now.dial.lowest, now.dial.highest),
                  },
                ]}
                warnings={tuning.warnings}
              />
            )}
            {covered && <Plot title={texts.coverage} data={covered} draw={coverage} />}
          </div>
        </div>
        <MeasuredHere part={['tuning']} />
      </section>
    </>
  );
}

/** Its kind; that of two circuits brings coils and taps that work along. */
function ArrangementKind() {
  const { written } = useOpenSet();
  const makeTwoCircuits = useTwoCircuits();
  const variant = variantChoices(schemaAt(written.value, ARRANGEMENT)!);
  if (!variant) return null;
  return <KindChoice path={ARRANGEMENT} label={texts.arrangementKind} variant={variant} onChosen={makeTwoCircuits} />;
}

function CircuitPlots() {
  const { curves } = useOpenSet();
  const station = useChosenStation();
  const drawn = curves.value;
  if (!drawn) return null;
  const { name } = drawn.resonance.station;
  const isOutOfRange = station?.name === name && station.outOfRange !== undefined;
  return (
    <section class="card plots" aria-labelledby="plots-title">
      <h3 id="plots-title">{texts.plots}</h3>
      <div class="plot-grid">
        <Plot
          title={isOutOfRange ? texts.resonanceOutOfRange(name) : texts.resonance(name)}
          data={drawn.resonance}
          draw={resonanceCurve}
        />
        <Plot title={texts.band} data={drawn.band} draw={bandResponse} />
      </div>
    </section>
  );
}

const coverageOf = ({ dial, stations }: Reception): CoveragePlot => ({
  bands: [
    {
      label: texts.coverageBand,
      lowest: dial.lowest,
      highest: dial.highest,
      lowestRange: dial.lowestRange,
      highestRange: dial.highestRange,
    },
  ],
  stations,
});

type CoilFigures = Reception['parts']['coils'][number];

const qOf = (figures: CoilFigures | undefined) =>
  figures && { at: figures.qAt, value: figures.q, range: figures.qRange };

/** Of a coil that the band looked at has not in circuit: the first band that has, and its figures there. */
function useOtherBandOf(index: number): { readonly band: number; readonly figures?: CoilFigures } | undefined {
  const { receptionSet, bandsReceived, written } = useOpenSet();
  const set = receptionSet.value;
  const name = coilNames(written.value)[index];
  if (!set?.bands || coilNamesOf(set.arrangement).has(name)) return undefined;
  const other = set.bands.findIndex(({ arrangement }) => arrangement && coilNamesOf(arrangement).has(name));
  if (other < 0) return undefined;
  const figures = bandsReceived.value?.bands[other]?.coils[index];
  return { band: other, figures: figures?.name === name ? figures : undefined };
}

function CoilCard({ index }: { index: number }) {
  const { reception, curves, written, change } = useOpenSet();
  const figures = reception.value?.parts.coils[index];
  // A coil of another band is at work at other frequencies than those of the station in focus.
  const other = useOtherBandOf(index);
  const q = other ? undefined : curves.value?.q[index];
  const focused = other ? undefined : curves.value?.qAtStation[index];
  // Until the curves of the station in focus are there, at the frequency that the figures are of.
  const qNow = focused
    ? { at: focused.frequency, value: focused.q, range: [focused.low, focused.high] as const }
    : qOf(other ? other.figures : figures);
  const name = coilNames(written.value)[index];
  const title = `coil-${index}-title`;
  const isOnly = coilNames(written.value).length === 1;
  return (
    <section class="card" aria-labelledby={title}>
      <h3 id={title}>
        {texts.coil(isOnly ? undefined : name)}
        {!isOnly && (
          <button
            type="button"
            class="chip"
            onClick={() => change((base) => removeItem(base, COILS, index), { label: texts.removeCoilLabel(name) })}
          >
            {texts.removeCoil}
          </button>
        )}
      </h3>
      {other && <p class="about">{bandSwitchWords.coilOf(bandNameOf(written.value, other.band) ?? '')}</p>}
      <div class="bench">
        <PartEditor path={['coils', index]} kindLabel={texts.coilShape} />
        <div>
          <Drawing part={{ coil: index }} />
          {figures && qNow && (
            <FigureList
              items={[
                { label: texts.inductance, text: formatQuantity(figures.inductance, 'inductance') },
                {
                  label: texts.qAt(qNow.at),
                  term: 'q',
                  text: qNow.value.toFixed(0),
                  range: texts.qRange(qNow.range),
                },
                {
                  label: texts.selfCapacitance,
                  term: 'selfCapacitance',
                  text: formatQuantity(figures.selfCapacitance, 'capacitance'),
                },
                {
                  label: texts.selfResonance,
                  term: 'selfResonance',
                  text: formatQuantity(figures.selfResonance, 'frequency'),
                },
                { label: texts.wireLength, text: formatQuantity(figures.wireLength, 'length') },
                { label: texts.dcResistance, text: formatQuantity(figures.dcResistance, 'resistance') },
              ]}
              warnings={figures.warnings}
            />
          )}
          {q && <Plot title={texts.qPlot} data={q} draw={qAgainstFrequency} />}
        </div>
      </div>
      <MeasuredHere part={['coils', index]} />
    </section>
  );
}
