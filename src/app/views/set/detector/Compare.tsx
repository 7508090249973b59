import { useMemo, useState } from 'preact/hooks';
import { type DetectorOnStation, formatNumber, formatQuantity, type SetDescription } from '../../../../engine/index.ts';
import { type ComparedCurve, detectorsCompared, isNearZero, MOST_COMPARED } from '../../../../outputs/plots/index.ts';
import {
  comparedDetector,
  detectionLawWords,
  detectorMeritSentence,
  detectorShortNames,
  compareWords as texts,
  verdictWords,
  warningSentences,
} from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { Plot } from '../../../widgets/Plot.tsx';
import { TableScroll } from '../../../widgets/TableScroll.tsx';
import { useAnswer } from '../../../workers/use-worker.ts';
import { HeardBars } from '../Heard.tsx';
import './detector.css';
import type { CompareQuestion } from './compare.worker.ts';

type Column = keyof typeof texts.columns;
type HeadCell = readonly [column: Column, alignment: 'number' | undefined];
const COLUMNS: readonly HeadCell[] = [
  ['detector', undefined],
  ['sound', 'number'],
  ['heard', undefined],
  ['directVoltage', 'number'],
  ['distortion', 'number'],
];
/** Shown on request: a table of all of them is wider than the page. */
const WIDE_COLUMNS: readonly HeadCell[] = [
  ['inputResistance', 'number'],
  ['loadedQ', 'number'],
  ['linearAbove', 'number'],
  ['bestTap', undefined],
  ['bestLoad', undefined],
];

interface Props {
  readonly set: SetDescription;
  readonly station: { readonly index: number; readonly name: string };
  /** Default day. */
  readonly time?: When;
  /** Put one of them in the set. */
  readonly onChoose: (detector: DetectorOnStation['description'], label: string) => void;
}

/** The same station through every usual detector, everything else unchanged. */
export function Compare({ set, station, time, onChoose }: Props) {
  const [open, setOpen] = useState(false);
  const [isWide, setWide] = useState(false);
  const [picked, setPicked] = useState<readonly string[] | undefined>();
  const question = useMemo(
    (): CompareQuestion | undefined => (open ? { set, station: station.index, time } : undefined),
    [open, set, station.index, time],
  );
  const { answer: rows, error: failed } = useAnswer<CompareQuestion, readonly DetectorOnStation[]>(
    () => new Worker(new URL('./compare.worker.ts', import.meta.url), { type: 'module', name: 'compare' }),
    question,
  );
  const drawn = useMemo(() => drawnOf(rows ?? [], picked), [rows, picked]);
  const curves = useMemo(
    () =>
      drawn.map(
        (row): ComparedCurve => ({
          name: comparedDetector(row),
          shorter: detectorShortNames(row.description),
          points: row.curve,
          operating: row.operating,
        }),
      ),
    [drawn],
  );

  return (
    <details class="card" onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}>
      <summary>{texts.title(station.name)}</summary>
      {failed !== '' && <p class="problem">{texts.failed(failed)}</p>}
      {open && !rows && failed === '' && <p class="quiet">{texts.trying}</p>}
      {rows && (
        <>
          <p>{result(rows)}</p>
          <TableScroll label={texts.table}>
            <table class="compare-table">
              <thead>
                <tr>
                  {(isWide ? [...COLUMNS, ...WIDE_COLUMNS] : COLUMNS).map(([column, kind]) => (
                    <th key={column} scope="col" class={kind}>
                      {texts.columns[column]}
                    </th>
                  ))}
                  <th scope="col">
                    <span class="visually-hidden">{texts.use}</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={comparedDetector(row)} aria-current={Math.abs(row.difference) < 0.01 ? 'true' : undefined}>
                    <th scope="row">
                      <label>
                        <input
                          type="checkbox"
                          checked={drawn.includes(row)}
                          disabled={!drawn.includes(row) && drawn.length >= MOST_COMPARED}
                          onChange={() =>
                            setPicked(
                              (drawn.includes(row) ? drawn.filter((r) => r !== row) : [...drawn, row]).map(
                                comparedDetector,
                              ),
                            )
                          }
                        />{' '}
                        {comparedDetector(row)}
                      </label>
                    </th>
                    <td class="number">{texts.sound(row.soundPressureLevel, row.difference)}</td>
                    <td>
                      <HeardBars verdict={row.heard} /> {verdictWords[row.heard]}
                    </td>
                    <td class="number">{formatQuantity(row.directVoltage, 'voltage', 2)}</td>
                    <td class="number">{formatQuantity(row.distortion, 'ratio', 2)}</td>
                    {isWide && (
                      <>
                        <td class="number">{texts.inputResistance(row.inputResistance, row.loading)}</td>
                        <td class="number">{formatNumber(row.loadedQ, 2)}</td>
                        <td class="number">{formatQuantity(row.squareLawEnds, 'voltage', 2)}</td>
                        <td>{row.bestTap ? texts.bestTap(row.bestTap.turns, row.bestTap.gain, row.bestTap.of) : ''}</td>
                        <td>{texts.bestLoad(row.bestLoad.resistance, row.bestLoad.gain)}</td>
                      </>
                    )}
                    <td>
                      <button
                        type="button"
                        class="chip"
                        aria-label={texts.useLabel(comparedDetector(row))}
                        onClick={() => onChoose(row.description, comparedDetector(row))}
                      >
                        {texts.use}
                      </button>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableScroll>
          <button type="button" class="chip" aria-pressed={isWide} onClick={() => setWide(!isWide)}>
            {texts.moreColumns}
          </button>
          <p class="quiet">{texts.about}</p>
          {drawn.length > 0 && (
            <Plot
              title={isNearZero(curves) ? texts.curvesNearZero : texts.curves}
              data={curves}
              draw={detectorsCompared}
            />
          )}
          <h4>{texts.merits}</h4>
          <ul class="bench-words">
            {drawn.map((row) => (
              <li key={comparedDetector(row)}>
                <strong>{texts.heading(comparedDetector(row))}</strong> {detectorMeritSentence(row.merit)}{' '}
                {detectionLawWords(row)}
                {row.warnings.length > 0 && ` ${warningSentences(row.warnings).join(' ')}`}
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}

/** Those ticked; at first the set's own, the loudest and the least loud. */
function drawnOf(rows: readonly DetectorOnStation[], picked: readonly string[] | undefined): DetectorOnStation[] {
  if (picked) return rows.filter((row) => picked.includes(comparedDetector(row)));
  const own = rows.find((r) => Math.abs(r.difference) < 0.01);
  return [...new Set([own, rows[0], rows[rows.length - 1]])].filter((row) => row !== undefined);
}

function result(rows: readonly DetectorOnStation[]): string {
  const [best] = rows;
  const least = rows[rows.length - 1];
  const gap = Math.round(best.soundPressureLevel - least.soundPressureLevel);
  return texts.result(
    { label: comparedDetector(best), difference: best.difference },
    { label: comparedDetector(least), difference: least.difference },
    Math.abs(best.difference) < 0.01,
    gap,
  );
}
