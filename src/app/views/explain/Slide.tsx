import { useId } from 'preact/hooks';
import { explainTexts } from '../../../outputs/words/index.ts';
import { scaleOf } from '../../description/slider-scale.ts';

interface Props {
  label: string;
  value: number;
  /** Ends of the scale; logarithmic when `log`. */
  min: number;
  max: number;
  log?: boolean;
  /** Values are rounded to this. */
  round?: (value: number) => number;
  text: (value: number) => string;
  onChange: (value: number) => void;
  /** Puts it back to what the set has; shown while it differs. */
  onReset?: () => void;
}

const STEPS = 400;

/** A slider for one figure, with its value in words. */
export function Slide({ label, value, min, max, log = false, round = (v) => v, text, onChange, onReset }: Props) {
  const id = useId();
  const at = (part: number) => (log ? min * (max / min) ** part : min + (max - min) * part);
  const scale = scaleOf(Array.from({ length: STEPS + 1 }, (_, step) => round(at(step / STEPS))));
  return (
    <div class="explain-slide">
      <label for={id}>{label}</label>
      <output for={id}>{text(value)}</output>
      {onReset && (
        <button type="button" class="link" onClick={onReset} aria-label={explainTexts.settings.resetLabel(label)}>
          {explainTexts.settings.asInSet}
        </button>
      )}
      <input
        id={id}
        type="range"
        class="slider"
        min={0}
        max={scale.steps}
        step={1}
        value={scale.stepOf(value)}
        aria-valuetext={text(value)}
        onInput={(event) => onChange(scale.valueAt(Number(event.currentTarget.value)))}
      />
    </div>
  );
}
