import { useRef, useState } from 'preact/hooks';
import {
  type Field,
  LONGEST_TEXT,
  metadataOf,
  namesCoil,
  type Path,
  typedQuantity,
  typedTurns,
} from '../../engine/index.ts';
import { fileWords, optionName, problemSentence, editingWords as texts } from '../../outputs/words/index.ts';
import { coilNames } from '../description/change-kind.ts';
import { figureScale, rangeOf } from '../description/figure-scale.ts';
import { renameCoil } from '../description/lists.ts';
import { rewrite } from '../description/quantity-text.ts';
import { editorKind, labelOf, optionsOf, pathText } from '../description/schema-at.ts';
import { turnsOfTap } from '../description/usual-range.ts';
import type { Document } from '../state/document.ts';
import { useEdited } from '../state/edited.ts';
import { usePiece, useWritten } from '../state/pieces.ts';
import { textOfFile } from '../state/text-of-file.ts';
import { Slider } from './Slider.tsx';
import { useDraft } from './use-draft.ts';

export interface ControlProps {
  field: Field;
  path: Path;
  id: string;
  /** In a table the column's heading is the label. */
  label?: string;
  describedBy?: string;
  invalid?: boolean;
}

/** The control of one plain field: text, number, quantity, choice, yes or no. */
export function Control(props: ControlProps) {
  const { field, path } = props;
  if (path[0] === 'arrangement' && namesCoil(field.key)) return <CoilChoice {...props} />;
  switch (editorKind(field.schema)) {
    case 'choice':
      return <Choice {...props} options={optionsOf(field.schema)} />;
    case 'yes':
      return <Yes {...props} />;
    case 'quantity':
    case 'number':
      return <Figure {...props} />;
    case 'lines':
      return <Lines {...props} />;
    case 'paragraphs':
      return <Paragraphs {...props} />;
    default:
      return <Words {...props} />;
  }
}

const attributes = ({ id, label, describedBy, invalid }: ControlProps) => ({
  id,
  'aria-label': label,
  'aria-describedby': describedBy,
  'aria-invalid': invalid || undefined,
});

/** The value as written, or the default that stands in for it. */
const useShown = (field: Field, path: Path): unknown => useWritten(path) ?? field.fallback;

const asText = (value: unknown): string =>
  value === undefined || value === null ? '' : typeof value === 'object' ? JSON.stringify(value) : String(value);

function Figure(props: ControlProps) {
  const { field, path } = props;
  const isNumber = editorKind(field.schema) === 'number';
  const { written } = useEdited();
  const own = useWritten(path);
  const { quantity, bounds } = metadataOf(field.schema);
  const value = own ?? field.fallback;
  // A plain number of the file is SI: shown with its unit, it is typed over in that unit.
  const shown = quantity && typeof value === 'number' ? rewrite(undefined, value, quantity, 6) : asText(value);
  const meaning = (text: string): unknown => {
    if (text.trim() === '') return field.optional ? undefined : '';
    if (isNumber) return typedTurns(text, turnsOfTap(written.peek(), path)) ?? text;
    return quantity ? typedQuantity(text, quantity, bounds, shown) : text.trim();
  };
  const draft = useDraft(path, shown, meaning);
  return (
    <input
      {...attributes(props)}
      {...draft}
      type="text"
      class={`figure-input${own === undefined ? ' by-default' : ''}`}
      autocomplete="off"
      spellcheck={false}
      inputMode={isNumber ? 'decimal' : 'text'}
    />
  );
}

/** The slider that goes with a figure, where there is a usual range. */
export function FigureSlider({ field, path }: { field: Field; path: Path }) {
  const { written } = useEdited();
  const shown = useShown(field, path);
  // The range follows other figures: a tap ends at the top of its coil.
  usePiece(`range:${pathText(path)}`, ({ written }) => JSON.stringify(rangeOf(written.value, field, path)));
  const figure = figureScale(written.peek(), field, path, shown);
  const last = useRef(figure);
  last.current = figure ?? last.current;
  // What is not understood leaves the slider where it was: nothing beside it moves.
  return (
    last.current && (
      <Slider path={path} label={labelOf(field)} text={String(shown)} isDisabled={!figure} {...last.current} />
    )
  );
}

function Choice(props: ControlProps & { options: readonly string[] }) {
  const { field, path, options } = props;
  const { edit } = useEdited();
  const shown = asText(useShown(field, path));
  return (
    <select {...attributes(props)} value={shown} onChange={(event) => edit(path, event.currentTarget.value)}>
      {!options.includes(shown) && <option value={shown}>{shown || texts.unknownChoice}</option>}
      {options.map((option) => (
        <option key={option} value={option}>
          {optionName(field.metadata.field, option)}
        </option>
      ))}
    </select>
  );
}

function CoilChoice(props: ControlProps) {
  const names = usePiece('coils', ({ written }) => JSON.stringify(coilNames(written.value)));
  return <Choice {...props} options={JSON.parse(names) as string[]} />;
}

function Yes(props: ControlProps) {
  const { edit } = useEdited();
  const shown = useShown(props.field, props.path) === true;
  return (
    <input
      {...attributes(props)}
      type="checkbox"
      checked={shown}
      onChange={(event) => edit(props.path, event.currentTarget.checked)}
    />
  );
}

function Words(props: ControlProps) {
  const { valueChange } = useEdited();
  const { field, path } = props;
  const isCoilName = path.length === 3 && path[0] === 'coils' && path[2] === 'name';
  const changeTo: Document['valueChange'] = (_, value, options) =>
    isCoilName
      ? {
          make: (base) => renameCoil(base, Number(path[1]), String(value ?? '')),
          options: { label: texts.coilName, ...options },
        }
      : valueChange(path, value, options);
  const meaning = (text: string) => (text === '' && field.optional ? undefined : text);
  const draft = useDraft(path, asText(useShown(field, path)), meaning, changeTo);
  return <input {...attributes(props)} {...draft} type="text" autocomplete="off" />;
}

/** Notes: Enter begins another line. */
function Paragraphs(props: ControlProps) {
  const { field, path } = props;
  const meaning = (text: string) => (text === '' && field.optional ? undefined : text);
  const { onKeyDown: _, ...draft } = useDraft(path, asText(useShown(field, path)), meaning);
  return <textarea {...attributes(props)} {...draft} class="paragraphs-input" rows={4} autocomplete="off" />;
}

/** Text of many lines, typed or pasted, or taken from a file as it is. */
function Lines(props: ControlProps) {
  const { edit } = useEdited();
  const { field, path } = props;
  const [problem, setProblem] = useState('');
  const meaning = (text: string) => (text === '' && field.optional ? undefined : text);
  const { onKeyDown: _, ...draft } = useDraft(path, asText(useShown(field, path)), meaning);
  const read = async (file: File | undefined) => {
    if (!file) return;
    setProblem('');
    if (file.size > 2 * LONGEST_TEXT) return setProblem(fileWords.tooLarge(file.name, LONGEST_TEXT / 1e3));
    const found = await textOfFile(file);
    if (found.text === undefined) setProblem(problemSentence({ ...found.problem, path: file.name }));
    else edit(path, found.text, { label: labelOf(field) });
  };
  return (
    <>
      <textarea {...attributes(props)} {...draft} class="lines-input" rows={8} spellcheck={false} autocomplete="off" />
      <label class="from-file">
        {texts.fromFile}{' '}
        <input
          type="file"
          accept=".s1p,.ts,.txt,text/plain"
          onChange={(event) => void read(event.currentTarget.files?.[0])}
        />
      </label>
      {problem !== '' && (
        <span class="problem" role="alert">
          {problem}
        </span>
      )}
    </>
  );
}

export const useProblems = (path: Path) => usePiece(pathText(path), ({ problemsAt }) => problemsAt(pathText(path)));
