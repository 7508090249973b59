import { bandContacts } from '../../../engine/built/band-contacts.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { drawBandSwitch } from '../../drawings/index.ts';
import { bandSwitchSheetWords as texts } from '../../words/index.ts';
import type { BoardParts } from '../board/parts.ts';
import type { Flow } from '../paper/flow.ts';

/** Pixels of a diagram's letters to millimetres on paper. */
const SCALE = 0.26;

/** The band switch by its symbol, and which band the sheet shows; nothing for a set without one. */
export function putBandSwitch(flow: Flow, set: SetDescription, { parts }: Pick<BoardParts, 'parts'>): void {
  const contacts = bandContacts(set);
  if (!contacts) return;
  flow.heading(texts.title);
  const isOnBoard = parts.some(({ kind }) => kind === 'switch');
  flow.para((isOnBoard ? texts.shownOnBoard : texts.shown)(contacts.bands[contacts.standing]), { small: true });
  const scene = drawBandSwitch(contacts);
  if (scene) flow.figure(scene, { scale: Math.min(SCALE, flow.width / scene.width) });
  if (contacts.hasOtherTraps) flow.para(texts.otherTraps, { small: true });
}

/** What every contact of the switch is joined to. */
export function putSwitchContacts(flow: Flow, set: SetDescription, { parts }: Pick<BoardParts, 'parts'>): void {
  const contacts = bandContacts(set);
  if (!contacts) return;
  const { bands, standing, poles, hasOtherTraps } = contacts;
  flow.heading(texts.title);
  const isOnBoard = parts.some(({ kind }) => kind === 'switch');
  if (isOnBoard) flow.para(texts.onBoard, { small: true });
  else {
    flow.para(texts.shown(bands[standing]), { small: true });
    flow.para(texts.wiring(set.detector.wiring !== 'full-wave'), { small: true });
  }
  flow.table(
    [
      { title: texts.columns.pole, share: 0.8, anchor: 'end' },
      { title: texts.columns.lead, share: 4 },
      ...bands.map((band) => ({ title: texts.columns.way(band), share: 4 })),
    ],
    poles.map((pole, i) => [
      `${i + 1}`,
      texts.leads(pole),
      ...bands.map((_, way) =>
        isOnBoard ? texts.markedWay({ mark: texts.mark(i, way), way: texts.way(pole, way) }) : texts.way(pole, way),
      ),
    ]),
  );
  if (hasOtherTraps) flow.para(texts.otherTraps, { small: true });
}
