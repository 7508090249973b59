import { type BuiltSet, builtSet } from '../../../engine/built/built-set.ts';
import type { PossibleCheck } from '../../../engine/faults/checks.ts';
import type { FaultCaution } from '../../../engine/faults/fault.ts';
import { type FaultModel, faultModel } from '../../../engine/faults/fault-model.ts';
import {
  type FaultTree,
  faultTree,
  prunedTree,
  type TreeBranch,
  type TreeCause,
  treeSureness,
} from '../../../engine/faults/fault-tree.ts';
import { touchOf } from '../../../engine/faults/touch.ts';
import type { FieldOptions } from '../../../engine/reception/path/field.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { line, text } from '../../scene/build.ts';
import type { Item } from '../../scene/scene.ts';
import {
  answersText,
  answerText,
  checkText,
  faultAnswer,
  faultCautionTexts,
  faultText,
  namedOnBand,
  remedyTexts,
  faultSheetWords as texts,
} from '../../words/index.ts';
import { type BoardParts, boardParts } from '../board/parts.ts';
import { touchedNames } from '../board/touched.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { pointerOf } from './dial-marks.ts';
import { faultTreeMap } from './fault-tree-map.ts';
import { fold } from './words.ts';

/** Cases of each fault: enough for the choice of checks, few enough to wait for. */
const CASES = 4;
/** Steps of the largest tree, and fewer until it fits. */
const MOST_STEPS = 16;
const FEWEST_STEPS = 5;
const MOST_PAGES = 2;
/** A check that takes longer is no step of a tree on paper, min. */
const LONGEST = 10;
/** Letters, mm. */
const SIZES = [2.7, 2.5] as const;
const LEADING = 1.28;

/**
 * The decision tree of a set on two pages: where each check touches, what is expected, where each answer leads, and the
 * faults with their remedies.
 * @param set as read; on the band that it stands on, which the sheet says
 * @param options when and where stations are heard, as of `receive`
 * @param paper A4 or Letter
 * @returns one sheet, mm; as many steps as fit
 * @throws RangeError for parts that cannot be built
 */
export function faultSheet(set: SetDescription, options: FieldOptions, paper: PaperName): Sheet {
  const built = builtSet(set);
  const model = faultModel(built, { ...options, cases: CASES });
  const readings = scaleReadings(model);
  const tree = faultTree(model, {
    steps: MOST_STEPS,
    isAsked: ({ check, effort }) =>
      // How wide a station is nobody measures without a comparison.
      effort <= LONGEST && check.kind !== 'width' && (check.kind !== 'dial' || readings.has(check.station)),
  });
  const about: About = { model, built, board: boardParts(set), readings };
  let sheet: Sheet | undefined;
  for (let steps = tree.steps.length; steps >= Math.min(FEWEST_STEPS, tree.steps.length); steps--)
    for (const size of SIZES) {
      sheet = laidOut(prunedTree(tree, steps), about, { paper, size });
      if (sheet.pages.length <= MOST_PAGES) return sheet;
    }
  return sheet!;
}

interface About {
  readonly model: FaultModel;
  readonly built: BuiltSet;
  readonly board: BoardParts;
  /** Of the scale, by station; only where it is read in degrees. */
  readonly readings: ReadonlyMap<number, number>;
}

/** Where on a round scale each station should be, by its place in the description. */
function scaleReadings({ bench, sound, built: { set } }: FaultModel): ReadonlyMap<number, number> {
  const { scale, at } = pointerOf(set);
  if (scale.kind !== 'round') return new Map();
  return new Map(
    bench.stations.flatMap((station, i) =>
      sound.within[i] && Math.abs(at(sound.positions[i]) - sound.scale[i]) < 0.5 ? [[station, sound.scale[i]]] : [],
    ),
  );
}

/** Faults and cautions by the numbers that they get on the sheet. */
class Numbers<T> {
  readonly all: T[] = [];
  of(one: T): number {
    if (!this.all.includes(one)) this.all.push(one);
    return this.all.indexOf(one) + 1;
  }
}

function laidOut(
  tree: FaultTree,
  about: About,
  { paper, size }: { readonly paper: PaperName; readonly size: number },
): Sheet {
  const { built } = about;
  const { headings } = texts;
  const cautions = new Numbers<FaultCaution>();
  const classes = new Numbers<number>();
  const steps = tree.steps.map((step) => stepTexts(step, about, cautions, classes));
  const causes = classes.all.map((own) => causeTexts(tree, own, built, cautions));
  const readings = readingRows(about, cautions);
  const flow = new Flow({ id: 'faults', title: texts.title, set: namedOnBand(built.set).name, paper });
  flow.para(texts.intro(treeSureness(tree)), { small: true });
  flow.heading(headings.cautions);
  inColumns(
    flow,
    cautions.all.map((caution, i) => ({ mark: `${i + 1}`, bold: '', plain: faultCautionTexts[caution] })),
    size,
  );
  const map = faultTreeMap(tree, (own) => texts.fault(classes.of(own)), flow.width);
  flow.need(map.height);
  flow.add('Figure', [...map.items(flow.left, flow.y)], texts.mapAlt).space(map.height);
  flow.para(texts.mapNote, { small: true, soft: true });
  flow.heading(headings.steps);
  for (const [i, step] of steps.entries()) drawStep(flow, i + 1, step, size);
  flow.heading(headings.causes);
  inColumns(
    flow,
    causes.map((cause, i) => ({ mark: texts.fault(i + 1), ...cause })),
    size,
  );
  flow.heading(headings.readings);
  flow.table(
    [
      { title: texts.columns.reading, share: 6.2 },
      { title: texts.columns.positive, share: 1.5 },
      { title: texts.columns.negative, share: 1.5 },
      { title: texts.columns.good, share: 1.2 },
      { title: texts.columns.cautions, share: 1.1 },
    ],
    readings,
    { size, gap: 0.5 },
  );
  flow.para(texts.meter, { small: true });
  return flow.finish(texts.description);
}

/** Every resistance that can be measured, then the direct voltage. */
function readingRows({ model, built, board }: About, cautions: Numbers<FaultCaution>): string[][] {
  const { bench, sound, checks } = model;
  const row = ({ check, cautions: minded }: PossibleCheck): string[] => {
    const place = check.kind === 'ohms' ? check.place : undefined;
    const touched = touchedNames(board, touchOf(check, built)).leads;
    const [positive = '', negative = ''] = (place && texts.cellsOff(place)) ?? touched;
    const [name, good] = place
      ? [texts.place(place, built), faultAnswer.ohms(sound.ohms[bench.places.indexOf(place)])]
      : [texts.voltage, faultAnswer.volts(sound.directVoltage)];
    return [name, positive, negative, good, texts.cautionNumbers(minded.map((caution) => cautions.of(caution)))];
  };
  const ofKind = (kind: PossibleCheck['check']['kind']) => checks.filter(({ check }) => check.kind === kind);
  return [...ofKind('ohms'), ...ofKind('volts')].map(row);
}

interface StepTexts {
  readonly act: string;
  /** Where to touch, what to expect, what to mind. */
  readonly notes: string;
  readonly branches: readonly { readonly answer: string; readonly goal: string; readonly isGood: boolean }[];
}

function stepTexts(
  { check, good, branches }: FaultTree['steps'][number],
  about: About,
  cautions: Numbers<FaultCaution>,
  classes: Numbers<number>,
): StepTexts {
  const { built, board, readings } = about;
  const { leads, tags } = touchedNames(board, touchOf(check.check, built));
  const place = check.check.kind === 'ohms' ? check.check.place : undefined;
  const reading = check.check.kind === 'dial' ? readings.get(check.check.station) : undefined;
  return {
    act: checkText(check.check, built),
    notes: texts.notes({
      place,
      leads,
      tags,
      good: goodText(check, good, about),
      cautions: check.cautions.map((caution) => cautions.of(caution)),
    }),
    branches: branches.map(({ answers, isGood, goal }) => ({
      answer: answersText(check, answers, reading),
      goal: goalText(goal, built, classes),
      isGood,
    })),
  };
}

/** What the check gives with nothing wrong: a figure where it is one. */
function goodText(possible: PossibleCheck, good: number, { model, readings }: About): string {
  const { check } = possible;
  const { bench, sound } = model;
  if (check.kind === 'ohms') return faultAnswer.ohms(sound.ohms[bench.places.indexOf(check.place)]);
  if (check.kind === 'volts') return faultAnswer.volts(sound.directVoltage);
  const reading = check.kind === 'dial' ? readings.get(check.station) : undefined;
  return reading === undefined ? answerText(possible, good) : texts.degrees(reading);
}

function goalText(goal: TreeBranch['goal'], built: BuiltSet, classes: Numbers<number>): string {
  if ('step' in goal) return texts.toStep(goal.step + 1);
  const [first, ...others] = goal.causes.map((cause) => ({ ...cause, number: classes.of(cause.class) }));
  return texts.toCauses({ first: { ...first, text: faultText(first.fault, built) }, others, rest: goal.rest });
}

/** A fault of the list: every one of its class that stands at an end, and what mends it. */
function causeTexts(tree: FaultTree, own: number, built: BuiltSet, cautions: Numbers<FaultCaution>) {
  const named = tree.steps
    .flatMap(({ branches }) =>
      branches.flatMap(({ goal }): readonly TreeCause[] => ('step' in goal ? [] : goal.causes)),
    )
    .filter((cause) => cause.class === own);
  const { remedy } = named[0].fault;
  const minded = [...new Set(named.flatMap(({ fault }) => fault.cautions))].map((caution) => cautions.of(caution));
  return {
    bold: texts.cause([...new Set(named.map(({ fault }) => faultText(fault, built)))]),
    plain: texts.remedy(remedyTexts[remedy], minded),
  };
}

/** Share of the width that says what to do; the rest says where each answer leads. */
const ACT_SHARE = 0.42;
const BADGE = 7;
/** Of the room for answers: the answer, then where it leads. */
const ANSWER_SHARE = 0.3;
const GAP = 3;

/** One step, never broken over two pages. */
function drawStep(flow: Flow, number: number, { act, notes, branches }: StepTexts, size: number): void {
  const row = size * LEADING;
  const actWidth = flow.width * ACT_SHARE - BADGE - GAP;
  const answersAt = flow.left + flow.width * ACT_SHARE;
  const answersWidth = flow.width * (1 - ACT_SHARE);
  const goalAt = answersAt + answersWidth * ANSWER_SHARE;
  const acts = fold(act, size, actWidth);
  const noted = fold(notes, size, actWidth, true);
  const answers = branches.map(({ answer, goal, isGood }) => ({
    answer: fold(answer, size, answersWidth * ANSWER_SHARE - GAP, isGood),
    goal: fold(goal, size, answersWidth * (1 - ANSWER_SHARE) - GAP),
    isGood,
  }));
  const rows = Math.max(
    acts.length + noted.length,
    answers.reduce((sum, one) => sum + Math.max(one.answer.length, one.goal.length), 0),
  );
  const height = rows * row + 1.8;
  flow.need(height);
  const top = flow.y + 0.6 + size;
  const items: Item[] = [text([flow.left, top], texts.step(number), size + 0.6, { bold: true })];
  const put = (lines: readonly string[], x: number, from: number, bold: boolean): void => {
    lines.forEach((words, k) => {
      items.push(text([x, top + (from + k) * row], words, size, { bold }));
    });
  };
  put(acts, flow.left + BADGE, 0, false);
  put(noted, flow.left + BADGE, acts.length, true);
  let at = 0;
  for (const { answer, goal, isGood } of answers) {
    put(answer, answersAt, at, isGood);
    put(goal, goalAt, at, false);
    at += Math.max(answer.length, goal.length);
  }
  flow.add('P', items).space(height);
  flow.add('Artifact', [line([flow.left, flow.y], [flow.left + flow.width, flow.y], { stroke: 'soft', width: 0.12 })]);
}

interface Entry {
  readonly mark: string;
  readonly bold: string;
  readonly plain: string;
}

/** Short entries in two columns, each whole; read down the first, then down the second. */
function inColumns(flow: Flow, entries: readonly Entry[], size: number): void {
  const row = size * LEADING;
  const width = (flow.width - GAP) / 2;
  const folded = entries.map(({ mark, bold, plain }) => {
    const [strong, weak] = [fold(bold, size, width - BADGE, true), fold(plain, size, width - BADGE)];
    const bolds = bold === '' ? [] : strong;
    return { mark, bolds, weak, height: (bolds.length + weak.length) * row + 0.9 };
  });
  let rest = folded;
  while (rest.length > 0) {
    flow.need(rest[0].height);
    const { left, right, after } = columns(rest, flow.room);
    [left, right].forEach((column, side) => {
      const x = flow.left + side * (width + GAP);
      let y = flow.y;
      for (const { mark, bolds, weak, height } of column) {
        const at = (k: number): [number, number] => [x + BADGE, y + size + k * row];
        flow.add('P', [
          text([x, y + size], mark, size, { bold: true }),
          ...bolds.map((words, k) => text(at(k), words, size, { bold: true })),
          ...weak.map((words, k) => text(at(bolds.length + k), words, size)),
        ]);
        y += height;
      }
    });
    flow.space(Math.max(heightOf(left), heightOf(right)) + 0.8);
    rest = after;
  }
}

const heightOf = (column: readonly { readonly height: number }[]): number =>
  column.reduce((sum, { height }) => sum + height, 0);

/** As many entries as two columns of this room take, about as many in each. */
function columns<T extends { readonly height: number }>(entries: readonly T[], room: number) {
  const fits = (from: number, height: number): number => {
    let [count, used] = [0, 0];
    while (from + count < entries.length && used + entries[from + count].height <= height)
      used += entries[from + count++].height;
    return count;
  };
  const wanted = Math.min(room, heightOf(entries));
  // The least height at which the two take as much as they can.
  const most = fits(0, room) + fits(fits(0, room), room);
  let height = wanted;
  for (const tried of entries.map((_, k) => heightOf(entries.slice(0, k + 1))))
    if (tried <= room && fits(0, tried) + fits(fits(0, tried), tried) >= most) {
      height = tried;
      break;
    }
  const first = Math.max(1, fits(0, height));
  const second = fits(first, height);
  return {
    left: entries.slice(0, first),
    right: entries.slice(first, first + second),
    after: entries.slice(first + second),
  };
}
