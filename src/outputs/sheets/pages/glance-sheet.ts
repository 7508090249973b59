import { isLoop } from '../../../engine/kinds/loops.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import { isHeard } from '../../../engine/reception/verdict.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { hasRanges } from '../../../engine/uncertainty/ranged-reception.ts';
import {
  besideWords,
  chanceCell,
  coverageSentences,
  forTheWork,
  receptionSummary,
  setViewWords,
  glanceSheetWords as texts,
  verdictWords,
} from '../../words/index.ts';
import type { Built } from '../board/layout.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow } from '../paper/flow.ts';
import { PAGE_MARGIN, PAGE_SMALL, PAPERS, type PaperName, type Sheet } from '../paper/page.ts';
import { setView } from '../view/whole-set.ts';
import { cautionSentences } from './cautions-sheet.ts';
import { dialText } from './dial-text.ts';
import { partsList, type WrittenSections } from './parts-list.ts';
import { kHz, printable } from './words.ts';

/** Of the view of the whole set, mm. */
const VIEW_HEIGHT = 78;

export function glanceSheet(
  set: SetDescription,
  reception: Reception,
  built: Built,
  sections: WrittenSections,
  paper: PaperName,
): Sheet {
  const cautions = cautionSentences(set, reception);
  const list = partsList(set, reception, built.parts, built.layout, sections);
  const view = setView(built.layout, { w: PAPERS[paper].width - 2 * PAGE_MARGIN, h: VIEW_HEIGHT });
  return fewestPages((layout) => {
    const flow = new Flow({
      id: 'glance',
      title: texts.title,
      heading: printable(set.name) || undefined,
      set: set.name,
      paper,
      file: 'glance',
      layout,
    });
    putSet(flow, set, cautions);
    flow.heading(setViewWords.title, VIEW_HEIGHT);
    flow.figure(view);
    flow.para(setViewWords.note, { small: true });
    putStations(flow, set, reception);
    putParts(flow, set, list);
    return flow.finish(texts.description(set.name));
  });
}

function putSet(flow: Flow, set: SetDescription, cautions: ReturnType<typeof cautionSentences>): void {
  flow.para(texts.planned({ place: set.place.name, kind: set.arrangement.kind }));
  if (set.notes) for (const part of set.notes.slice(0, 1500).split(/\n+/)) flow.para(part, { soft: true });
  if (set.assumed && set.assumed.length > 0) flow.para(texts.assumed(set.assumed.length), { small: true });
  flow.heading(texts.headings.cautions);
  flow.list([...cautions.set, ...cautions.bench], 'dot', PAGE_SMALL);
}

function putStations(flow: Flow, set: SetDescription, reception: Reception): void {
  const { headings, stations } = texts;
  flow.heading(headings.heard);
  flow.para(receptionSummary(reception));
  const heard = [...reception.stations]
    .sort((a, b) => (b.margin ?? Number.NEGATIVE_INFINITY) - (a.margin ?? Number.NEGATIVE_INFINITY))
    .slice(0, 24);
  if (heard.length > 0) {
    flow.table(
      [
        { title: stations.station, share: 4 },
        { title: stations.frequency, share: 1.2, anchor: 'end' },
        { title: stations.dial, share: 1.2, anchor: 'end' },
        { title: stations.heard, share: 1.8 },
        { title: stations.level, share: 1.9, anchor: 'end' },
        { title: stations.chance, share: 1.4, anchor: 'end' },
        { title: stations.beside, share: 4.4 },
      ],
      heard.map((s) => [
        s.name,
        kHz(s.frequency),
        s.dial ? dialText(set, s) : '—',
        verdictWords[s.verdict],
        !isHeard(s.verdict) || s.soundPressureLevel === undefined
          ? '—'
          : texts.level({ level: s.soundPressureLevel, range: hasRanges(s) ? s.ranges.soundPressureLevel : undefined }),
        hasRanges(s) ? chanceCell(s.chance) : '—',
        besideWords(s),
      ]),
    );
    if (heard.some(hasRanges)) flow.para(texts.chanceNote, { small: true });
  }
  for (const sentence of coverageSentences(reception.dial, reception.stations).slice(0, 1))
    flow.para(sentence, { small: true });
}

function putParts(flow: Flow, set: SetDescription, list: ReturnType<typeof partsList>): void {
  const { headings, parts } = texts;
  flow.heading(headings.parts);
  flow.table(
    [
      { title: parts.done, share: 0.4 },
      { title: parts.quantity, share: 0.9, anchor: 'end' },
      { title: parts.part, share: 2.6 },
      { title: parts.value, share: 4 },
      { title: parts.instead, share: 3.6 },
    ],
    list.map((r) => ['', r.quantity, r.what, r.value, r.instead]),
  );
  const winding = set.coils.some((coil) => coil.shape !== 'measured');
  flow.para(forTheWork({ winding, loop: isLoop(set.aerial) }), { small: true });
}
