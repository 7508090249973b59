import type { Reception } from '../../../engine/reception/path/types.ts';
import { benchCautions } from '../../../engine/set/cautions.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { cautionTexts, cautionsSheetWords as texts } from '../../words/index.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';

export function cautionsSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'cautions', title: texts.title, set: set.name, paper });
  flow.para(texts.first, { bold: true });
  flow.list(
    reception.cautions.map(({ code }) => cautionTexts[code]),
    'box',
    4,
  );
  flow.heading(texts.bench);
  flow.list(benchCautions(set).map(({ code }) => cautionTexts[code]));
  return flow.finish(texts.description);
}
