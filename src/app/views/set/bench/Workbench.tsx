import type { ComponentType } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { StageId } from '../../../../engine/index.ts';
import { setWords } from '../../../../outputs/words/index.ts';
import { loadTitle } from '../../../description/places.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { STAGE_IDS } from '../PathStrip.tsx';
import { AerialEarth } from './AerialEarth.tsx';
import { DetectorBench } from './DetectorBench.tsx';
import { Ear } from './Ear.tsx';
import { FieldBench } from './FieldBench.tsx';
import { AfterDetector, Phones } from './LoadBench.tsx';
import { MeasuredOfSet } from './MeasuredHere.tsx';
import { StageNow } from './StageNow.tsx';
import { TunedCircuit } from './TunedCircuit.tsx';

const BENCHES: Readonly<Record<StageId, ComponentType>> = {
  field: FieldBench,
  aerial: AerialEarth,
  'tuned circuit': TunedCircuit,
  detector: DetectorBench,
  audio: AfterDetector,
  phones: Phones,
  ear: Ear,
};

/** The parts and figures of the chosen stage. */
export function Workbench() {
  const { stage, receptionSet } = useOpenSet();
  const id = stage.value;
  const Bench = BENCHES[id];
  const section = useRef<HTMLElement>(null);
  // Another stage is read from its beginning.
  useLayoutEffect(() => section.current?.scrollTo({ top: 0 }), [id]);
  return (
    <section
      ref={section}
      id="workbench"
      class="workbench"
      tabIndex={-1}
      role="tabpanel"
      aria-labelledby={`stage-${STAGE_IDS.indexOf(id)} workbench-title`}
    >
      <h2 id="workbench-title">
        {id === 'phones' ? loadTitle(receptionSet.value?.load.kind) : setWords.workbenches[id]}
      </h2>
      <StageNow id={id} />
      <MeasuredOfSet>
        <Bench key={id} />
      </MeasuredOfSet>
    </section>
  );
}
