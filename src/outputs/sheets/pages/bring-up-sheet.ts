import { isLoop } from '../../../engine/kinds/loops.ts';
import { isHeard } from '../../../engine/reception/verdict.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { tapsOf } from '../../drawings/coil/coil.ts';
import {
  bringUpStep,
  faultRow,
  type SheetTerm,
  terms,
  bringUpSheetWords as texts,
  verdictWords,
} from '../../words/index.ts';
import type { Built } from '../board/layout.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { aerialDial } from './aerial-dial.ts';
import { bringUpStepsOnBands, standsAlone } from './bring-up-steps.ts';
import { dialText } from './dial-text.ts';
import { faultsOf } from './faults.ts';
import { metered } from './meter.ts';
import type { SetOnBand, SetOnBands } from './set-on-band.ts';
import { kHz } from './words.ts';

/** Room that a heading keeps with it: a table's head and its first row. */
const WITH_ROW = 30;
/** More stations than these would crowd out the rest. */
const MOST_STATIONS = 20;

/** Step by step from the wired board to the first station, with this set's own figures. */
export function bringUpSheet(bands: SetOnBands, { parts: { parts } }: Built, paper: PaperName): Sheet {
  const [{ set }] = bands;
  const steps = bringUpStepsOnBands(bands, parts).map((fact) => {
    const { act, about, expect, suspect } = bringUpStep(fact);
    return {
      act,
      about,
      notes: [
        { label: texts.steps.expect, words: expect },
        { label: texts.steps.suspect, words: suspect },
      ],
    };
  });
  const stations = bands.map((one) => ({ ...stationTable(one), band: one.band }));
  const faults = faultsOf(set).map(({ symptom, causes }) => faultRow(symptom, causes));
  const { headings } = texts;
  return fewestPages((layout) => {
    const flow = new Flow({ id: 'bring-up', title: texts.title, set: set.name, paper, layout });
    flow.para(texts.intro({ load: set.load.kind, loop: isLoop(set.aerial) }));
    flow.space(1.5);
    flow.checkedSteps(steps);
    for (const { columns, rows, notes, band } of stations) {
      if (rows.length < 2) continue;
      flow.heading(band === undefined ? headings.stations : headings.stationsOnBand(band), WITH_ROW);
      flow.table(columns, rows);
      for (const note of notes) flow.para(note, { small: true });
    }
    flow.heading(headings.faults, WITH_ROW);
    flow.table(
      [
        { title: texts.faults.symptom, share: 3 },
        { title: texts.faults.causes, share: 8 },
      ],
      faults.map((row) => [...row]),
    );
    flow.heading(headings.words);
    flow.list(
      termsOf(set).map((term) => terms[term]),
      'dot',
      Math.min(layout.size, 2.7),
    );
    return flow.finish(texts.description);
  });
}

/** The terms that the rows of this set use. */
function termsOf(set: SetDescription): SheetTerm[] {
  const used: readonly [SheetTerm, boolean][] = [
    ['dB', true],
    ['dB SPL', true],
    ['direct', true],
    ['lead-in', !isLoop(set.aerial)],
    ['meshed', set.tuning.kind === 'variable'],
    ['Q', true],
    ['stray capacitance', true],
    ['tap', set.coils.some((_, i) => tapsOf(set, i).length > 0)],
  ];
  return used.flatMap(([term, isUsed]) => (isUsed ? [term] : []));
}

/** Every station that can be tuned in and heard, by the direct voltage it gives, with room for the builder's own. */
function stationTable({ set, reception, readings }: SetOnBand) {
  const standing = readings.standingVoltage();
  const second = aerialDial(set);
  const list = reception.stations
    .filter((s) => s.dial && isHeard(s.verdict))
    .map((s) => ({ ...s, directVoltage: readings.directVoltage(s.index) }))
    .sort((a, b) => Math.abs(b.directVoltage) - Math.abs(a.directVoltage))
    .slice(0, MOST_STATIONS);
  const small = list.some((s) => !metered(s.directVoltage));
  const stands = list.some((s) => standsAlone(standing, s.directVoltage));
  const { stations } = texts;
  return {
    columns: [
      { title: stations.station, share: 4 },
      { title: stations.frequency, share: 1.2, anchor: 'end' },
      { title: second?.mainTag ?? stations.dial, share: 1.3, anchor: 'end' },
      ...(second ? [{ title: second.tag, share: 1.3, anchor: 'end' } as const] : []),
      { title: stations.heard, share: 2 },
      { title: stations.voltage, share: 2, anchor: 'end' },
      { title: stations.myDial, share: 1.8 },
      { title: stations.myVoltage, share: 1.8 },
    ] as const,
    rows: list.map((s) => [
      s.name,
      kHz(s.frequency),
      dialText(set, s),
      ...(second ? [second.textOf(s)] : []),
      verdictWords[s.verdict],
      texts.voltage({ voltage: s.directVoltage, metered: metered(s.directVoltage) }),
      '………',
      metered(s.directVoltage) ? '………' : '—',
    ]),
    notes: [...(stands ? [texts.standing(standing)] : []), ...(small ? [texts.small] : [])],
  };
}
