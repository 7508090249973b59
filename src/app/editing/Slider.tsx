import { useRef } from 'preact/hooks';
import type { Path } from '../../engine/index.ts';
import { editingWords } from '../../outputs/words/index.ts';
import { pathText } from '../description/schema-at.ts';
import type { SliderScale } from '../description/slider-scale.ts';
import { useEdited } from '../state/edited.ts';

let drags = 0;

interface Props {
  path: Path;
  label: string;
  /** SI value now. */
  value: number;
  text: string;
  isDisabled: boolean;
  scaleFor: (value: number) => SliderScale;
  /** What an SI value is written as. */
  write: (value: number) => unknown;
}

/** A slider over the usual range; every movement is taken at once, a whole drag is one step to undo. */
export function Slider({ path, label, value, text, isDisabled, scaleFor, write }: Props) {
  const { edit, endRun } = useEdited();
  // A value outside the usual range widens the scale; during a drag the scale must not change under the hand.
  const held = useRef<{ run: string; scale: SliderScale } | undefined>(undefined);
  const scale = held.current?.scale ?? scaleFor(value);
  const finish = () => {
    if (!held.current) return;
    held.current = undefined;
    endRun();
  };
  return (
    <input
      type="range"
      disabled={isDisabled}
      class="slider"
      aria-label={editingWords.slider(label)}
      aria-valuetext={text}
      min={0}
      max={scale.steps}
      step={1}
      value={scale.stepOf(value)}
      onInput={(event) => {
        held.current ??= { run: `drag:${pathText(path)}:${++drags}`, scale };
        const { run, scale: steady } = held.current;
        edit(path, write(steady.valueAt(Number(event.currentTarget.value))), { run });
      }}
      onChange={finish}
      onBlur={finish}
    />
  );
}
