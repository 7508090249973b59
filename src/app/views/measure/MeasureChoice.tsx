import { INSTRUMENTS, type MeasuredPart, type OfferedMeasurement, type SetDescription } from '../../../engine/index.ts';
import { measurementName, narrowingText, propertyNames, measureView as texts } from '../../../outputs/words/index.ts';
import { instruments, isEmptyDraft, type WantedPart } from '../../state/measuring.ts';
import { tell } from '../../state/notices.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { cardKey, draftKey } from './written-readings.ts';

interface Props {
  readonly set: SetDescription;
  readonly offered: readonly OfferedMeasurement[] | undefined;
  readonly error: string;
  /** Name of the station whose answer is to be narrowed. */
  readonly station: string | undefined;
  readonly open: OfferedMeasurement | undefined;
}

const PARTS: readonly MeasuredPart[] = ['tuning', 'aerial', 'earth', 'detector', 'load', 'station'];

/** What is at hand, what is to be known, and what can be measured, the most useful first. */
export function MeasureChoice({ set, offered, error, station, open }: Props) {
  const elsewhere = offered?.filter(isKnownElsewhere) ?? [];
  return (
    <div class="measure-choice">
      <fieldset>
        <legend>{texts.have}</legend>
        <ul class="measure-have">
          {INSTRUMENTS.map((one) => (
            <li key={one}>
              <label>
                <input
                  type="checkbox"
                  checked={instruments.value.includes(one)}
                  onChange={(event) => {
                    const without = instruments.value.filter((other) => other !== one);
                    instruments.value = event.currentTarget.checked ? [...without, one] : without;
                  }}
                />{' '}
                {texts.instruments[one]}
              </label>
            </li>
          ))}
        </ul>
        <p class="about">{texts.haveAlways}</p>
      </fieldset>
      <WantToKnow set={set} />
      <Typed />
      <h2 id="measure-offered">{texts.possible(station)}</h2>
      {error !== '' && <p class="problem">{texts.notWorkedOut(error)}</p>}
      {!offered && error === '' && <p class="quiet">{texts.calculating}</p>}
      {offered?.length === 0 && <p class="quiet">{texts.noneOffered}</p>}
      <Offered
        of={offered?.filter((one) => !isKnownElsewhere(one)) ?? []}
        labelledBy="measure-offered"
        set={set}
        open={open}
      />
      {elsewhere.length > 0 && (
        <details open={(open && isKnownElsewhere(open)) || undefined}>
          <summary id="measure-elsewhere">{texts.elsewhere}</summary>
          <Offered of={elsewhere} labelledBy="measure-elsewhere" set={set} open={open} />
        </details>
      )}
    </div>
  );
}

/** A figure that no instrument here reads: somebody else has measured it. */
const isKnownElsewhere = ({ kind, equipment }: OfferedMeasurement): boolean =>
  kind === 'value' && equipment.length === 0;

interface OfferedProps {
  readonly of: readonly OfferedMeasurement[];
  readonly labelledBy: string;
  readonly set: SetDescription;
  readonly open: OfferedMeasurement | undefined;
}

function Offered({ of, labelledBy, set, open }: OfferedProps) {
  const { openCard, drafts, chosen } = useOpenSet();
  const isTyped = (one: OfferedMeasurement): boolean => {
    const draft = drafts.value[draftKey(one, chosen.value?.name)];
    return draft !== undefined && !isEmptyDraft(draft);
  };
  return (
    <ul class="measure-offered" aria-labelledby={labelledBy}>
      {of.map((one) => (
        <li key={cardKey(one)}>
          <button
            type="button"
            aria-pressed={one === open}
            onClick={() => {
              openCard.value = cardKey(one);
            }}
          >
            <span>{offerName(one, set)}</span>
            {isTyped(one) && <span class="measure-typed">{texts.typed}</span>}
            {one.narrowing && <span class="measure-gain">{narrowingText(one.narrowing)}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Readings typed and not used are kept with the set until they are used or cleared. */
function Typed() {
  const { id, drafts, areDraftsKept } = useOpenSet();
  const count = Object.values(drafts.value).filter((draft) => !isEmptyDraft(draft)).length;
  if (count === 0) return null;
  const clear = () => {
    const before = drafts.peek();
    drafts.value = {};
    const putBack = () => {
      drafts.value = { ...before, ...drafts.peek() };
    };
    tell(texts.typedCleared, { key: 'readings-cleared', of: id, action: { label: texts.putBack, run: putBack } });
    focusIfLost(() => document.getElementById('measure-wanted'));
  };
  return (
    <div class="measure-kept-typed">
      <p class={areDraftsKept.value ? 'about' : 'problem'}>
        {areDraftsKept.value ? texts.typedKept(count) : texts.typedNotKept}
      </p>
      <button type="button" class="link" onClick={clear}>
        {texts.clearTyped}
      </button>
    </div>
  );
}

/** "Width of the resonance", of a figure off an instrument what it is of; with the coil where there are several. */
function offerName({ kind, coil, properties }: OfferedMeasurement, set: SetDescription): string {
  const name = measurementName(kind);
  if (kind === 'value') {
    const of = propertyNames[properties[0]];
    return coil !== undefined && set.coils.length > 1 ? texts.choose(of, set.coils[coil].name) : of;
  }
  return coil !== undefined && set.coils.length > 1 ? texts.choose(name, set.coils[coil].name) : name;
}

const EVERYTHING = '';

function WantToKnow({ set }: { readonly set: SetDescription }) {
  const { wantedPart } = useOpenSet();
  const places: readonly WantedPart[] = [
    ...(set.coils.length > 0
      ? set.coils.map((_, coil): WantedPart => ({ part: 'coil', coil }))
      : [{ part: 'coil' as const, coil: 0 }]),
    ...PARTS.map((part) => ({ part })),
  ];
  const keyOf = ({ part, coil }: WantedPart): string => `${part} ${coil ?? ''}`;
  const wanted = wantedPart.value && keyOf(wantedPart.value);
  const nameOf = ({ part, coil }: WantedPart): string =>
    part === 'coil' && coil !== undefined && set.coils.length > 1 ? texts.coil(set.coils[coil].name) : texts.part[part];
  return (
    <label class="measure-wanted">
      <span>{texts.wantToKnow}</span>
      <select
        id="measure-wanted"
        value={wanted && places.some((one) => keyOf(one) === wanted) ? wanted : EVERYTHING}
        onChange={(event) => {
          wantedPart.value = places.find((one) => keyOf(one) === event.currentTarget.value);
        }}
      >
        <option value={EVERYTHING}>{texts.whatHelps}</option>
        {places.map((one) => (
          <option key={keyOf(one)} value={keyOf(one)}>
            {nameOf(one)}
          </option>
        ))}
      </select>
    </label>
  );
}
