import type { Reception } from '../../../engine/reception/path/types.ts';
import { isHeard } from '../../../engine/reception/verdict.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { besideWords, coverageSentences, receptionSummary, verdictWords } from '../../words/index.ts';
import type { Built } from '../board/layout.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';
import { dialText } from './dial-text.ts';
import { forTheWork, partsList } from './parts-list.ts';
import { kHz, printable } from './words.ts';

export function glanceSheet(set: SetDescription, reception: Reception, built: Built, paper: PaperName): Sheet {
  const flow = new Flow({
    id: 'glance',
    title: 'The set at a glance',
    heading: printable(set.name) || undefined,
    set: set.name,
    paper,
    file: 'glance',
  });
  flow.para(`Planned for ${printable(set.place.name) || 'its place'}. ${ARRANGEMENTS[set.arrangement.kind]}`);
  if (set.notes) for (const part of set.notes.slice(0, 1500).split(/\n+/)) flow.para(part, { soft: true });
  flow.heading('What should be heard');
  flow.para(receptionSummary(reception));
  const heard = [...reception.stations]
    .sort((a, b) => (b.margin ?? Number.NEGATIVE_INFINITY) - (a.margin ?? Number.NEGATIVE_INFINITY))
    .slice(0, 24);
  if (heard.length > 0)
    flow.table(
      [
        { title: 'Station', share: 4 },
        { title: 'kHz', share: 1.2, anchor: 'end' },
        { title: 'Dial', share: 1.2, anchor: 'end' },
        { title: 'Heard', share: 1.8 },
        { title: 'At the ear', share: 1.9, anchor: 'end' },
        { title: 'Beside it', share: 5 },
      ],
      heard.map((s) => [
        s.name,
        kHz(s.frequency),
        s.dial ? dialText(set, s) : '—',
        verdictWords[s.verdict],
        !isHeard(s.verdict) || s.soundPressureLevel === undefined
          ? '—'
          : `${Math.round(s.soundPressureLevel)} dB ± ${Math.round(s.spread)}`,
        besideWords(s),
      ]),
    );
  for (const sentence of coverageSentences(reception.dial, reception.stations).slice(0, 1))
    flow.para(sentence, { small: true });
  flow.heading('Parts');
  flow.table(
    [
      { title: '✓', share: 0.4 },
      { title: 'Qty', share: 0.9, anchor: 'end' },
      { title: 'Part', share: 2.6 },
      { title: 'What it must be', share: 4 },
      { title: 'What will serve instead', share: 3.6 },
    ],
    partsList(set, reception, built.parts, built.layout).map((r) => ['', r.quantity, r.what, r.value, r.instead]),
  );
  flow.para(`For the work: ${forTheWork(set, built.parts)}.`, { small: true });
  return flow.finish(`${printable(set.name)}: what should be heard, and the list of parts.`);
}

const ARRANGEMENTS: Readonly<Record<SetDescription['arrangement']['kind'], string>> = {
  direct: 'One tuned circuit, the aerial straight on its top.',
  'series capacitor': 'One tuned circuit, fed by the aerial through a capacitor.',
  tapped: 'One tuned circuit, the aerial on a tap of its coil.',
  coupled: 'An aerial coil beside a tuned circuit.',
  'two circuits': 'Two tuned circuits, the aerial’s and the detector’s, loosely coupled.',
  slider: 'A coil tuned by a slider.',
  variometer: 'Tuned by turning one coil within another.',
  frame: 'A frame aerial that is its own coil.',
  'ferrite rod': 'A ferrite rod that is its own aerial and coil.',
  elements: 'A circuit of the builder’s own.',
};
