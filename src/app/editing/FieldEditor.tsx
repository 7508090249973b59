import type { ComponentChildren } from 'preact';
import { type Field, isRecord, metadataOf, type Path, STARTERS } from '../../engine/index.ts';
import { optionName, editingWords as texts } from '../../outputs/words/index.ts';
import { editorKind, helpOf, labelOf, optionsOf, pathText } from '../description/schema-at.ts';

import type { Document } from '../state/document.ts';
import { useEdited } from '../state/edited.ts';
import { useWritten } from '../state/pieces.ts';
import { AssumedMark } from './AssumedMark.tsx';
import { Control, FigureSlider, useProblems } from './controls.tsx';
import { ListEditor } from './ListEditor.tsx';
import { focusAddButton } from './left-out.ts';
import { PartEditor } from './PartEditor.tsx';
import { Problems } from './Problems.tsx';

/** One field with its label, what it is about, its control, and what is wrong with it. */
export function FieldEditor({ field, path }: { field: Field; path: Path }) {
  const { edit } = useEdited();
  const kind = editorKind(field.schema);
  if (kind === 'list')
    return <ListEditor path={path} title={labelOf(field)} onEmpty={() => leaveOut(edit, field, path)} />;
  if (kind === 'part')
    return (
      <NestedPart field={field} path={path}>
        <PartEditor path={path} />
      </NestedPart>
    );
  if (kind === 'choice-or-part') return <ChoiceOrPart field={field} path={path} />;
  return <PlainField field={field} path={path} />;
}

function PlainField({ field, path }: { field: Field; path: Path }) {
  const { edit } = useEdited();
  const id = `f-${pathText(path)}`;
  const problems = useProblems(path);
  const label = labelOf(field);
  const about = helpOf(field);
  const canLeaveOut = field.optional && field.fallback === undefined;
  const described = [about ? `${id}-about` : '', problems.length ? `${id}-problem` : ''].filter(Boolean).join(' ');
  return (
    <div class={`field${problems.length ? ' has-problem' : ''}`}>
      <div class="field-head">
        <label for={id}>{label}</label>
        <AssumedMark path={path} label={label} />
        <Control field={field} path={path} id={id} describedBy={described || undefined} invalid={problems.length > 0} />
        {canLeaveOut && (
          <button
            type="button"
            class="leave-out"
            aria-label={texts.leaveOutField(label)}
            title={texts.leaveOut}
            onClick={() => leaveOut(edit, field, path)}
          >
            ×
          </button>
        )}
      </div>
      <FigureSlider field={field} path={path} />
      {about && (
        <p class="about" id={`${id}-about`}>
          {about}
        </p>
      )}
      <Problems id={`${id}-problem`} problems={problems} />
    </div>
  );
}

function leaveOut(edit: Document['edit'], field: Field, path: Path): void {
  edit(path, undefined, { label: texts.leaveOutLabel(labelOf(field)) });
  focusAddButton(path);
}

function NestedPart({ field, path, children }: { field: Field; path: Path; children: ComponentChildren }) {
  const { edit } = useEdited();
  return (
    <fieldset class="nested">
      <legend>
        {labelOf(field)}
        {field.optional && (
          <button
            type="button"
            class="leave-out"
            aria-label={texts.leaveOutField(labelOf(field))}
            title={texts.leaveOut}
            onClick={() => leaveOut(edit, field, path)}
          >
            ×
          </button>
        )}
      </legend>
      {children}
    </fieldset>
  );
}

/** The choice of figures of one's own; no other choice is called so. */
const OWN = '…';

/** A word from a list, or figures of one's own. */
function ChoiceOrPart({ field, path }: { field: Field; path: Path }) {
  const { edit } = useEdited();
  const options = field.schema.wrapped?.options ?? field.schema.options ?? [];
  const choices = (options as readonly Field['schema'][]).flatMap((option) =>
    optionsOf(option).map((word) => ({ word, field: metadataOf(option).field })),
  );
  const value = useWritten(path) ?? field.fallback;
  const problems = useProblems(path);
  const about = helpOf(field);
  const own = isRecord(value);
  const id = `f-${pathText(path)}`;
  const choose = (word: string) => {
    if (word !== OWN) edit(path, word);
    else edit(path, { ...STARTERS[field.key] });
  };
  return (
    <>
      <div class="field">
        <div class="field-head">
          <label for={id}>{labelOf(field)}</label>
          <select id={id} value={own ? OWN : String(value)} onChange={(event) => choose(event.currentTarget.value)}>
            {choices.map(({ word, field: of }) => (
              <option key={word} value={word}>
                {optionName(of, word)}
              </option>
            ))}
            <option value={OWN}>{texts.ownFigures}</option>
          </select>
        </div>
        {about && <p class="about">{about}</p>}
        {!own && <Problems id={`${id}-problem`} problems={problems} />}
      </div>
      {own && <PartEditor path={path} />}
    </>
  );
}
