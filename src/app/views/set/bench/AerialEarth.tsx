import { useMemo } from 'preact/hooks';
import { formatQuantity, isLoop, type LoopAerial, loopOf, type Reception } from '../../../../engine/index.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { chosen, reception, receptionSet } from '../../../state/reception.ts';
import { Drawing } from '../../../widgets/Drawing.tsx';
import { type FigureItem, Figures } from '../../../widgets/Figures.tsx';
import { kilohertz } from '../../../widgets/figure.ts';
import { Cautions } from '../Cautions.tsx';

type Parts = Reception['parts'];

/** Where nothing is on the air to show it at. */
const USUAL_FREQUENCY = 1e6;

export function AerialEarth() {
  const parts = reception.value?.parts;
  const aerial = receptionSet.value?.aerial;
  const loop = useMemo(() => aerial && loopOf(aerial, 1), [aerial]);
  const frequency = chosen.value?.frequency ?? USUAL_FREQUENCY;
  return (
    <>
      <section class="card" aria-labelledby="aerial-title">
        <h3 id="aerial-title">Aerial</h3>
        <div class="bench">
          <PartEditor path={['aerial']} kindLabel="Kind of aerial" />
          <div>
            <Drawing part="aerial" />
            {parts && (
              <Figures items={loop ? loopItems(loop, frequency) : wireItems(parts)} warnings={parts.aerial.warnings} />
            )}
          </div>
        </div>
        <Cautions about="aerial" />
      </section>
      {aerial && isLoop(aerial) ? (
        <p class="quiet">
          {aerial.kind === 'frame' ? 'A frame aerial' : 'A ferrite rod'} needs no earth: none is connected.
        </p>
      ) : (
        <Earth parts={parts} />
      )}
    </>
  );
}

const wireItems = ({ aerial }: Parts): FigureItem[] => [
  { label: 'Effective height', text: formatQuantity(aerial.effectiveHeight, 'length') },
  { label: 'Capacitance', text: formatQuantity(aerial.capacitance, 'capacitance') },
  { label: 'Radiation resistance', text: formatQuantity(aerial.radiationResistance, 'resistance') },
];

/** A loop is a coil as well: what it is worth hangs on its turns and its losses. */
function loopItems(loop: LoopAerial, frequency: number): FigureItem[] {
  const resistance = loop.resistanceAt(frequency);
  const at = `at ${kilohertz(frequency)}`;
  return [
    { label: `Effective height ${at}`, text: formatQuantity(loop.effectiveHeightAt(frequency), 'length') },
    { label: 'Inductance', text: formatQuantity(loop.inductance, 'inductance') },
    { label: `Q by itself ${at}`, text: ((2 * Math.PI * frequency * loop.inductance) / resistance).toFixed(0) },
    { label: `Resistance ${at}`, text: formatQuantity(resistance, 'resistance') },
    { label: 'Self-capacitance', text: formatQuantity(loop.selfCapacitance, 'capacitance') },
    { label: 'Wire to wind', text: formatQuantity(loop.wireLength, 'length') },
  ];
}

function Earth({ parts }: { parts?: Parts }) {
  return (
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
  );
}
