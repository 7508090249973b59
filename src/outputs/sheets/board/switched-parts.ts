import {
  type BandContacts,
  bandContacts,
  type CoilPoint,
  leadPoints,
  type SwitchedLead,
  type SwitchPole,
} from '../../../engine/built/band-contacts.ts';
import type { Terminal } from '../../../engine/built/built-set.ts';
import { type JointId, jointId, type PartId, partId, terminalId } from '../../../engine/network/ids.ts';
import { trapCapacitor } from '../../../engine/network/part-ids.ts';
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

/** Whether a part lies in the aerial lead of one band alone, or is a trap at that band's coil. */
const isOfOneBand =
  ({ poles, sharedTraps, hasOtherTraps }: BandContacts) =>
  ({ role, part }: BoardPart): boolean => {
    if (role === 'series-capacitor') return poles.some(({ through }) => through !== undefined);
    const isTrap = role === 'trap-coil' || role === 'trap-capacitor';
    return isTrap && !hasOtherTraps && (part?.index ?? 0) >= sharedTraps;
  };

/** What of a board its other bands must share with it: all but coils, and what lies in the aerial lead of a band. */
const fixedParts = ({ parts }: BoardParts, contacts: BandContacts): string =>
  JSON.stringify(
    parts
      .filter((part) => !isDescribedCoil(part) && !isOfOneBand(contacts)(part))
      .map(({ id, values }) => [id, values]),
  );

/** Whether the switch alone makes one band of the other: anything else that changes is left to the builder. */
function isDrawable(contacts: BandContacts, boards: readonly BoardParts[]): boolean {
  const { poles, hasOtherTraps } = contacts;
  if (hasOtherTraps || poles.length === 0) return false;
  const isSwitchedEarth = earthedBySwitch(contacts);
  const ends = boards.flatMap((board) =>
    board.parts.filter(isDescribedCoil).flatMap((part) =>
      part.ends.map(({ turn = 0, joint }) => ({
        at: `${part.id}@${turn}`,
        isEarthed: joint === earthOf(board),
        isSwitched: isSwitchedEarth(part, turn),
      })),
    ),
  );
  return (
    boards.every(
      (board) => fixedParts(board, contacts) === fixedParts(boards[0], contacts) && earthOf(board) !== undefined,
    ) &&
    ends.every(
      (end) => end.isSwitched || ends.every((other) => other.at !== end.at || other.isEarthed === end.isEarthed),
    )
  );
}

/** Whether a point of a coil is joined to earth by the switch, and only on some bands. */
const earthedBySwitch = ({ poles }: BandContacts) => {
  const points = poles.filter(({ leads }) => leads.includes('earth')).flatMap(({ ways }) => ways);
  return ({ coil }: BoardPart, turn: number): boolean =>
    points.some((point) => point?.coil === coil?.name && isSameTurn(point?.turn ?? 0, turn));
};
const isSameTurn = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/** The joint that the aerial lead has behind the traps that all bands share. */
function feedOf({ parts }: BoardParts, sharedTraps: number): JointId | undefined {
  let feed = parts.find(({ kind }) => kind === 'aerial terminal')?.ends[0].joint;
  for (let i = 0; i < sharedTraps; i++) {
    const ends = parts.find(({ id }) => id === trapCapacitor(i))?.ends ?? [];
    // A parallel trap leads from one joint of the lead to the next.
    if (ends[0]?.joint === feed) feed = ends[1].joint;
  }
  return feed;
}

/** A part with other joints at its ends. */
const joined = (part: BoardPart, jointOf: (end: Terminal) => JointId): BoardPart => ({
  ...part,
  ends: part.ends.map((end) => ({ ...end, joint: jointOf(end) })),
});

/** Each coil of any band with all the taps that some band uses; what every band earths stays at earth. */
function coilsOf(boards: readonly BoardParts[], earth: JointId, contacts: BandContacts): Map<PartId, BoardPart> {
  const isSwitchedEarth = earthedBySwitch(contacts);
  const coils = new Map<PartId, BoardPart>();
  for (const part of boards.flatMap(({ parts }) => parts.filter(isDescribedCoil))) {
    const known = coils.get(part.id);
    const here = joined(part, ({ joint, turn = 0 }) =>
      joint === earth && !isSwitchedEarth(part, turn) ? earth : jointAt(part.id, turn),
    );
    const ends = [...(known?.ends ?? []), ...here.ends]
      .filter(({ id }, i, all) => all.findIndex((end) => end.id === id) === i)
      .sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
    coils.set(part.id, { ...part, ...known, ends });
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
  if (!isDrawable(contacts, boards)) return standing;
  const coils = coilsOf([standing, ...boards], earth, contacts);
  const coilNamed = (name: string): BoardPart | undefined =>
    [...coils.values()].find(({ coil }) => coil?.name === name);
  const at = ({ coil, turn }: CoilPoint): JointId =>
    coilNamed(coil)?.ends.find((end) => isSameTurn(end.turn ?? 0, turn))?.joint ??
    jointAt(partId(`coil ${coil}`), turn);
  const { poles, bands } = contacts;
  const wayJoint = (pole: number, way: number): JointId => jointId(`way ${pole} ${way}`);
  const movingJoint = (pole: number): JointId => {
    const { leads, ways } = poles[pole];
    if (leads.includes('earth')) return earth;
    const point = leads.includes('coil end') ? ways.find((one) => one !== undefined) : undefined;
    return point ? (coilNamed(point.coil)?.ends.at(-1)?.joint ?? jointId(`pole ${pole}`)) : jointId(`pole ${pole}`);
  };
  const aerialPole = poles.findIndex(({ through }) => through !== undefined);
  const points = leadPoints(set);
  const leadJoint = (lead: SwitchedLead): JointId | undefined => {
    const pole = poles.findIndex(({ leads }) => leads.includes(lead));
    const point = points[lead];
    return pole >= 0 ? movingJoint(pole) : point && at(point);
  };
  const onCoils = boards.map(
    ({ parts }) => new Set(parts.filter(isDescribedCoil).flatMap(({ ends }) => ends.map(({ joint }) => joint))),
  );
  const onCoil = onCoils[contacts.standing];
  /** Where the aerial lead comes from, before what the switch puts in. */
  const feeds = boards.map((board) => feedOf(board, contacts.sharedTraps));
  const feed = feeds[contacts.standing];
  /** The far side of a full-wave circuit, which no other wiring has. */
  const farSide = points['other end'] && standing.parts.find(({ role }) => role === 'second-detector')?.ends[0].joint;
  const isOwn = isOfOneBand(contacts);

  const own = standing.parts.map((part): BoardPart => {
    const coil = coils.get(part.id);
    if (isDescribedCoil(part) && coil) return tagged(coil, part.tag);
    if (isOwn(part)) return onBand(part, contacts.standing);
    return joined(part, ({ joint }) => {
      if (joint === earth) return joint;
      if (joint === feed && aerialPole >= 0) return movingJoint(aerialPole);
      if (!onCoil.has(joint)) return joint;
      if (joint === farSide) return leadJoint('other end') ?? joint;
      return leadJoint(LEADS[part.role] ?? 'tuning capacitor') ?? joint;
    });
  });

  /** What the contact of a way is joined to. */
  function contactJoint(pole: number, way: number): JointId {
    const { ways, through } = poles[pole];
    const point = ways[way];
    const from = feeds[way];
    const isDirect = through?.[way] === undefined || (from !== undefined && onCoils[way].has(from));
    return point && isDirect ? at(point) : wayJoint(pole, way);
  }

  /** A part of one band, between the contact of its way, its coil and earth. */
  function onBand(part: BoardPart, way: number): BoardPart {
    const pole = poles[aerialPole] as SwitchPole | undefined;
    const point = pole?.ways[way];
    const capacitance = part.role === 'series-capacitor' ? pole?.through?.[way]?.seriesCapacitor : undefined;
    const band = bands[way];
    const words =
      capacitance === undefined
        ? texts.ofBand({ words: part.words, band })
        : texts.seriesCapacitor({ band, capacitance });
    return joined({ ...part, band, words }, ({ joint }) => {
      if (joint === earth) return joint;
      if (point && onCoils[way].has(joint)) return at(point);
      if (joint === feeds[way] && pole) return contactJoint(aerialPole, way);
      return jointId(`${joint}:${way}`);
    });
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
  const ownId = (part: BoardPart, way: number): PartId =>
    isOwn(part) && way !== contacts.standing ? partId(`${part.id}:${way}`) : part.id;
  const ofOtherBands = boards.flatMap(({ parts }, way): BoardPart[] =>
    way === contacts.standing
      ? []
      : parts.filter(isOwn).map((part) => tagged({ ...onBand(part, way), id: ownId(part, way) }, next(part.kind))),
  );

  const switchId = partId('band-switch');
  const tag = next('switch');
  const switchEnds = poles.flatMap(({ ways }, pole) => [
    { mark: texts.mark(pole), joint: movingJoint(pole) },
    ...ways.map((_, way) => ({ mark: texts.mark(pole, way), joint: contactJoint(pole, way) })),
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

  const parts = [...own, ...otherCoils, ...ofOtherBands, bandSwitch];
  const tagOf = (board: BoardParts, way: number, tag: string): string => {
    const part = board.parts.find((one) => one.tag === tag);
    return (part && parts.find(({ id }) => id === ownId(part, way))?.tag) ?? tag;
  };
  const couples = boards
    .flatMap((board, way) =>
      board.standing.map((pair) => ({
        ...pair,
        first: tagOf(board, way, pair.first),
        second: tagOf(board, way, pair.second),
      })),
    )
    .filter((pair, i, all) => all.findIndex((one) => one.first === pair.first && one.second === pair.second) === i);
  return {
    parts,
    couplings: couples.map(({ first, second }) => [first, second] as const),
    standing: couples,
    built: standing.built,
  };
}
