import { useState } from 'preact/hooks';
import {
  ARRANGEMENTS_FOUND,
  type Field,
  fieldsOf,
  isRecord,
  valueAtPath,
  variantChoices,
  withValueAt,
} from '../../../engine/index.ts';
import {
  type BoxList,
  boxItemName,
  kindName,
  type PartWithKinds,
  findView as texts,
} from '../../../outputs/words/index.ts';
import { groupOf, newPart } from '../../description/change-kind.ts';
import { listAt, removeItem } from '../../description/lists.ts';
import { editorKind, helpOf, labelOf, schemaAt } from '../../description/schema-at.ts';
import { PartEditor } from '../../editing/PartEditor.tsx';
import type { OpenBox } from '../../state/open-boxes.ts';

const LISTS: readonly BoxList[] = [
  'formers',
  'wires',
  'capacitors',
  'detectors',
  'loads',
  'aerials',
  'earths',
  'transformers',
  'foils',
  'dielectrics',
  'switches',
];

/** What lies in the box, by kind; each part opens to be edited. */
export function BoxTray({ box }: { readonly box: OpenBox }) {
  const { written, undo, redo } = box;
  const root = schemaAt(written.value, [])!;
  const fields = new Map(fieldsOf(root, written.value).map((field) => [field.key, field]));
  const isFilled = (list: BoxList): boolean => listAt(written.value, [list]).length > 0;
  const section = (list: BoxList) => <Section key={list} box={box} list={list} field={fields.get(list)!} />;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: undo by key is of what the keyboard is in
    <div
      class="box-tray"
      onKeyDown={(event) => {
        const key = event.key.toLowerCase();
        const field = event.target as HTMLElement;
        if (!(event.ctrlKey || event.metaKey) || (key !== 'z' && key !== 'y') || field.dataset.typing === 'true')
          return;
        event.preventDefault();
        event.stopPropagation();
        if (key === 'y' || event.shiftKey) redo();
        else undo();
      }}
    >
      <PartEditor path={[]} only={['name', 'notes']} />
      {LISTS.filter(isFilled).map(section)}
      {LISTS.filter((list) => !isFilled(list)).map(section)}
      <Limits box={box} />
    </div>
  );
}

const PART_OF: { readonly [L in BoxList]: string | undefined } = {
  formers: 'former',
  wires: undefined,
  capacitors: 'capacitor',
  foils: undefined,
  dielectrics: undefined,
  detectors: 'detector',
  loads: 'load',
  transformers: undefined,
  switches: undefined,
  aerials: 'aerial',
  earths: 'earth',
};

function Section({ box, list, field }: { readonly box: OpenBox; readonly list: BoxList; readonly field: Field }) {
  const { written, understood, reading, change } = box;
  /** Place of the item that was just added: it is open. */
  const [added, setAdded] = useState<number | undefined>(undefined);
  const items = listAt(written.value, [list]);
  const label = labelOf(field);
  const problems = reading.value.ok ? [] : reading.value.problems;
  const part = PART_OF[list];
  const node = schemaAt({ ...asRecord(written.value), [list]: [{}] }, [list, 0, ...(part ? [part] : [])])!;
  const kinds = variantChoices(node)?.choices.filter((kind) => !WOUND.has(kind) || list !== 'aerials');
  const add = (kind?: string) => {
    const made = part
      ? { [part]: newPart(written.value, [list, items.length, part], node, kind) }
      : newPart(written.value, [list, items.length], node);
    change((base) => withValueAt(base, [list, listAt(base, [list]).length], made), { label: texts.added(label) });
    setAdded(items.length);
    requestAnimationFrame(() => document.getElementById(itemId(list, items.length))?.focus());
  };
  const nameOf = (index: number): string => {
    const known = understood.value?.box;
    return known?.[list][index] ? boxItemName(known, list, index) : texts.item(label, index + 1);
  };
  return (
    <section class="box-list" aria-label={label}>
      <div class="box-list-head">
        <h2 title={helpOf(field)}>{label}</h2>
        {kinds ? (
          <details class="box-add">
            <summary>
              + {texts.add}
              <span class="visually-hidden"> ({label})</span>
            </summary>
            <p class="box-kinds">
              {kinds.map((kind) => (
                <button
                  key={kind}
                  type="button"
                  class="chip"
                  onClick={(event) => {
                    event.currentTarget.closest('details')!.open = false;
                    add(kind);
                  }}
                >
                  {kindName(groupOf([list, 0, part!]) as PartWithKinds, kind)}
                </button>
              ))}
            </p>
          </details>
        ) : (
          <button type="button" class="link" onClick={() => add()}>
            + {texts.add}
            <span class="visually-hidden"> ({label})</span>
          </button>
        )}
      </div>
      {items.map((_, i) => {
        const here = problems.filter(({ path }) => path.startsWith(`${list}[${i}]`)).length;
        return (
          <details key={i} class="box-item" open={here > 0 || added === i}>
            <summary id={itemId(list, i)}>
              {nameOf(i)}
              {here > 0 && <span class="problem"> {texts.withProblems(here)}</span>}
            </summary>
            <PartEditor path={[list, i]} />
            <p class="buttons">
              <button
                type="button"
                onClick={() => {
                  setAdded(undefined);
                  change((base) => removeItem(base, [list], i), { label: texts.removedItem(nameOf(i)) });
                }}
              >
                {texts.removeItem(nameOf(i))}
              </button>
            </p>
          </details>
        );
      })}
    </section>
  );
}

/** Aerials that are wound from the box, on its frames and rods. */
const WOUND: ReadonlySet<string> = new Set(['frame', 'ferrite rod']);

const itemId = (list: string, index: number): string => `box-${list}-${index}`;
const asRecord = (value: unknown): Record<string, unknown> => (isRecord(value) ? value : {});

/** What a set that is looked for may not exceed. */
function Limits({ box }: { readonly box: OpenBox }) {
  const { written, edit } = box;
  const limits = valueAtPath(written.value, ['limits']);
  const allowed = valueAtPath(limits, ['arrangements']);
  const chosen = Array.isArray(allowed) ? allowed : undefined;
  const fields = fieldsOf(schemaAt({ format: 'faintwave-box/1', limits: {} }, ['limits'])!, {});
  const field = fields.find(({ key }) => key === 'arrangements' && editorKind(fields[0].schema) !== 'list');
  return (
    <details class="box-list box-limits">
      <summary>{texts.limits}</summary>
      {isRecord(limits) ? (
        <PartEditor path={['limits']} except={['arrangements']} />
      ) : (
        <button type="button" class="chip" onClick={() => edit(['limits'], {}, { label: texts.limits })}>
          + {texts.limits}
        </button>
      )}
      {field && (
        <fieldset class="nested">
          <legend>{labelOf(field)}</legend>
          {!chosen && <p class="about">{texts.allArrangements}</p>}
          <ul class="box-arrangements">
            {ARRANGEMENTS_FOUND.map((kind) => (
              <li key={kind}>
                <label>
                  <input
                    type="checkbox"
                    checked={chosen?.includes(kind) ?? true}
                    onChange={(event) => {
                      const before = ARRANGEMENTS_FOUND.filter((one) => chosen?.includes(one) ?? true);
                      const next = ARRANGEMENTS_FOUND.filter((one) =>
                        one === kind ? event.currentTarget.checked : before.includes(one),
                      );
                      const isAll = next.length === ARRANGEMENTS_FOUND.length;
                      edit(['limits', 'arrangements'], isAll ? undefined : next, { label: labelOf(field) });
                    }}
                  />{' '}
                  {kindName('arrangement', kind)}
                </label>
              </li>
            ))}
          </ul>
        </fieldset>
      )}
    </details>
  );
}
