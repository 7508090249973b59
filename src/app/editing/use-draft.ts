import { batch } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Path } from '../../engine/index.ts';
import { pathText } from '../description/schema-at.ts';
import type { Document, PendingChange } from '../state/document.ts';
import { useEdited } from '../state/edited.ts';
import { focusAddButton } from './left-out.ts';

/** After this pause what is typed is taken as meant. */
const PAUSE_MS = 450;
let spells = 0;

export interface Draft {
  readonly value: string;
  /** Text typed but not yet taken: undo is then the field's own. */
  readonly 'data-typing': boolean | undefined;
  readonly onFocus: () => void;
  readonly onInput: (event: { currentTarget: { value: string } }) => void;
  readonly onBlur: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/**
 * Typing in a field: shown at once, taken after a pause, at Enter or on leaving; one spell of typing is one step to undo.
 * What would take the key out is taken only at Enter or on leaving: the field must not vanish from under the keyboard.
 * @param shown the text of the value as it stands.
 * @param meaning what the text stands for in the file; undefined takes the key out.
 * @param changeTo the change that a value makes, where it is more than that value.
 */
export function useDraft(
  path: Path,
  shown: string,
  meaning: (text: string) => unknown,
  changeTo?: Document['valueChange'],
): Draft {
  const { apply, endRun, draft: pending, valueChange } = useEdited();
  const [draft, setDraft] = useState<string | undefined>(undefined);
  const spell = useRef({ run: '', before: '', timer: undefined as ReturnType<typeof setTimeout> | undefined });
  const own = useRef<{ readonly text: string; readonly change: PendingChange } | undefined>(undefined);
  // Another field's draft is not this one's to drop.
  const drop = () => {
    if (own.current && pending.peek() === own.current.change) pending.value = undefined;
    own.current = undefined;
  };
  useEffect(
    () => () => {
      if (spell.current.timer === undefined) drop();
    },
    [],
  );

  const changeOf = (text: string) => (changeTo ?? valueChange)(path, meaning(text), { run: spell.current.run });
  const take = (text: string) => {
    clearTimeout(spell.current.timer);
    spell.current.timer = undefined;
    batch(() => {
      if (text !== shown) apply(own.current?.text === text ? own.current.change : changeOf(text));
      drop();
    });
  };
  const finish = () => {
    if (draft !== undefined) take(draft);
    setDraft(undefined);
    endRun();
  };
  return {
    value: draft ?? shown,
    'data-typing': (draft !== undefined && draft !== shown) || undefined,
    onFocus: () => {
      spell.current.run = `type:${pathText(path)}:${++spells}`;
      spell.current.before = shown;
    },
    onInput: (event) => {
      const text = event.currentTarget.value;
      setDraft(text);
      if (text === shown) drop();
      else {
        own.current = { text, change: changeOf(text) };
        pending.value = own.current.change;
      }
      clearTimeout(spell.current.timer);
      if (meaning(text) !== undefined) spell.current.timer = setTimeout(() => take(text), PAUSE_MS);
    },
    onBlur: finish,
    onKeyDown: (event) => {
      if (event.key === 'Enter') {
        finish();
        if (draft !== undefined && meaning(draft) === undefined) focusAddButton(path);
      }
      if (event.key === 'Escape' && draft !== undefined) {
        event.preventDefault();
        take(spell.current.before);
        setDraft(undefined);
        endRun();
      }
    },
  };
}
