import { isLoop } from '../../../engine/kinds/loops.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import { isHeard } from '../../../engine/reception/verdict.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { stageLevel, stageSentence, verdictWords } from '../../words/index.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { aerialDial } from './aerial-dial.ts';
import { OUT_WORDS } from './best.ts';
import { bringUpSteps, standingVoltage, standsAlone } from './bring-up-steps.ts';
import { dialText } from './dial-text.ts';
import { faultRows } from './faults.ts';
import { glossary } from './glossary.ts';
import { metered, volts } from './meter-words.ts';
import { kHz } from './words.ts';

/** Room that a heading keeps with it: a table's head and its first row. */
const WITH_ROW = 30;
/** More stations than these would crowd out the rest. */
const MOST_STATIONS = 20;

/** Step by step from the wired board to the first station, with this set's own figures. */
export function bringUpSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const steps = bringUpSteps(set, reception).map((s, i) => ['', `${i + 1}. ${s.act}`, s.expect, s.suspect]);
  const stations = stationTable(set, reception);
  const faults = faultRows(set);
  const words = glossary([
    ...steps.flat(),
    ...faults.flat(),
    ...(set.tuning.kind === 'variable' ? ['meshed'] : []),
    ...reception.stations.flatMap((s) => s.path.flatMap((stage) => [stageLevel(stage), stageSentence(stage)])),
  ]);
  const out = OUT_WORDS[set.load.kind];
  const off = isLoop(set.aerial)
    ? `The ${out} ${out === 'phones' ? 'stay' : 'stays'}`
    : `Aerial, earth and ${out} stay`;
  return fewestPages((size) => {
    const flow = new Flow({ id: 'bring-up', title: 'Bringing it up', set: set.name, paper });
    flow.para(
      `In this order, each step before the next. ${off} off until a step asks for ${isLoop(set.aerial) && out !== 'phones' ? 'it' : 'them'}. Figures are for this very set; the ranges are what honest parts and hands may give.`,
    );
    flow.table(
      [
        { title: '✓', share: 0.4 },
        { title: 'Do', share: 4 },
        { title: 'Expect', share: 4 },
        { title: 'If not, suspect', share: 3.6 },
      ],
      steps,
      { size },
    );
    if (stations.rows.length > 1) {
      flow.heading('Every station, strongest first', WITH_ROW);
      flow.table(stations.columns, stations.rows, { size });
      for (const note of stations.notes) flow.para(note, { small: true });
    }
    flow.heading('When it is silent, or not as it should be', WITH_ROW);
    flow.table(
      [
        { title: 'What', share: 3 },
        { title: 'Look for, in this order', share: 8 },
      ],
      faults,
      { size },
    );
    if (words.length > 0) {
      flow.heading('Words');
      flow.list(words, 'dot', Math.min(size, 2.7));
    }
    return flow.finish('Bringing the set up step by step, with expected values.');
  });
}

/** Every station that can be tuned in and heard, by the direct voltage it gives, with room for the builder's own. */
function stationTable(set: SetDescription, reception: Reception) {
  const standing = standingVoltage(set);
  const second = aerialDial(set);
  const list = reception.stations
    .filter((s) => s.dial && isHeard(s.verdict))
    .sort((a, b) => Math.abs(b.directVoltage) - Math.abs(a.directVoltage))
    .slice(0, MOST_STATIONS);
  const small = list.some((s) => !metered(s.directVoltage));
  const stands = list.some((s) => standsAlone(standing, s.directVoltage));
  return {
    columns: [
      { title: 'Station', share: 4 },
      { title: 'kHz', share: 1.2, anchor: 'end' },
      { title: second?.mainTag ?? 'Dial', share: 1.3, anchor: 'end' },
      ...(second ? [{ title: second.tag, share: 1.3, anchor: 'end' } as const] : []),
      { title: 'Heard', share: 2 },
      { title: 'Direct voltage', share: 2, anchor: 'end' },
      { title: 'Mine: dial', share: 1.8 },
      { title: 'Mine: mV', share: 1.8 },
    ] as const,
    rows: list.map((s) => [
      s.name,
      kHz(s.frequency),
      dialText(set, s),
      ...(second ? [second.textOf(s)] : []),
      verdictWords[s.verdict],
      `${volts(s.directVoltage)}${metered(s.directVoltage) ? '' : ' *'}`,
      '………',
      metered(s.directVoltage) ? '………' : '—',
    ]),
    notes: [
      ...(stands
        ? [
            `${volts(standing)} of each stands there with no station at all; take that off, and what is left is the station’s.`,
          ]
        : []),
      ...(small ? ['* too small for an ordinary meter.'] : []),
    ],
  };
}
