import { detectorOnMeter } from '../../../engine/faults/detector-on-meter.ts';
import { OVERLOAD } from '../../../engine/faults/ohmmeter.ts';
import { once } from '../../../engine/numerics/lazily.ts';
import { benchCautions, cautionsFor } from '../../../engine/set/cautions.ts';
import type { Ohms } from '../../../engine/units/quantities.ts';
import { jointOnPin, sheetOnBoard, terminalMounted, wireUnderScrew } from '../../drawings/making/index.ts';
import { cautionTexts, boardBuilding as texts } from '../../words/index.ts';
import type { BoardLayout } from '../board/layout.ts';
import type { BoardParts } from '../board/parts.ts';
import { type Net, netsOf } from '../board/wiring.ts';
import type { Flow, StepGroup } from '../paper/flow.ts';
import { countPins } from './parts-list.ts';
import { resistanceOnMeter } from './resistance-on-meter.ts';
import type { SetOnBand, SetOnBands } from './set-on-band.ts';

/** Holes of a board by their diameter, mm, the smallest first. */
function holesOf({ placed }: BoardLayout): { diameter: number; count: number }[] {
  const counts = new Map<number, number>();
  for (const { diameter } of placed.flatMap(({ print }) => print.drills))
    counts.set(diameter, (counts.get(diameter) ?? 0) + 1);
  return [...counts]
    .map(([diameter, count]) => ({ diameter: diameter / 1e3, count }))
    .sort((a, b) => a.diameter - b.diameter);
}

/** How the board is cut, drilled, mounted and wired, step by step. */
function boardSteps({ parts }: BoardParts, layout: BoardLayout): readonly StepGroup[] {
  const isAssumed = layout.placed.some(({ print }) => print.assumed);
  const size = { width: Math.ceil(layout.width - 1e-6) / 1e3, length: Math.ceil(layout.height - 1e-6) / 1e3 };
  return [
    {
      lines: [...texts.cut(size), ...(isAssumed ? [texts.assumed] : []), texts.drill(holesOf(layout))],
      picture: sheetOnBoard(),
    },
    { lines: [...texts.terminals, ...texts.mount(countPins(parts))], picture: terminalMounted() },
    { lines: texts.loop, picture: wireUnderScrew() },
    { lines: [...texts.solder, ...texts.cross], picture: jointOnPin() },
  ];
}

/** Other meters show from a quarter to five times as much of a diode. Common practice, no source. */
const OTHER_METERS = [0.25, 5] as const;

type Row = readonly [from: string, to: string, expected: string, otherwise: string];

const outsideFirst = ({ ends }: Net) =>
  ends.find(({ part: { kind } }) => kind === 'aerial terminal' || kind === 'outputs') ??
  ends.find(({ part: { kind } }) => kind === 'coil' || kind === 'loop') ??
  ends[0];

/** What a meter shows from each point of the set to its earth line, with everything unplugged. */
function boardReadings({ set, readings: { ohmsFrom } }: SetOnBand, parts: BoardParts): Row[] {
  const nets = netsOf(parts);
  const earth = nets.find(({ isEarth }) => isEarth);
  if (!earth) return [];
  const to = earth.ends.find(({ part }) => part.kind === 'earth terminal') ?? earth.ends[earth.ends.length - 1];
  const samples = once(() => detectorOnMeter(set.detector));
  const placeOf = ({ part, id }: Net['ends'][number]) => ({ part: part.id, terminal: id });
  const rows: Row[] = [];
  for (const net of nets) {
    if (net === earth || net.ends.length < 2) continue;
    const from = outsideFirst(net);
    const [one, other] = [ohmsFrom(placeOf(from), placeOf(to)), ohmsFrom(placeOf(to), placeOf(from))];
    if (one === undefined || other === undefined) continue;
    if (!isBothWays(one, other)) {
      for (const [R, [red, black]] of [
        [one, [from, to]],
        [other, [to, from]],
      ] as const) {
        const sample = one < other === (R === one) ? samples().forward : samples().reverse;
        const [low, high] = sample.range.map((of, i) => (R * of * OTHER_METERS[i]) / sample.value);
        rows.push([
          red.terminal,
          black.terminal,
          R > OVERLOAD ? texts.open(OVERLOAD) : texts.diode({ value: R, low, high }),
          texts.diodeOtherwise,
        ]);
      }
    } else rows.push([from.terminal, to.terminal, ...sameBothWays(one)]);
  }
  return rows;
}

const isBothWays = (one: Ohms, other: Ohms): boolean =>
  one === other || (one > OVERLOAD && other > OVERLOAD) || Math.abs(one - other) < 0.05 * Math.max(one, other);

function sameBothWays(R: Ohms): [expected: string, otherwise: string] {
  if (R > OVERLOAD) return [texts.open(OVERLOAD), texts.openOtherwise];
  if (R < 0.05) return [texts.joined, texts.joinedOtherwise];
  return [texts.winding(resistanceOnMeter(R)), texts.windingOtherwise];
}

const BEFORE: Readonly<Record<string, keyof typeof texts.before>> = {
  valve: 'heater',
  galena: 'crystal',
  mineral: 'crystal',
};

/** Steps of the board, and its readings when it is wired. */
export function putBoardBuilding(flow: Flow, bands: SetOnBands, parts: BoardParts, layout: BoardLayout): void {
  const [standing, ...others] = bands;
  const { set } = standing;
  const steps = boardSteps(parts, layout);
  flow.heading(texts.headings.steps, flow.firstStepHeight(steps));
  flow.steps(steps);
  const bench = benchCautions(set).filter(({ code }) => code === 'bench.solder' || code === 'bench.wire-ends');
  for (const { code } of bench) flow.para(cautionTexts[code], { small: true });
  flow.heading(texts.headings.checks, 30);
  flow.para(texts.before[BEFORE[set.detector.kind] ?? 'plain']);
  for (const { code } of cautionsFor(set).filter(({ code }) => code === 'load.clicks-on-ears'))
    flow.para(cautionTexts[code], { small: true });
  const { from, to, expected, otherwise } = texts.eachWire;
  const putReadings = (rows: readonly Row[]): void => {
    flow.table(
      [
        { title: '✓', share: 0.4 },
        { title: texts.columns.from, share: 2.6 },
        { title: texts.columns.to, share: 2 },
        { title: texts.columns.expected, share: 4 },
        { title: texts.columns.otherwise, share: 4 },
      ],
      rows.map((row) => ['', ...row]),
    );
  };
  const eachWire: Row = [from, to, expected, otherwise];
  const isSwitched = parts.parts.some(({ kind }) => kind === 'switch');
  if (standing.band === undefined || !isSwitched) {
    putReadings([eachWire, ...boardReadings(standing, parts)]);
    return;
  }
  putReadings([eachWire]);
  for (const one of [standing, ...others]) {
    flow.heading(texts.headings.onBand(one.band ?? ''), 30);
    putReadings(boardReadings(one, parts));
  }
}
