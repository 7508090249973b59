import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';

export function cautionsSheet(set: SetDescription, reception: Reception, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'cautions', title: 'Cautions', set: set.name, paper });
  flow.para('Read these before you begin, and hang them where the set is used.', { bold: true });
  flow.list(
    reception.cautions.map(({ text }) => text),
    'box',
    4,
  );
  flow.heading('In the shop and at the bench');
  flow.list([
    'Wear glasses when wire is cut, stretched or cleaned: ends fly.',
    'Solder and iron: work in moving air, wash your hands before you eat, and put the iron where no cord can catch it.',
    `${set.detector.kind === 'valve' || set.load.kind === 'amplifier' ? 'Nothing here is joined to the mains without isolation.' : 'Nothing here runs from the mains.'} If anything you join to it does, phones and recorder go through a battery-powered stage or an isolating transformer that is tested for it.`,
  ]);
  return flow.finish('Cautions for what this set contains.');
}
