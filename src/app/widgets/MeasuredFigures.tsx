import { useEffect, useRef } from 'preact/hooks';
import { type MeasuredFigure, type Path, propertyOf, withoutMeasuredValue } from '../../engine/index.ts';
import {
  differenceText,
  fittedText,
  measureAnswer,
  measuredName,
  methodText,
  measureView as texts,
} from '../../outputs/words/index.ts';
import { useOpenSet } from '../state/set-context.ts';
import { focusIfLost } from './focus-if-lost.ts';
import './measured-figures.css';

interface Props {
  readonly measured: readonly MeasuredFigure[];
  /** What has the focus when the last of them is removed. */
  readonly whenNone: () => HTMLElement | null | undefined;
}

/** Measured values, which win, beside the calculated ones, and how they were measured; each can be removed. */
export function MeasuredFigures({ measured, whenNone }: Props) {
  const { change, tellOfChange } = useOpenSet();
  const list = useRef<HTMLDListElement>(null);
  const removed = useRef<number | undefined>(undefined);
  const remove = (path: Path, name: string, at: number) => {
    removed.current = at;
    change((base) => withoutMeasuredValue(base, path), { label: texts.useLabel });
    tellOfChange(texts.calculatedAgain(name), 'measured-removed');
  };
  // The figures follow a removal once they are worked out again.
  useEffect(() => {
    const at = removed.current;
    if (at === undefined) return;
    removed.current = undefined;
    focusIfLost(() => {
      const buttons = list.current?.querySelectorAll('button') ?? [];
      return buttons[Math.min(at, buttons.length - 1)] ?? whenNone();
    });
  }, [measured.length]);
  return (
    <dl class="measured-figures" ref={list}>
      {measured.map(({ property, path, at, calculated, measured: value, agreement, sizes, method, date }, i) => {
        const { quantity } = propertyOf(property);
        const name = measuredName({ property, at });
        const how = texts.keptOne(method === undefined ? texts.methodUnknown : methodText(method), undefined, date);
        return (
          <div key={path.join('.')}>
            <dt>{name}</dt>
            <dd>
              <span class="measured-value">{texts.measured(fittedText(value, quantity))}</span>
              <span>
                {measureAnswer.beside(fittedText(calculated, quantity), differenceText({ agreement, quantity, sizes }))}
              </span>
              <span class="about">{how}</span>
              <button
                type="button"
                class="link"
                aria-label={texts.remove(name)}
                title={texts.removeMeasured}
                onClick={() => remove(path, name, i)}
              >
                {texts.removeShort}
              </button>
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
