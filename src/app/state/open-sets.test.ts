import { batch } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Reception, SetDescription } from '../../engine/index.ts';
import type { EngineQuestion } from '../workers/engine.worker.ts';
import { EXAMPLES } from './examples.ts';
import { notices } from './notices.ts';
import { createOpenSets, type OpenSet } from './open-sets.ts';
import { createSetWorkers } from './set-workers.ts';

const description = (file: string): unknown => JSON.parse(EXAMPLES.find((one) => one.file === file)!.text);
const DEMO = 'medium-wave-galena.json';
const OTHER = 'spider-coil-earpiece.json';

/** Workers that answer when told to; a reception says of which set it is, and has as many stations as that. */
function pageWithTwoSets() {
  const asked: { worker: string; question: EngineQuestion; answer: (answer: unknown) => void; fail: () => void }[] = [];
  const workers = createSetWorkers((name) => {
    const worker = {
      onmessage: null as ((event: MessageEvent) => void) | null,
      onerror: null as ((event: ErrorEvent) => void) | null,
      postMessage: (question: EngineQuestion) =>
        void asked.push({
          worker: name,
          question,
          answer: (answer) => worker.onmessage!({ data: { answer } } as MessageEvent),
          fail: () => worker.onmessage!({ data: { error: 'stopped' } } as MessageEvent),
        }),
    };
    return worker;
  });
  const sets = createOpenSets(workers, { id: 'a', description: description(DEMO), fileName: 'a.json' });
  const a = sets.focused.value;
  const b = sets.open('b', description(OTHER), 'b.json');
  return { sets, a, b, asked };
}

const figuresOf = (set: SetDescription): Reception =>
  ({
    of: set.name,
    stations: set.place.stations.map(({ name, frequency }, index) => ({ name, frequency, index })),
    best: set.place.stations.map((_, index) => index),
    dial: { lowest: 5e5, highest: 16e5, points: [], stations: [] },
  }) as unknown as Reception;

/** Of no station it is known how sure its figures are. */
const NOTHING_RANGED = { stations: [] };

/** Answers whatever is asked until nothing more is; every answer carries the name of the set it is of. */
function answerAll(asked: ReturnType<typeof pageWithTwoSets>['asked']): void {
  for (let one = asked.shift(); one; one = asked.shift()) {
    const { set } = one.question;
    if (one.question.about === 'reception') one.answer(figuresOf(set));
    else if (one.question.about === 'suggestions') one.answer([{ of: set.name }]);
    else if (one.question.about === 'uncertainty') one.answer(NOTHING_RANGED);
    else one.answer({ of: set.name });
  }
}

/** All that a set shows, as far as another could change it. */
const shown = (set: OpenSet) => ({
  written: set.written.value,
  withDraft: set.writtenWithDraft.value,
  undo: set.undoLabel.value,
  redo: set.redoLabel.value,
  fileName: set.fileName.value,
  isSaved: set.isSaved.value,
  problems: set.problems.value,
  lastValidSet: set.lastValidSet.value,
  stage: set.stage.value,
  station: set.stationIndex.value,
  pointer: set.pointer.value,
  time: set.time.value,
  reception: set.reception.value,
  receptionSet: set.receptionSet.value,
  error: set.receptionError.value,
  chosen: set.chosen.value,
  suggestions: set.chosen.value && set.suggestionsFor(set.chosen.value),
  curves: set.curves.value,
  notices: notices.value.filter(({ of }) => of === set.id),
});

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  notices.value = [];
  vi.useRealTimers();
});

describe('two open sets', () => {
  it('each has its own figures, suggestions and plots, whichever worker answers when', () => {
    const { sets, a, b, asked } = pageWithTwoSets();
    answerAll(asked);
    vi.runOnlyPendingTimers();
    answerAll(asked);
    expect(b.curves.value).toEqual({ of: b.lastValidSet.value!.set.name });
    expect(b.suggestionsFor(b.chosen.value!)).toEqual([{ of: b.lastValidSet.value!.set.name }]);
    expect(a.curves.value).toBeUndefined();
    expect(a.suggestionsFor(a.chosen.value!)).toBeUndefined();
    sets.focus('a');
    vi.runOnlyPendingTimers();
    answerAll(asked);
    for (const set of [a, b]) {
      const { name } = set.lastValidSet.value!.set;
      expect(set.reception.value).toMatchObject({ of: name });
      expect(set.receptionSet.value).toBe(set.lastValidSet.value!.set);
      expect(set.curves.value).toEqual({ of: name });
      expect(set.suggestionsFor(set.chosen.value!)).toEqual([{ of: name }]);
    }
    expect(a.reception.value).not.toEqual(b.reception.value);
  });

  it('share their workers, and of questions that wait each set has its latest answered', () => {
    const { a, b, asked } = pageWithTwoSets();
    // The worker is still busy with a's first question.
    for (const turns of [60, 70, 80]) a.edit(['coils', 0, 'turns'], turns);
    b.edit(['name'], 'B anew');
    const answered: string[] = [];
    for (let one = asked.shift(); one; one = asked.shift()) {
      answered.push(`${one.worker} ${one.question.set.name} ${one.question.set.coils[0]?.turns ?? ''}`.trim());
      const { about, set } = one.question;
      one.answer(about === 'reception' ? figuresOf(set) : about === 'uncertainty' ? NOTHING_RANGED : { of: set.name });
    }
    const figures = answered.filter((text) => text.startsWith('reception'));
    expect(figures).toHaveLength(3);
    expect(figures[2]).toContain('80');
    expect(figures[1]).toContain('B anew');
    expect(a.receptionSet.value!.coils[0]).toMatchObject({ turns: 80 });
    expect(b.receptionSet.value!.name).toBe('B anew');
  });

  it('what was typed, once taken, is the very description that was kept while it was typed', () => {
    const { a } = pageWithTwoSets();
    const change = a.valueChange(['coils', 0, 'turns'], 61, { run: 'type' });
    a.draft.value = change;
    const kept = a.writtenWithDraft.value;
    batch(() => {
      a.apply(change);
      a.draft.value = undefined;
    });
    expect(a.written.value).toMatchObject({ coils: [{ turns: 61 }] });
    expect(a.writtenWithDraft.value).toBe(kept);
  });

  const ACTS: Readonly<Record<string, (set: OpenSet) => void>> = {
    'a value is changed': (set) => set.edit(['coils', 0, 'turns'], 60),
    'something wrong is typed': (set) => set.edit(['coils', 0, 'turns'], 'many'),
    'something is being typed': (set) => {
      set.draft.value = set.valueChange(['coils', 0, 'turns'], 61);
    },
    'a change is undone': (set) => {
      set.edit(['coils', 0, 'turns'], 60);
      set.undo();
    },
    'a change is undone and done again': (set) => {
      set.edit(['coils', 0, 'turns'], 60);
      set.undo();
      set.redo();
    },
    'a slider is dragged': (set) => {
      for (const turns of [60, 61, 62]) set.edit(['coils', 0, 'turns'], turns, { run: 'drag' });
      set.endRun();
    },
    'a change is told': (set) => {
      set.edit(['name'], 'Another');
      set.tellOfChange('Done.', 'tried');
    },
    'another station is chosen': (set) => set.chooseStation(2),
    'the pointer is moved': (set) => {
      set.pointer.value = 0.3;
    },
    'it becomes night': (set) => {
      set.time.value = 'night';
    },
    'another workbench is opened': (set) => {
      set.stage.value = 'ear';
    },
    'another description takes its place': (set) => set.replace(description('slider-set.json'), 'c.json', 'Open'),
    'it begins anew': (set) => set.beginWith(description('frame-aerial.json'), 'd.json', false),
    'it is saved': (set) => {
      set.edit(['name'], 'Kept');
      set.savedWritten.value = set.written.value;
    },
  };

  for (const [what, act] of Object.entries(ACTS))
    for (const [touched, other] of ['ab', 'ba'])
      it(`when ${what} in ${touched}, nothing of ${other} changes`, () => {
        const page = pageWithTwoSets();
        const sets = { a: page.a, b: page.b } as Readonly<Record<string, OpenSet>>;
        page.sets.focus(touched);
        sets[other].edit(['name'], 'The other');
        sets[other].tellOfChange('Renamed.', 'tried');
        answerAll(page.asked);
        vi.advanceTimersByTime(1000);
        answerAll(page.asked);
        const [before, own] = [shown(sets[other]), shown(sets[touched])];
        act(sets[touched]);
        answerAll(page.asked);
        vi.advanceTimersByTime(1000);
        answerAll(page.asked);
        expect(shown(sets[other])).toEqual(before);
        expect(shown(sets[touched])).not.toEqual(own);
      });

  describe('first figures', () => {
    /** Answers all but what is asked about medians, which waits. */
    function answerFigures(asked: ReturnType<typeof pageWithTwoSets>['asked']) {
      const medians = asked.filter(({ question }) => question.about === 'uncertainty');
      const others = asked.filter((one) => !medians.includes(one));
      asked.length = 0;
      answerAll(others);
      return medians;
    }

    it.each(['answer', 'fail'] as const)('are those of the chosen station until its medians have an %s', (outcome) => {
      const { b, asked } = pageWithTwoSets();
      expect(b.areFirstFigures.value).toBe(false);
      answerFigures(asked);
      answerFigures(asked);
      expect(b.areFirstFigures.value).toBe(true);
      vi.runOnlyPendingTimers();
      const [medians] = answerFigures(asked);
      expect(b.areFirstFigures.value).toBe(true);
      if (outcome === 'answer') medians.answer(NOTHING_RANGED);
      else medians.fail();
      expect(b.areFirstFigures.value).toBe(false);
    });

    it('are none of a set without stations', () => {
      const { sets, asked } = pageWithTwoSets();
      const demo = description(DEMO) as { place: object };
      const c = sets.open('c', { ...demo, place: { ...demo.place, stations: [] } }, 'c.json');
      for (let i = 0; i < 4; i++) {
        answerFigures(asked);
        vi.runOnlyPendingTimers();
      }
      expect(c.reception.value).toBeDefined();
      expect(c.areFirstFigures.value).toBe(false);
    });
  });

  it('a closed set hears no answer, asks nothing and leaves no notice; the focus goes to the one before it', () => {
    const { sets, a, b, asked } = pageWithTwoSets();
    b.edit(['name'], 'Going');
    b.tellOfChange('Renamed.', 'tried');
    sets.close('b');
    expect(sets.focused.value).toBe(a);
    expect(sets.all.value).toEqual([a]);
    expect(notices.value).toEqual([]);
    b.edit(['name'], 'Gone');
    answerAll(asked);
    vi.runOnlyPendingTimers();
    answerAll(asked);
    expect(b.reception.value).toBeUndefined();
    expect(a.reception.value).toMatchObject({ of: a.lastValidSet.value!.set.name });
  });

  it('a set open already is not opened twice, no focus goes where no set is, and one set stays open', () => {
    const { sets, a, b } = pageWithTwoSets();
    expect(sets.open('a', {}, 'other.json')).toBe(a);
    expect(sets.focused.value).toBe(a);
    expect(a.fileName.value).toBe('a.json');
    sets.focus('c');
    sets.close('c');
    expect(sets.focused.value).toBe(a);
    expect(sets.all.value).toEqual([a, b]);
    sets.close('a');
    expect(sets.focused.value).toBe(b);
    sets.close('b');
    expect(sets.all.value).toEqual([b]);
  });
});
