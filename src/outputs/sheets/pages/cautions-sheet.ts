import type { Reception } from '../../../engine/reception/path/types.ts';
import { benchCautions, hearingCautions } from '../../../engine/set/cautions.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { hasRanges } from '../../../engine/uncertainty/ranged-reception.ts';
import { cautionTexts, cautionsSheetWords as texts } from '../../words/index.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';

/** What can hurt in or around the set, then what can at the bench: each as its sentence. */
export function cautionSentences(set: SetDescription, reception: Reception): { set: string[]; bench: string[] } {
  const levels = reception.stations.map((s) =>
    hasRanges(s) ? s.ranges.soundPressureLevel?.[1] : s.soundPressureLevel,
  );
  const loudest = Math.max(...levels.filter((level) => level !== undefined));
  const sentences = (list: readonly { readonly code: keyof typeof cautionTexts }[]): string[] =>
    list.map(({ code }) => cautionTexts[code]);
  return {
    set: sentences([...hearingCautions(set, loudest), ...reception.cautions]),
    bench: sentences(benchCautions(set)),
  };
}

export function cautionsSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'cautions', title: texts.title, set: set.name, paper });
  const cautions = cautionSentences(set, reception);
  flow.para(texts.first, { bold: true });
  flow.list(cautions.set, 'box', 4);
  flow.heading(texts.bench);
  flow.list(cautions.bench);
  return flow.finish(texts.description);
}
