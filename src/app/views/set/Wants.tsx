import { useState } from 'preact/hooks';
import type { WantValue } from '../../../engine/index.ts';
import {
  kindName,
  settingsWords,
  sideWords,
  stationFrequency,
  suggestionEffect,
  suggestionWords,
  wantTexts as texts,
  wantEffects,
  wantFigure,
  wantMetWords,
  wantName,
  wantSuggestionWords,
} from '../../../outputs/words/index.ts';
import { fieldPath } from '../../description/places.ts';
import {
  keptIn,
  startOfWant,
  stationKeys,
  WANT_KINDS,
  type WantKind,
  wantsIn,
  writeKept,
  writeList,
} from '../../description/wants.ts';
import { PartEditor } from '../../editing/PartEditor.tsx';
import { useChosenStation } from '../../state/chosen-station.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { tryOut } from '../../state/try-out.ts';
import { unbroken } from '../../widgets/unbroken.ts';
import '../../style/wants.css';
import { Assumed } from './Assumed.tsx';
import { BeginOwn } from './BeginOwn.tsx';

/** What the builder wants, each with what the set gives of it; what suggestions leave alone; and the best suggestion. */
export function Wants() {
  const set = useOpenSet();
  const { written, receptionSet, wantValues, chosen, change } = set;
  const [edited, setEdited] = useState<number | undefined>(undefined);
  const wants = wantsIn(written.value);
  const known = wantValues.value;
  // As long as other wants are on their way, none has a figure.
  const values = known && known.answer.length === wants.length ? known.answer : undefined;
  const stations = stationsOf(receptionSet.value?.place.stations ?? [], chosen.value?.index);
  const open = (index: number | undefined) => {
    setEdited(index);
    if (index !== undefined) focusSoon('want-kind');
  };
  const add = () => {
    change((base) => writeList(base, 'wants', [...wantsIn(base), startOfWant('loudest', stations)]), {
      label: texts.added,
    });
    open(wants.length);
  };
  const remove = (index: number) => {
    change(
      (base) =>
        writeList(
          base,
          'wants',
          wantsIn(base).filter((_, i) => i !== index),
        ),
      { label: texts.added },
    );
    setEdited(undefined);
    focusSoon('add-want');
  };
  return (
    <div class="wants">
      <div class="wants-line">
        <h2 class="wants-title" id="wants-title">
          {texts.iWant}
        </h2>
        <ul class="want-list" aria-labelledby="wants-title">
          {receptionSet.value &&
            wants.map((_, i) => (
              <WantChip
                key={i}
                index={i}
                value={values?.[i]}
                isOpen={edited === i}
                isBehind={known?.set !== receptionSet.value}
                onOpen={() => open(edited === i ? undefined : i)}
                onRemove={() => remove(i)}
              />
            ))}
        </ul>
        <button type="button" class="chip" id="add-want" disabled={stations.length === 0} onClick={add}>
          + {texts.add}
        </button>
        <Kept />
        <Assumed />
        <BeginOwn />
      </div>
      {edited !== undefined && wants[edited] && (
        <WantEditor index={edited} stations={stations} onDone={() => setEdited(undefined)} />
      )}
      {wants.length > 0 ? <BestSuggestion /> : <BestForStation />}
    </div>
  );
}

const focusSoon = (id: string): void => void requestAnimationFrame(() => document.getElementById(id)?.focus());

/** Names, the chosen one first; a name that two have stands as a frequency. */
function stationsOf(stations: readonly { name: string; frequency: number }[], chosen: number | undefined): string[] {
  const counts = new Map<string, number>();
  for (const { name } of stations) counts.set(name, (counts.get(name) ?? 0) + 1);
  const named = stations.map(({ name, frequency }) => (counts.get(name)! > 1 ? stationFrequency(frequency) : name));
  const first = chosen === undefined ? undefined : named[chosen];
  return first === undefined ? named : [first, ...named.filter((one) => one !== first)];
}

function WantChip(props: {
  index: number;
  value: WantValue | undefined;
  isOpen: boolean;
  isBehind: boolean;
  onOpen: () => void;
  onRemove: () => void;
}) {
  const { index, value, isOpen, isBehind, onOpen, onRemove } = props;
  const { written } = useOpenSet();
  const want = wantsIn(written.value)[index];
  const name = value ? wantName(value.want) : kindName('want', String(want.kind));
  const met = value && wantMetWords(value);
  return (
    <li class={`want${value?.isMet === false ? ' is-unmet' : ''}${isBehind ? ' is-behind' : ''}`}>
      <button
        type="button"
        class="want-name"
        id={`f-wants[${index}]`}
        aria-expanded={isOpen}
        title={texts.edit(name)}
        onClick={onOpen}
      >
        {name}{' '}
        {value && (
          <span class="want-state">
            {met && (
              <>
                <span aria-hidden="true">{value.isMet ? '✓' : '✗'}</span>
                <span class="visually-hidden">{met}</span>{' '}
              </>
            )}
            {wantFigure(value)}
          </span>
        )}
      </button>
      <button type="button" class="leave-out" aria-label={`${texts.remove}: ${name}`} onClick={onRemove}>
        ×
      </button>
    </li>
  );
}

/** The kind of a want, its stations, and its other figures. */
function WantEditor({ index, stations, onDone }: { index: number; stations: readonly string[]; onDone: () => void }) {
  const { written, change, edit } = useOpenSet();
  const want = wantsIn(written.value)[index];
  const replace = (kind: WantKind) =>
    change(
      (base) =>
        writeList(
          base,
          'wants',
          wantsIn(base).map((one, i) => (i === index ? startOfWant(kind, stations) : one)),
        ),
      { label: texts.added },
    );
  return (
    <fieldset
      class="want-editor"
      aria-label={texts.edit(kindName('want', String(want.kind)))}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        onDone();
        focusSoon(`f-wants[${index}]`);
      }}
    >
      <label>
        {texts.iWant}{' '}
        <select
          id="want-kind"
          value={String(want.kind)}
          onChange={(event) => replace(event.currentTarget.value as WantKind)}
        >
          {WANT_KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {kindName('want', kind)}
            </option>
          ))}
        </select>
      </label>
      {stationKeys(want).map((key) => (
        <label key={key}>
          {texts[key]}{' '}
          <select
            id={`f-wants[${index}].${key}`}
            value={String(want[key])}
            onChange={(event) => edit(['wants', index, key], event.currentTarget.value)}
          >
            {!stations.includes(String(want[key])) && <option value={String(want[key])}>{String(want[key])}</option>}
            {stations.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ))}
      <PartEditor
        path={['wants', index]}
        except={want.kind === 'clear' ? ['kind', 'station', 'from'] : ['kind', 'station']}
        isKindFixed
      />
      <button
        type="button"
        class="chip"
        onClick={() => {
          onDone();
          focusSoon(`f-wants[${index}]`);
        }}
      >
        {texts.done}
      </button>
    </fieldset>
  );
}

/** What suggestions leave as it is. */
function Kept() {
  const { written, change } = useOpenSet();
  const kept = keptIn(written.value);
  if (kept.length === 0) return null;
  return (
    <>
      <span class="wants-title" id="kept-title">
        {texts.keep}
      </span>
      <ul class="want-list" aria-labelledby="kept-title">
        {kept.map((text, i) => {
          const name = fieldPath(text, written.value);
          return (
            <li class="want" key={text} id={`f-keep[${i}]`} tabIndex={-1}>
              <span class="want-name">{name}</span>
              <button
                type="button"
                class="leave-out"
                aria-label={texts.removeKept(name)}
                onClick={() => change((base) => writeKept(base, text, false), { label: texts.keep })}
              >
                ×
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** Without wants the first of the suggestions for the station, in one line, where the others lie below the fold. */
function BestForStation() {
  const { suggestionsFor, areSuggestionsBehind, change, tellOfChange } = useOpenSet();
  const station = useChosenStation();
  const known = station && suggestionsFor(station);
  const best = known?.[0];
  if (!best) return <p class="want-best station-best quiet">{known ? sideWords.noSuggestions : texts.trying}</p>;
  const what = settingsWords(best);
  return (
    <p class={`want-best station-best${areSuggestionsBehind.value ? ' is-old' : ''}`}>
      <span class="station-best-words">{unbroken(`${texts.best(what)} ${suggestionEffect(best)}`)}</span>
      <button
        type="button"
        class="try"
        disabled={areSuggestionsBehind.value}
        aria-label={texts.tryBest(what)}
        onClick={() => tryOut({ change, tellOfChange }, best.changes, what, suggestionWords(best))}
      >
        {texts.tryIt}
      </button>
    </p>
  );
}

/** The first of the suggestions for the wants, where it is seen without scrolling. */
function BestSuggestion() {
  const { wantValues, wantSuggestions, receptionSet, change, tellOfChange } = useOpenSet();
  const known = wantSuggestions.value;
  const best = known?.answer[0];
  const isBehind = known?.set !== receptionSet.value;
  if (!known) return <p class="want-best quiet">{texts.trying}</p>;
  if (!best) {
    const isAllMet = wantValues.value?.answer.every(({ isMet }) => isMet !== false);
    return (
      <p class={`want-best quiet${isBehind ? ' is-old' : ''}`}>
        {isBehind ? texts.trying : isAllMet ? texts.allMet : texts.nothing}
      </p>
    );
  }
  const what = settingsWords(best);
  return (
    <p class={`want-best${isBehind ? ' is-old' : ''}`}>
      <span>
        {unbroken(texts.best(what))}{' '}
        <span class="quiet">
          {best.isTradeOff ? `${texts.tradeOff}: ` : ''}
          {unbroken(wantEffects(best))}
        </span>
      </span>{' '}
      <button
        type="button"
        class="try"
        disabled={isBehind}
        aria-label={texts.tryBest(what)}
        onClick={() => tryOut({ change, tellOfChange }, best.changes, what, wantSuggestionWords(best))}
      >
        {texts.tryIt}
      </button>
    </p>
  );
}
