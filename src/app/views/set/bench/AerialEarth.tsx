import { useMemo } from 'preact/hooks';
import { formatQuantity, isLoop, type LoopAerial, loopOf, type Reception } from '../../../../engine/index.ts';
import { earthWords, aerialWords as texts } from '../../../../outputs/words/index.ts';
import { PartEditor } from '../../../editing/PartEditor.tsx';
import { useOpenSet } from '../../../state/set-context.ts';
import { Drawing } from '../../../widgets/Drawing.tsx';
import { type FigureItem, FigureList } from '../../../widgets/Figures.tsx';
import { Cautions } from '../Cautions.tsx';
import { MeasuredHere } from './MeasuredHere.tsx';

type Parts = Reception['parts'];

/** Where nothing is on the air to show it at. */
const USUAL_FREQUENCY = 1e6;

export function AerialEarth() {
  const { reception, receptionSet, chosen } = useOpenSet();
  const parts = reception.value?.parts;
  const aerial = receptionSet.value?.aerial;
  const loop = useMemo(() => aerial && loopOf(aerial, 1), [aerial]);
  const frequency = chosen.value?.frequency ?? USUAL_FREQUENCY;
  return (
    <>
      <section class="card" aria-labelledby="aerial-title">
        <h3 id="aerial-title">{texts.title}</h3>
        <div class="bench">
          <PartEditor path={['aerial']} kindLabel={texts.kind} />
          <div>
            <Drawing part="aerial" />
            {parts && (
              <FigureList
                items={loop ? loopItems(loop, frequency) : wireItems(parts)}
                warnings={parts.aerial.warnings}
              />
            )}
          </div>
        </div>
        <MeasuredHere part={['aerial']} />
        <Cautions about="aerial" />
      </section>
      {aerial && isLoop(aerial) ? <p class="quiet">{texts.noEarth[aerial.kind]}</p> : <Earth parts={parts} />}
    </>
  );
}

const wireItems = ({ aerial }: Parts): FigureItem[] => [
  {
    label: texts.effectiveHeightAt(aerial.at),
    term: 'effectiveHeight',
    text: formatQuantity(aerial.effectiveHeight, 'length'),
  },
  { label: texts.capacitance, text: formatQuantity(aerial.capacitance, 'capacitance') },
  {
    label: texts.radiationResistanceAt(aerial.at),
    term: 'radiationResistance',
    text: formatQuantity(aerial.radiationResistance, 'resistance'),
  },
];

/** A loop is a coil as well: what it is worth hangs on its turns and its losses. */
function loopItems(loop: LoopAerial, frequency: number): FigureItem[] {
  const resistance = loop.resistanceAt(frequency);
  return [
    {
      label: texts.effectiveHeightAt(frequency),
      term: 'effectiveHeight',
      text: formatQuantity(loop.effectiveHeightAt(frequency), 'length'),
    },
    { label: texts.inductance, text: formatQuantity(loop.inductance, 'inductance') },
    {
      label: texts.unloadedQAt(frequency),
      term: 'unloadedQ',
      text: ((2 * Math.PI * frequency * loop.inductance) / resistance).toFixed(0),
    },
    { label: texts.resistanceAt(frequency), text: formatQuantity(resistance, 'resistance') },
    {
      label: texts.selfCapacitance,
      term: 'selfCapacitance',
      text: formatQuantity(loop.selfCapacitance, 'capacitance'),
    },
    { label: texts.wireLength, text: formatQuantity(loop.wireLength, 'length') },
  ];
}

function Earth({ parts }: { parts?: Parts }) {
  return (
    <section class="card" aria-labelledby="earth-title">
      <h3 id="earth-title">{earthWords.title}</h3>
      <div class="bench">
        <PartEditor path={['earth']} kindLabel={earthWords.kind} />
        <div>
          {parts && (
            <FigureList
              items={[
                {
                  label: earthWords.resistance,
                  text: formatQuantity(parts.earth.resistance, 'resistance'),
                  range: earthWords.range(parts.earth.resistance, parts.earth.range),
                },
              ]}
              warnings={parts.earth.warnings}
            />
          )}
        </div>
      </div>
      <MeasuredHere part={['earth']} />
      <Cautions about="earth" />
    </section>
  );
}
