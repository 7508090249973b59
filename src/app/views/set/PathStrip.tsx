import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Stage, StageId, StationReception } from '../../../engine/index.ts';
import { stageFigure, stageSentence, setWords as texts, warningSentences } from '../../../outputs/words/index.ts';
import { loadTitle } from '../../description/places.ts';
import { useChosenStation } from '../../state/chosen-station.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { LossBar } from '../../widgets/LossBar.tsx';
import { showWorkbench } from '../../widgets/show-field.ts';
import { useTrial } from './TrialStrip.tsx';

export const STAGE_IDS: readonly StageId[] = ['field', 'aerial', 'tuned circuit', 'detector', 'audio', 'phones', 'ear'];

/** On a phone the workbench lies below the whole path and the list: choosing a stage has to go there to be seen. */
const isNarrow = (): boolean => matchMedia('(max-width: 53.6875rem)').matches;

const stepOf = (key: string): number | undefined =>
  ({ ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1, Home: -99, End: 99 })[key];

/** The levels of the chosen station, field to ear; choosing one opens its workbench. */
export function PathStrip() {
  const { stage, chosen, isBehind } = useOpenSet();
  // Nothing is known of a station that the figures leave out.
  const station = useChosenStation();
  const choose = (id: StageId) => {
    stage.value = id;
  };
  const keys = (event: KeyboardEvent) => {
    const step = stepOf(event.key);
    if (step === undefined) return;
    event.preventDefault();
    const at = Math.min(STAGE_IDS.length - 1, Math.max(0, STAGE_IDS.indexOf(stage.value) + step));
    choose(STAGE_IDS[at]);
    document.getElementById(`stage-${at}`)?.focus();
  };
  const before = useFiguresBefore(station);
  const strip = useRef<HTMLDivElement>(null);
  const opened = STAGE_IDS.indexOf(stage.value);
  // Where not all stages fit, the one that is open stands in the middle.
  useLayoutEffect(() => {
    const tab = document.getElementById(`stage-${opened}`);
    if (!strip.current || !tab) return;
    strip.current.scrollLeft = tab.offsetLeft - (strip.current.clientWidth - tab.offsetWidth) / 2;
  }, [opened]);
  return (
    <div
      ref={strip}
      class={`path${isBehind.value ? ' is-behind' : ''}`}
      role="tablist"
      aria-label={texts.path(chosen.value?.name)}
      onKeyDown={keys}
    >
      {STAGE_IDS.map((id, i) => (
        <StageTab
          key={id}
          index={i}
          id={id}
          level={station?.path.find((level) => level.id === id)}
          was={before(id)}
          isOpen={stage.value === id}
          onOpen={() => {
            choose(id);
            if (isNarrow()) requestAnimationFrame(showWorkbench);
          }}
        />
      ))}
    </div>
  );
}

const figuresOf = (station: StationReception | undefined): ReadonlyMap<StageId, string> =>
  new Map(station?.path.map((level) => [level.id, figureText(level)]));
const figureText = (level: Stage): string => {
  const { figure, unit } = stageFigure(level);
  return `${figure} ${unit}`;
};

/** While a change is being tried, the figures of the same station before it, where they were others. */
function useFiguresBefore(station: StationReception | undefined): (id: StageId) => string | undefined {
  const isTrying = useTrial() !== undefined;
  const last = useRef<{ readonly of: string; readonly figures: ReadonlyMap<StageId, string> } | undefined>(undefined);
  const now = figuresOf(station);
  if (!isTrying) last.current = station && { of: station.name, figures: now };
  const before = isTrying && last.current?.of === station?.name ? last.current?.figures : undefined;
  return (id) => (before?.get(id) === now.get(id) ? undefined : before?.get(id));
}

interface TabProps {
  readonly index: number;
  readonly id: StageId;
  readonly level?: Stage;
  /** Its figure before the change that is being tried, where that is another. */
  readonly was: string | undefined;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}

function StageTab(props: TabProps) {
  const { index, id, level, was, isOpen, onOpen } = props;
  const { receptionSet } = useOpenSet();
  const { figure, unit, of } = stageFigure(level ?? { id, value: undefined, kind: 'level' });
  return (
    <button
      type="button"
      role="tab"
      id={`stage-${index}`}
      class="stage"
      aria-selected={isOpen}
      aria-controls="workbench"
      tabIndex={isOpen ? 0 : -1}
      title={level && [stageSentence(level), level.change === undefined ? '' : texts.lossBar].filter(Boolean).join(' ')}
      onClick={onOpen}
    >
      <span class="stage-title">{id === 'phones' ? loadTitle(receptionSet.value?.load.kind) : texts.stages[id]}</span>{' '}
      <span class="stage-figure">
        {figure} <span class="unit">{unit}</span>
        {of && <span class="unit stage-of"> {of}</span>}
      </span>{' '}
      <span class="stage-change">
        {was !== undefined ? (
          <span class="stage-was">{texts.was(was)}</span>
        ) : level?.change !== undefined ? (
          texts.powerLoss(level.change)
        ) : level?.range ? (
          texts.rangeInPath(level.range, level)
        ) : (
          ''
        )}
        {level && level.warnings.length > 0 ? (
          <span class="warning-mark" title={warningSentences(level.warnings).join(' ')}>
            {' '}
            ⚠<span class="visually-hidden">{texts.hasWarning}</span>
          </span>
        ) : null}
      </span>
      <LossBar loss={level?.change === undefined ? undefined : -level.change} />
    </button>
  );
}
