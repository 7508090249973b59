import { useRef } from 'preact/hooks';
import { isRecord, type MeasuredFigure, type OfferedMeasurement, type SetDescription } from '../../../engine/index.ts';
import { besideCalculated, type FigureBeside, readingsFit } from '../../../outputs/plots/index.ts';
import {
  besideCalculatedWords,
  causesText,
  differenceText,
  fitPlotWords,
  fittedText,
  measureAnswer,
  measuredName,
  measurementName,
  propertyNames,
  measureView as texts,
  warningSentences,
} from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { focusIfLost } from '../../widgets/focus-if-lost.ts';
import { MeasuredFigures } from '../../widgets/MeasuredFigures.tsx';
import { Plot } from '../../widgets/Plot.tsx';
import type { FitAnswer } from './measure.worker.ts';
import { type CardFit, keptReadings } from './measure-answers.ts';
import { problemLine } from './problem-lines.ts';
import { useReadings } from './use-readings-of-set.ts';
import { draftKey } from './written-readings.ts';

interface Props {
  readonly card: OfferedMeasurement | undefined;
  readonly set: SetDescription;
  readonly measured: readonly MeasuredFigure[];
  readonly fit: CardFit;
}

type Fit = Extract<FitAnswer, { readonly ok: true }>;

/** What the readings say, beside what is calculated; what is used of them, and what was used before. */
export function MeasureResult({ card, set, measured, fit }: Props) {
  const { drafts, chosen } = useOpenSet();
  const station = chosen.value?.name;
  const { add, isWorking, outcome } = useReadings(set);
  const { answer, readings, error } = fit;
  const status = useRef<HTMLParagraphElement>(null);
  const use = () => {
    if (!card || !readings) return;
    const key = draftKey(card, station);
    const draft = drafts.peek()[key];
    add([readings.written], () => {
      // They are among the readings kept now, and would count twice; what was typed since stays.
      if (drafts.peek()[key] !== draft) return;
      const { [key]: _, ...others } = drafts.peek();
      drafts.value = others;
      focusIfLost(() => status.current);
    });
  };
  return (
    <div class="measure-result">
      <section aria-labelledby="measure-result-title">
        <h2 id="measure-result-title">{texts.result}</h2>
        {error !== '' && <p class="problem">{texts.notWorkedOut(error)}</p>}
        {!answer && error === '' && <p class="quiet">{texts.nothingYet}</p>}
        {answer && !answer.ok && (
          <>
            <p class="quiet">{texts.needed}</p>
            <ul class="sentences measure-problems">
              {answer.problems.map((one) => (
                <li key={one.path}>{problemLine(one)}</li>
              ))}
            </ul>
          </>
        )}
        {card && answer?.ok && (
          <>
            <FitFigures answer={answer} />
            {answer.plot && (
              <Plot
                title={fitPlotWords.title(measurementName(card.kind))}
                data={{ kind: card.kind, name: measurementName(card.kind), plot: answer.plot }}
                draw={readingsFit}
              />
            )}
            {answer.hasBeside && (
              <Plot
                title={besideCalculatedWords.title(measurementName(card.kind))}
                data={{ name: measurementName(card.kind), figures: figuresBeside(answer) }}
                draw={besideCalculated}
              />
            )}
            <button type="button" class="primary" aria-disabled={isWorking || undefined} onClick={use}>
              {texts.use}
            </button>
          </>
        )}
        <p role="status" ref={status} tabIndex={-1}>
          {outcome}
        </p>
      </section>
      <Kept set={set} />
      <Beside measured={measured} />
    </div>
  );
}

/** Those that a calculated figure stands beside; all where there is none. */
function figuresBeside({ figures }: Fit): readonly FigureBeside[] {
  const drawn = figures.filter(({ measured }) => Number.isFinite(measured.value));
  const beside = drawn.filter(({ calculated }) => calculated);
  return (beside.length > 0 ? beside : drawn).map(({ name, property, at, quantity, measured, calculated }) => ({
    label: measuredName({ property, name, at }),
    quantity,
    measured,
    calculated,
  }));
}

function FitFigures({ answer: { figures, warnings, suspects, joint } }: { readonly answer: Fit }) {
  return (
    <>
      <dl class="measure-figures">
        {figures.map(({ name, measured, at, quantity, property, path, calculated, agreement, causes, sizes }) => {
          const together = path && joint.find((one) => one.path.join('.') === path.join('.'));
          return (
            <div key={name}>
              <dt>{measuredName({ property, name, at })}</dt>
              <dd>
                <span class="measure-value">{fittedText(measured, quantity)}</span>
                {calculated && agreement && (
                  <span>
                    {measureAnswer.beside(
                      fittedText(calculated, quantity),
                      differenceText({ agreement, quantity, sizes }),
                    )}
                  </span>
                )}
                {causes.length > 0 && <span>{causesText(causes)}</span>}
                {together && <span>{measureAnswer.withAll(fittedText(together.after, quantity))}</span>}
              </dd>
            </div>
          );
        })}
      </dl>
      <ul class="sentences">
        {suspects.map(({ index, read, frequency, station }) => (
          <li key={index} class="figure-warning">
            {measureAnswer.suspect(index + 1, read, frequency, station)}
          </li>
        ))}
        {warningSentences(warnings).map((warning) => (
          <li key={warning} class="figure-warning">
            {warning}
          </li>
        ))}
      </ul>
    </>
  );
}

/** The readings that the description keeps; each can be taken out, and leaves no trace. */
function Kept({ set }: { readonly set: SetDescription }) {
  const { written } = useOpenSet();
  const { useThem, outcome } = useReadings(set);
  const kept = keptReadings(written.value);
  const list = useRef<HTMLUListElement>(null);
  const status = useRef<HTMLParagraphElement>(null);
  const remove = (at: number): void => {
    const text = JSON.stringify(kept[at]);
    useThem(
      // By what it is: before it is removed, another may be.
      (all) => {
        const place = all.findIndex((one) => JSON.stringify(one) === text);
        return all.filter((_, i) => i !== place);
      },
      () =>
        focusIfLost(() => {
          const buttons = list.current?.querySelectorAll('button') ?? [];
          return buttons[Math.min(at, buttons.length - 1)] ?? status.current;
        }),
    );
  };
  return (
    <section aria-labelledby="measure-kept-title">
      <h2 id="measure-kept-title">{texts.kept}</h2>
      {kept.length === 0 && <p class="quiet">{texts.keptNone}</p>}
      <ul class="measure-kept" ref={list}>
        {kept.map((one, i) => {
          const name = keptName(one);
          return (
            <li key={i}>
              <span>{name}</span>
              <button type="button" aria-label={texts.remove(name)} onClick={() => remove(i)}>
                {texts.removeShort}
              </button>
            </li>
          );
        })}
      </ul>
      <p role="status" ref={status} tabIndex={-1}>
        {outcome}
      </p>
    </section>
  );
}

const isName = (kind: unknown): kind is Parameters<typeof measurementName>[0] => typeof kind === 'string';
const textOr = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

function keptName(reading: unknown): string {
  if (!isRecord(reading) || !isName(reading.kind)) return texts.readings;
  const of = textOr(reading.coil) ?? textOr(reading.station) ?? propertyName(reading.of);
  return texts.keptOne(measurementName(reading.kind) ?? reading.kind, of, textOr(reading.date));
}

const propertyName = (id: unknown): string | undefined =>
  typeof id === 'string' && Object.hasOwn(propertyNames, id)
    ? propertyNames[id as keyof typeof propertyNames]
    : undefined;

/** Everything measured of this set beside what its sizes give. */
function Beside({ measured }: { readonly measured: readonly MeasuredFigure[] }) {
  const title = useRef<HTMLHeadingElement>(null);
  return (
    <section aria-labelledby="measure-beside-title">
      <h2 id="measure-beside-title" ref={title} tabIndex={-1}>
        {texts.beside}
      </h2>
      {measured.length === 0 && <p class="quiet">{texts.noneMeasured}</p>}
      <MeasuredFigures measured={measured} whenNone={() => title.current} />
    </section>
  );
}
