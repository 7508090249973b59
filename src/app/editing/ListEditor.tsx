import {
  bare,
  type Field,
  fieldsOf,
  metadataOf,
  type Path,
  type SchemaNode,
  valueAtPath,
  variantChoices,
} from '../../engine/index.ts';
import { kindName, type PartWithKinds, editingWords as texts } from '../../outputs/words/index.ts';
import { groupOf } from '../description/change-kind.ts';
import { addItem, removeItem } from '../description/lists.ts';
import { labelOf, pathText, schemaAt } from '../description/schema-at.ts';
import { useEdited } from '../state/edited.ts';
import { Control } from './controls.tsx';
import { PartEditor } from './PartEditor.tsx';
import { Problems } from './Problems.tsx';

interface Props {
  path: Path;
  title: string;
  /** When the last row of a list that may be left out is removed. */
  onEmpty?: () => void;
}

/** A list of a part: rows of figures as a small table, parts of several kinds one below the other. */
export function ListEditor({ path, title, onEmpty }: Props) {
  const { written, change, problemsAt } = useEdited();
  const node = schemaAt(written.value, path);
  const item = node && bare(node).item;
  const list = valueAtPath(written.value, path);
  const rows = Array.isArray(list) ? list : [];
  if (!item) return null;
  const isOptional = node?.type === 'optional';
  const remove = (index: number) => {
    if (rows.length === 1 && isOptional && onEmpty) onEmpty();
    else change((base) => removeItem(base, path, index), { label: texts.removeFromLabel(title) });
  };
  const variant = variantChoices(item);
  const columns = variant ? [] : columnsOf(item);
  const add = (kind?: string) => change((base) => addItem(base, path, kind), { label: texts.addToLabel(title) });
  return (
    <div class="list">
      <h4>{title}</h4>
      <Problems id={`p-${pathText(path)}`} problems={problemsAt(pathText(path))} />
      {variant ? (
        rows.map((_, i) => (
          <fieldset class="nested element" key={i}>
            <legend>
              {String(valueAtPath(rows[i], ['name']) || i + 1)}
              <RemoveButton what={texts.rowOf(title, i + 1)} onClick={() => remove(i)} />
            </legend>
            <PartEditor path={[...path, i]} />
          </fieldset>
        ))
      ) : (
        <div class="table-scroll">
          <table>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column.key} scope="col">
                    {labelOf(column)}
                  </th>
                ))}
                <td />
              </tr>
            </thead>
            <tbody>
              {rows.map((_, i) => (
                <Row
                  key={i}
                  path={[...path, i]}
                  columns={columns}
                  title={texts.rowOf(title, i + 1)}
                  onRemove={() => remove(i)}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {variant ? (
        <p class="left-out">
          <span>{texts.add}</span>
          {variant.choices.map((choice) => (
            <button key={choice} type="button" class="chip" onClick={() => add(choice)}>
              {kindName(groupOf(path) as PartWithKinds, choice)}
            </button>
          ))}
        </p>
      ) : (
        <button type="button" class="chip" onClick={() => add()}>
          {texts.addRow}
        </button>
      )}
    </div>
  );
}

/** The columns of a table: fields of an object, or the places of a tuple. */
function columnsOf(item: SchemaNode): Field[] {
  const inside = bare(item);
  if (inside.type !== 'tuple') return fieldsOf(item, {});
  return (inside.items ?? []).map((schema, i) => ({
    key: String(i),
    schema,
    optional: false,
    fallback: undefined,
    metadata: metadataOf(schema),
  }));
}

function Row(props: { path: Path; columns: Field[]; title: string; onRemove: () => void }) {
  const { path, columns, title, onRemove } = props;
  const { written, problemsAt } = useEdited();
  const isTuple = Array.isArray(valueAtPath(written.value, path));
  const places = columns.map((column) => [...path, isTuple ? Number(column.key) : column.key]);
  const problems = [path, ...places].flatMap((place) => [...problemsAt(pathText(place))]);
  const id = `row-${pathText(path)}`;
  return (
    <>
      <tr>
        {columns.map((column, i) => (
          <td key={column.key}>
            <Control
              field={column}
              path={places[i]}
              id={`f-${pathText(places[i])}`}
              label={texts.inRow(labelOf(column), title)}
              describedBy={problems.length ? id : undefined}
              invalid={problemsAt(pathText(places[i])).length > 0}
            />
          </td>
        ))}
        <td>
          <RemoveButton what={title} onClick={onRemove} />
        </td>
      </tr>
      {problems.length > 0 && (
        <tr>
          <td colSpan={columns.length + 1}>
            <Problems id={id} problems={problems} />
          </td>
        </tr>
      )}
    </>
  );
}

function RemoveButton({ what, onClick }: { what: string; onClick: () => void }) {
  return (
    <button type="button" class="leave-out" aria-label={texts.removeItem(what)} title={texts.remove} onClick={onClick}>
      ×
    </button>
  );
}
