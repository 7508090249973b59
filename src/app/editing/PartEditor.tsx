import { useMemo } from 'preact/hooks';
import {
  type Field,
  fieldsOf,
  isRecord,
  type Path,
  type SchemaNode,
  valueAtPath,
  variantChoices,
  withValueAt,
} from '../../engine/index.ts';
import { kindName, type PartWithKinds, editingWords as texts } from '../../outputs/words/index.ts';
import { changeKind, groupOf, startingValue } from '../description/change-kind.ts';
import { addItem } from '../description/lists.ts';
import { editorKind, helpOf, labelOf, pathText, schemaAt } from '../description/schema-at.ts';
import type { Document } from '../state/document.ts';
import { useEdited } from '../state/edited.ts';
import { usePiece, useWritten } from '../state/pieces.ts';
import { AssumedMark } from './AssumedMark.tsx';
import { useProblems } from './controls.tsx';
import { FieldEditor } from './FieldEditor.tsx';
import { KeepChoice } from './KeepChoice.tsx';
import { addButtonId } from './left-out.ts';
import { Problems } from './Problems.tsx';

interface Props {
  path: Path;
  /** What the choice of kind is called: "Kind of aerial". */
  kindLabel?: string;
  /** Only these fields, or all but these. */
  only?: readonly string[];
  except?: readonly string[];
  /** Its kind is chosen elsewhere. */
  isKindFixed?: boolean;
}

/** Every field of a part, made from the description's schema; what was left out waits as a row of buttons. */
export function PartEditor(props: Props) {
  // The same element as before is not drawn again when what surrounds it is.
  const key = JSON.stringify(props);
  return useMemo(() => <Part key={key} {...props} />, [key]);
}

function Part({ path, kindLabel, only, except, isKindFixed }: Props) {
  const { written, change } = useEdited();
  const name = pathText(path);
  const node = usePiece(name, ({ written }) => schemaAt(written.value, path));
  // Drawn again only when the part has another kind or other keys; each field follows its own value.
  usePiece(name, ({ written }) => shapeOf(node, valueAtPath(written.value, path)));
  const problems = useProblems(path);
  if (!node) return null;
  const value = valueAtPath(written.peek(), path);
  const fields = fieldsOf(node, value).filter(
    (field) => (!only || only.includes(field.key)) && !except?.includes(field.key),
  );
  const isThere = (field: Field) =>
    !field.optional || field.fallback !== undefined || valueAtPath(value, [field.key]) !== undefined;
  const leftOut = fields.filter((field) => !isThere(field));
  const variant = isKindFixed || (only && !only.includes('kind')) ? undefined : variantChoices(node);
  return (
    <div class="part">
      {variant && <KindChoice path={path} label={kindLabel ?? texts.kind} variant={variant} />}
      {kindLabel !== undefined && <KeepChoice path={path} />}
      <Problems id={`p-${pathText(path)}`} problems={problems} />
      <div class="fields">
        {fields.filter(isThere).map((field) => (
          <FieldEditor key={field.key} field={field} path={[...path, field.key]} />
        ))}
      </div>
      {leftOut.length > 0 && (
        <p class="left-out">
          <span>{texts.add}</span>
          {leftOut.map((field) => (
            <button
              key={field.key}
              id={addButtonId([...path, field.key])}
              type="button"
              class="chip"
              title={helpOf(field)}
              onClick={() => addField(change, path, field)}
            >
              {labelOf(field)}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}

/** The kind of a part and the keys it has. */
function shapeOf(node: SchemaNode | undefined, value: unknown): string {
  const variant = node && variantChoices(node);
  const kind = variant ? valueAtPath(value, [variant.key]) : '';
  return JSON.stringify([kind, isRecord(value) ? Object.keys(value) : typeof value]);
}

function addField(change: Document['change'], part: Path, field: Field): void {
  const path = [...part, field.key];
  const begin = (base: unknown) =>
    editorKind(field.schema) === 'list'
      ? addItem(base, path)
      : withValueAt(base, path, startingValue(base, path, field));
  change(begin, { label: texts.addLabel(labelOf(field)) });
  // The button is gone once the field is there; what it made takes its place under the keyboard.
  requestAnimationFrame(() => {
    const id = `f-${pathText(path)}`;
    const made = document.getElementById(id) ?? document.querySelector<HTMLElement>(`[id^="${id}."]`);
    made?.focus();
    // What it begins with is typed over.
    if (made instanceof HTMLInputElement) made.select();
  });
}

/** A kind that was chosen. */
export interface ChosenKind {
  readonly kind: string;
  /** The description before it. */
  readonly before: unknown;
}

interface KindProps {
  readonly path: Path;
  readonly label: string;
  readonly variant: { readonly key: string; readonly choices: readonly string[] };
  readonly onChosen?: (chosen: ChosenKind) => void;
}

/** The kind of a part, to be changed: what still makes sense stays as written. */
export function KindChoice({ path, label, variant, onChosen }: KindProps) {
  const { written, change, tellOfChange } = useEdited();
  const id = `f-${pathText([...path, variant.key])}`;
  const now = String(useWritten([...path, variant.key]) ?? '');
  const choose = (kind: string) => {
    let dropped: readonly string[] = [];
    const before = written.peek();
    const part = path[0] === 'aerial' || path[0] === 'arrangement' || path[0] === 'coils' ? path[0] : 'other';
    change(
      (base) => {
        const changed = changeKind(base, path, kind);
        dropped = changed.dropped;
        return changed.written;
      },
      {
        label: texts.kindLabel(label, kindName(groupOf(path) as PartWithKinds, kind)),
        part: path.length <= 2 ? part : 'other',
      },
    );
    if (dropped.length > 0) tellOfChange(texts.noLongerUsed(dropped), 'dropped');
    onChosen?.({ kind, before });
  };
  const problems = useProblems([...path, variant.key]);
  return (
    <div class={`field kind${problems.length ? ' has-problem' : ''}`}>
      <div class="field-head">
        <label for={id}>{label}</label>
        <AssumedMark path={[...path, variant.key]} label={label} />
        <select id={id} value={now} onChange={(event) => choose(event.currentTarget.value)}>
          {!variant.choices.includes(now) && <option value={now}>{now || texts.unknownChoice}</option>}
          {variant.choices.map((choice) => (
            <option key={choice} value={choice}>
              {kindName(groupOf(path) as PartWithKinds, choice)}
            </option>
          ))}
        </select>
      </div>
      <Problems id={`${id}-problem`} problems={problems} />
    </div>
  );
}
