import type { OfferedMeasurement, ReadingField, ScalarField, SetDescription } from '../../../engine/index.ts';
import { formatQuantity } from '../../../engine/index.ts';
import { readingFieldName, measureView as texts } from '../../../outputs/words/index.ts';
import type { ReadingsDraft } from '../../state/measuring.ts';
import { isEmptyDraft } from '../../state/measuring.ts';
import { tell } from '../../state/notices.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { textOfFile } from '../../state/text-of-file.ts';
import { TableScroll } from '../../widgets/TableScroll.tsx';
import type { CardFit } from './measure-answers.ts';
import { EMPTY_DRAFT, fieldsOfCard, unitOf } from './written-readings.ts';

interface Props {
  readonly card: OfferedMeasurement;
  readonly set: SetDescription;
  readonly draft: ReadingsDraft;
  readonly fit: CardFit;
  readonly onChange: (draft: ReadingsDraft) => void;
}

const STATIONS = 'measure-stations';
const LEAST_ROWS = 4;

/** Places of what is refused, as the form calls them: "capacitor.minimum", "2.frequency" of a row. */
function refusedIn({ readings, answer }: CardFit): ReadonlySet<string> {
  if (!readings || !answer || answer.ok) return new Set();
  return new Set(
    answer.problems.map(({ path }) => {
      const inner = path.replace(/^measurements\[0\]\.?/, '');
      const row = /^\w+\[(\d+)\]\.?(.*)$/.exec(inner);
      return row ? `${readings.rowOf[Number(row[1])]}.${row[2]}` : inner;
    }),
  );
}

/** The fields of a card, as people type them. */
export function ReadingsForm({ card, set, draft, fit, onChange }: Props) {
  const { id } = useOpenSet();
  const fields = Object.entries(fieldsOfCard(card));
  const refused = refusedIn(fit);
  const field = (key: string, typed: string) => onChange({ ...draft, fields: { ...draft.fields, [key]: typed } });
  const plain = (key: string, one: ReadingField) => (
    <PlainFields
      key={key}
      card={card}
      fieldKey={key}
      field={one}
      draft={draft}
      refused={refused}
      onField={field}
      onChange={onChange}
    />
  );
  const needed = fields.filter(([, one]) => (!one.optional || one.isAsked) && one.type !== 'list');
  const optional = fields.filter(([, one]) => one.optional && !one.isAsked);
  const list = fields.find(([, one]) => one.type === 'list');
  return (
    <form class="readings-form" onSubmit={(event) => event.preventDefault()}>
      <datalist id={STATIONS}>
        {set.place.stations.map(({ name, frequency }) => (
          <option key={`${name} ${frequency}`} value={formatQuantity(frequency, 'frequency', 6)} label={name} />
        ))}
      </datalist>
      {needed.map(([key, one]) => plain(key, one))}
      {list?.[1].type === 'list' && (
        <ReadingsTable card={card} columns={list[1].columns} draft={draft} refused={refused} onChange={onChange} />
      )}
      <div class="readings-about">
        <TextField
          id="measure-date"
          label={texts.date}
          type="date"
          value={draft.fields.date ?? ''}
          onInput={(typed) => field('date', typed)}
        />
        <TextField
          id="measure-note"
          label={texts.note}
          value={draft.fields.note ?? ''}
          onInput={(typed) => field('note', typed)}
        />
      </div>
      {optional.length > 0 && (
        <details open={optional.some(([key, one]) => isTyped(draft, key, one)) || undefined}>
          <summary>{texts.optional}</summary>
          {optional.map(([key, one]) => plain(key, one))}
        </details>
      )}
      <button
        type="button"
        class="link"
        onClick={() => {
          onChange(EMPTY_DRAFT);
          const action = { label: texts.putBack, run: () => onChange(draft) };
          if (!isEmptyDraft(draft)) tell(texts.typedCleared, { key: 'readings-cleared', of: id, action });
        }}
      >
        {texts.clear}
      </button>
    </form>
  );
}

/** Whether anything stands in a field, or in one of a group. */
function isTyped({ fields, files }: ReadingsDraft, key: string, field: ReadingField): boolean {
  const keys = field.type === 'group' ? Object.keys(field.fields).map((inner) => `${key}.${inner}`) : [key];
  return keys.some((one) => (fields[one] ?? '') !== '' || files[one] !== undefined);
}

interface TextFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly type?: 'text' | 'date';
  readonly list?: string;
  readonly isRefused?: boolean;
  readonly onInput: (typed: string) => void;
}

function TextField({ id, label, value, type = 'text', list, isRefused, onInput }: TextFieldProps) {
  return (
    <div class="readings-field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type={type}
        list={list}
        autocomplete="off"
        data-typing
        value={value}
        aria-invalid={(isRefused && value !== '') || undefined}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
    </div>
  );
}

interface PlainProps {
  readonly card: OfferedMeasurement;
  readonly fieldKey: string;
  readonly field: ReadingField;
  readonly draft: ReadingsDraft;
  readonly refused: ReadonlySet<string>;
  readonly onField: (key: string, typed: string) => void;
  readonly onChange: (draft: ReadingsDraft) => void;
}

const named = (card: OfferedMeasurement, key: string, field: ScalarField): string =>
  texts.withUnit(readingFieldName(card.kind, key) ?? key, unitOf(field));

/** One field, or the fields of a group. */
function PlainFields({ card, fieldKey, field, draft, refused, onField, onChange }: PlainProps) {
  const label = readingFieldName(card.kind, fieldKey) ?? fieldKey;
  const id = `m-${fieldKey}`;
  switch (field.type) {
    case 'list':
      return null;
    case 'group':
      return (
        <fieldset class="readings-group">
          <legend>{label}</legend>
          {Object.entries(field.fields).map(([key, inner]) => (
            <Scalar
              key={key}
              card={card}
              path={`${fieldKey}.${key}`}
              field={inner}
              draft={draft}
              refused={refused}
              onField={onField}
            />
          ))}
        </fieldset>
      );
    case 'samples':
      return (
        <div class="readings-field is-long">
          <label for={id}>{label}</label>
          <textarea
            id={id}
            rows={3}
            data-typing
            value={draft.fields[fieldKey] ?? ''}
            onInput={(event) => onField(fieldKey, event.currentTarget.value)}
          />
        </div>
      );
    case 'text':
      return (
        <div class="readings-field">
          <label for={id}>{label}</label>
          <input
            id={id}
            type="file"
            onChange={async (event) => {
              const file = event.currentTarget.files?.[0];
              if (!file) return;
              const read = await textOfFile(file);
              // What cannot be read as text is refused by the reader of the field, with what it is.
              const text = 'text' in read && read.text !== undefined ? read.text : await file.text();
              onChange({ ...draft, files: { ...draft.files, [fieldKey]: { name: file.name, text } } });
            }}
          />
          {draft.files[fieldKey] && (
            <span class="about">
              {refused.has(fieldKey)
                ? texts.fileRefused(draft.files[fieldKey].name)
                : texts.fileTaken(draft.files[fieldKey].name)}
            </span>
          )}
        </div>
      );
    default:
      return <Scalar card={card} path={fieldKey} field={field} draft={draft} refused={refused} onField={onField} />;
  }
}

interface ScalarProps {
  readonly card: OfferedMeasurement;
  /** "group.key", or a key alone. */
  readonly path: string;
  readonly field: ScalarField;
  readonly draft: ReadingsDraft;
  readonly refused: ReadonlySet<string>;
  readonly onField: (key: string, typed: string) => void;
}

function Scalar({ card, path, field, draft, refused, onField }: ScalarProps) {
  const id = `m-${path}`;
  const value = draft.fields[path] ?? '';
  if (field.type === 'choice')
    return (
      <div class="readings-field">
        <label for={id}>{named(card, path, field)}</label>
        <select id={id} value={value} onChange={(event) => onField(path, event.currentTarget.value)}>
          <option value="">{texts.notChosen}</option>
          {field.options.map((option) => (
            <option key={option} value={option}>
              {option}
            </option>
          ))}
        </select>
      </div>
    );
  return (
    <TextField
      id={id}
      label={named(card, path, field)}
      value={value}
      list={field.type === 'quantity' && field.quantity === 'frequency' ? STATIONS : undefined}
      isRefused={refused.has(path)}
      onInput={(typed) => onField(path, typed)}
    />
  );
}

interface TableProps {
  readonly card: OfferedMeasurement;
  readonly columns: Readonly<Record<string, ScalarField & { readonly optional?: true }>>;
  readonly draft: ReadingsDraft;
  readonly refused: ReadonlySet<string>;
  readonly onChange: (draft: ReadingsDraft) => void;
}

/** Readings one below the other; there is always a blank row to go on with. */
function ReadingsTable({ card, columns, draft, refused, onChange }: TableProps) {
  const keys = Object.keys(columns);
  const rows = [...draft.rows];
  while (rows.length < LEAST_ROWS || Object.values(rows[rows.length - 1]).some((cell) => cell.trim() !== ''))
    rows.push({});
  const change = (index: number, key: string, typed: string) => {
    const next = rows.map((row, i) => (i === index ? { ...row, [key]: typed } : row));
    onChange({ ...draft, rows: next });
  };
  return (
    <TableScroll label={texts.readings}>
      <table class="readings-table">
        <thead>
          <tr>
            <th scope="col">#</th>
            {keys.map((key) => (
              <th key={key} scope="col">
                {named(card, `[].${key}`, columns[key])}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              {keys.map((key) => (
                <td key={key}>
                  <input
                    type="text"
                    autocomplete="off"
                    data-typing
                    list={key === 'frequency' ? STATIONS : undefined}
                    aria-label={texts.cell(readingFieldName(card.kind, `[].${key}`) ?? key, i + 1)}
                    aria-invalid={(refused.has(`${i}.${key}`) && (row[key] ?? '') !== '') || undefined}
                    value={row[key] ?? ''}
                    onInput={(event) => change(i, key, event.currentTarget.value)}
                  />
                </td>
              ))}
              <td>
                <button
                  type="button"
                  class="leave-out"
                  aria-label={texts.removeRow(i + 1)}
                  title={texts.removeRow(i + 1)}
                  onClick={() => onChange({ ...draft, rows: rows.filter((_, at) => at !== i) })}
                >
                  ×
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}
