import {
  type BandContacts,
  bandContacts,
  type CoilPoint,
  leadPoints,
  type SwitchedLead,
} from '../../../engine/built/band-contacts.ts';
import type { Terminal } from '../../../engine/built/built-set.ts';
import { type JointId, jointId, type PartId, partId, terminalId } from '../../../engine/network/ids.ts';
import { PART } from '../../../engine/network/part-ids.ts';
import { turnSwitch } from '../../../engine/set/band-switch.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { terminalWords, bandSwitchSheetWords as texts } from '../../words/index.ts';
import { type BoardPart, type BoardParts, boardParts, TAG_LETTERS } from './parts.ts';

/** What hangs on each lead that a switch may take from coil to coil. */
const LEADS: Partial<Record<BoardPart['role'], SwitchedLead>> = {
  aerial: 'aerial lead',
  'series-capacitor': 'aerial lead',
  'trap-coil': 'aerial lead',
  'trap-capacitor': 'aerial lead',
  tuning: 'tuning capacitor',
  'aerial-tuning': 'aerial tuner',
  detector: 'detector',
  'second-detector': 'detector',
  'pump-capacitor': 'detector',
};

const isDescribedCoil = ({ kind, coil, role }: BoardPart): boolean =>
  kind === 'coil' && coil !== undefined && role !== 'trap-coil';
const earthOf = ({ parts }: BoardParts): JointId | undefined =>
  parts.find(({ kind }) => kind === 'earth terminal')?.ends[0].joint;
const jointAt = (coil: PartId, turn: number): JointId => jointId(`${coil}@${turn}`);

/** What of a board its other bands must share with it: all but coils and the capacitors that the switch puts in. */
const fixedParts = ({ parts }: BoardParts): string =>
  JSON.stringify(
    parts
      .filter((part) => !isDescribedCoil(part) && part.role !== 'series-capacitor')
      .map(({ id, values }) => [id, values]),
  );

/** Whether the switch alone makes one band of the other: anything else that changes is left to the builder. */
function isDrawable(set: SetDescription, contacts: BandContacts, boards: readonly BoardParts[]): boolean {
  const { poles, hasOtherTraps } = contacts;
  if (hasOtherTraps || poles.length === 0 || set.detector.wiring === 'full-wave') return false;
  return boards.every(
    (board) =>
      fixedParts(board) === fixedParts(boards[0]) &&
      earthOf(board) !== undefined &&
      !board.parts.some(({ role }) => role === 'parallel-capacitor') &&
      board.parts
        .filter(isDescribedCoil)
        .every(({ ends }) => ends.every(({ turn, joint }) => turn !== 0 || joint === earthOf(board))),
  );
}

/** A part with other joints at its ends. */
const joined = (part: BoardPart, jointOf: (end: Terminal) => JointId): BoardPart => ({
  ...part,
  ends: part.ends.map((end) => ({ ...end, joint: jointOf(end) })),
});

/** Each coil of any band with all the taps that some band uses. */
function coilsOf(boards: readonly BoardParts[], earth: JointId): Map<PartId, BoardPart> {
  const coils = new Map<PartId, BoardPart>();
  for (const part of boards.flatMap(({ parts }) => parts.filter(isDescribedCoil))) {
    const known = coils.get(part.id);
    const ends = [...(known?.ends ?? []), ...part.ends]
      .filter(({ id }, i, all) => all.findIndex((end) => end.id === id) === i)
      .sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
    const merged = joined({ ...part, ...known, ends }, ({ turn = 0 }) => (turn === 0 ? earth : jointAt(part.id, turn)));
    coils.set(part.id, merged);
  }
  return coils;
}

/** A part under a tag, its terminals named after it. */
function tagged(part: BoardPart, tag: string): BoardPart {
  const marks = part.ends.map((end) => (part.part ? terminalWords(end, part.part) : ''));
  return { ...part, tag, marks, terminals: marks.map((mark) => `${tag} ${mark}`) };
}

/**
 * A set's parts as `boardParts` has them, and with a band switch also the switch, the coils of all bands and the capacitors
 * that it puts in. Tags are those of the set without its switch; what is added comes after them.
 * @param set as read
 * @returns the parts of the band that the set stands on alone, where bands differ by more than the switch can change
 */
export function switchedParts(set: SetDescription): BoardParts {
  const standing = boardParts(set);
  const contacts = bandContacts(set);
  const earth = earthOf(standing);
  if (!contacts || earth === undefined) return standing;
  const boards = contacts.bands.map((_, band) => boardParts(turnSwitch(set, band)));
  if (!isDrawable(set, contacts, boards)) return standing;
  const coils = coilsOf([standing, ...boards], earth);
  const idOf = (name: string): PartId =>
    [...coils.values()].find(({ coil }) => coil?.name === name)?.id ?? partId(`coil ${name}`);
  const turnsNear = ({ coil, turn }: CoilPoint): number =>
    coils.get(idOf(coil))?.ends.find((end) => Math.abs((end.turn ?? 0) - turn) < 1e-6)?.turn ?? turn;
  const at = (point: CoilPoint): JointId => (point.turn === 0 ? earth : jointAt(idOf(point.coil), turnsNear(point)));
  const { poles, bands } = contacts;
  const wayJoint = (pole: number, way: number): JointId => jointId(`way ${pole} ${way}`);
  const movingJoint = (pole: number): JointId => {
    const { leads } = poles[pole];
    const end = leads.includes('coil end') ? poles[pole].ways.find((point) => point !== undefined) : undefined;
    const coil = end && [...coils.values()].find(({ coil }) => coil?.name === end.coil);
    return coil ? coil.ends[coil.ends.length - 1].joint : jointId(`pole ${pole}`);
  };
  const aerialPole = poles.findIndex(({ through }) => through !== undefined);
  const points = leadPoints(set);
  const leadJoint = (lead: SwitchedLead): JointId | undefined => {
    const pole = poles.findIndex(({ leads }) => leads.includes(lead));
    const point = points[lead];
    return pole >= 0 ? movingJoint(pole) : point && at(point);
  };
  const onCoil = new Set(standing.parts.filter(isDescribedCoil).flatMap(({ ends }) => ends.map(({ joint }) => joint)));
  /** Where the aerial lead comes from, before the capacitor that the switch puts in. */
  const capacitor = standing.parts.find(({ role }) => role === 'series-capacitor');
  const beforeCapacitor = capacitor?.ends.find(({ joint }) => !onCoil.has(joint))?.joint;

  const own = standing.parts.map((part): BoardPart => {
    const coil = coils.get(part.id);
    if (isDescribedCoil(part) && coil) return tagged(coil, part.tag);
    if (part.role === 'series-capacitor' && aerialPole >= 0) return throughSwitch(part, contacts.standing);
    return joined(part, ({ joint }) => {
      if (joint === earth) return joint;
      if (joint === beforeCapacitor && aerialPole >= 0) return movingJoint(aerialPole);
      if (!onCoil.has(joint)) return joint;
      return leadJoint(LEADS[part.role] ?? 'tuning capacitor') ?? joint;
    });
  });

  /** The capacitor of a band, between the contact of its way and its coil. */
  function throughSwitch(part: BoardPart, way: number): BoardPart {
    const point = poles[aerialPole].ways[way];
    const capacitance = poles[aerialPole].through?.[way];
    const named = {
      ...part,
      band: bands[way],
      words: capacitance === undefined ? part.words : texts.seriesCapacitor({ band: bands[way], capacitance }),
    };
    // The end towards the aerial comes first.
    let end = 0;
    return joined(named, () => (end++ === 0 || !point ? wayJoint(aerialPole, way) : at(point)));
  }

  const counts = new Map<string, number>();
  for (const { kind } of own) counts.set(TAG_LETTERS[kind], (counts.get(TAG_LETTERS[kind]) ?? 0) + 1);
  const next = (kind: BoardPart['kind']): string => {
    const letter = TAG_LETTERS[kind];
    const number = (counts.get(letter) ?? 0) + 1;
    counts.set(letter, number);
    return `${letter}${number}`;
  };
  const otherCoils = [...coils.values()]
    .filter(({ id }) => !standing.parts.some((part) => part.id === id))
    .map((coil) => tagged(coil, next('coil')));
  const otherCapacitors = boards.flatMap(({ parts }, way): BoardPart[] => {
    const part = parts.find(({ role }) => role === 'series-capacitor');
    if (!part || way === contacts.standing || aerialPole < 0) return [];
    const id = partId(`${PART.seriesCapacitor}:${way}`);
    return [tagged({ ...throughSwitch(part, way), id }, next('capacitor'))];
  });

  const switchId = partId('band-switch');
  const tag = next('switch');
  const switchEnds = poles.flatMap(({ ways, through }, pole) => [
    { mark: texts.mark(pole), joint: movingJoint(pole) },
    ...ways.map((point, way) => ({
      mark: texts.mark(pole, way),
      joint: point && through?.[way] === undefined ? at(point) : wayJoint(pole, way),
    })),
  ]);
  const bandSwitch: BoardPart = {
    id: switchId,
    role: 'band-switch',
    tag,
    kind: 'switch',
    words: texts.part,
    marks: switchEnds.map(({ mark }) => mark),
    terminals: switchEnds.map(({ mark }) => `${tag} ${mark}`),
    ends: switchEnds.map(({ mark, joint }) => ({ id: terminalId(switchId, mark), joint, is: 'one' })),
  };

  const parts = [...own, ...otherCoils, ...otherCapacitors, bandSwitch];
  const tagOf = (board: BoardParts, of: string): string =>
    parts.find(({ id }) => id === board.parts.find((part) => part.tag === of)?.id)?.tag ?? of;
  const couples = boards
    .flatMap((board) =>
      board.standing.map((pair) => ({ ...pair, first: tagOf(board, pair.first), second: tagOf(board, pair.second) })),
    )
    .filter((pair, i, all) => all.findIndex((one) => one.first === pair.first && one.second === pair.second) === i);
  return {
    parts,
    couplings: couples.map(({ first, second }) => [first, second] as const),
    standing: couples,
    built: standing.built,
  };
}
