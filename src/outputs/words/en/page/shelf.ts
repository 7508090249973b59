import { counted, firstOf, listOf } from '../grammar.ts';

const countedSets = (count: number): string => counted(count, 'set', 'sets');
const countedBoxes = (count: number): string => counted(count, 'box', 'boxes');
const countedPlaces = (count: number): string => counted(count, 'place', 'places');

/** How many of all are listed. */
const listed =
  (named: (count: number) => string) =>
  (shown: number, all: number): string =>
    shown === all ? named(all) : `${shown} of ${named(all)}`;

const copyOf = (name: string): string => `${name} (copy)`;

/** Boxes and places, as far as there are any. */
const besideSets = (boxes: number, places: number): readonly string[] => [
  ...(boxes > 0 ? [countedBoxes(boxes)] : []),
  ...(places > 0 ? [countedPlaces(places)] : []),
];

/** Places kept once for several sets. */
export const keptPlaceWords = {
  about:
    'A place with its stations, kept once. A set holds its place whole, so that its file needs no other: it uses a kept place while the two are the same. To change one, change the place of the set that is open, then take it over here.',
  add: 'Keep the place of the open set',
  alreadyKept: 'This place is kept already.',
  none: 'No place is kept yet.',
  noneFound: 'No place has these words in its name, its notes or the name of a station.',
  count: listed(countedPlaces),
  unnamed: 'Place without a name',
  stations: (count: number): string => counted(count, 'station', 'stations'),
  usedBy: (names: readonly string[]): string => `Used by ${firstOf(names)}.`,
  unused: 'No set on the shelf uses it.',
  inUse: 'The open set uses it.',
  use: 'Use for the open set',
  useNamed: (name: string): string => `Use ${name} for the open set`,
  takeOver: 'Take over from the open set',
  takeOverNamed: (name: string): string => `Take over ${name} from the open set`,
  copyOf,
  label: 'place',
  used: (set: string, place: string): string => `${set} now uses ${place}.`,
  changed: (place: string, sets: readonly string[]): string =>
    `${place} is changed. ${firstOf(sets)} ${sets.length === 1 ? 'has' : 'have'} the place as it was before.`,
  bring: (count: number): string => `Change it in ${countedSets(count)} too`,
  brought: (place: string, sets: number, refused: readonly string[]): string =>
    [
      `${place} is changed in ${countedSets(sets)}.`,
      ...(refused.length > 0
        ? [`Not in ${firstOf(refused)}: the set could not be calculated with it, or not be kept.`]
        : []),
    ].join(' '),
  undo: 'Undo',
  removed: (name: string): string => `${name} is no longer kept. The sets that use it keep their own copy.`,
  putBack: 'Put it back',
  notRead: 'This browser cannot read the places it keeps. Those listed may not be all.',
  notKept: 'This browser cannot keep the place: its storage is blocked or full. Save all to an archive.',
} as const;

/** Boxes of parts, as the shelf lists them. */
export const keptBoxWords = {
  about: 'Boxes of parts, from which the page finds the sets that can be built.',
  add: 'New box',
  none: 'No box is kept yet.',
  noneFound: 'No box has these words in its name, notes or file name.',
  count: listed(countedBoxes),
  current: 'In view',
  copyOf,
  renamed: 'name',
  unreadable: 'This browser keeps it, but it cannot be read.',
  saveNamed: (name: string): string => `Save ${name} to a file`,
  save: 'Save to a file',
} as const;

let format: Intl.DateTimeFormat | undefined;

/** The sets kept in this browser. */
export const shelfWords = {
  title: 'Shelf',
  /** @param at ms since 1970; shown by the clock of the reader */
  when(at: number): string {
    format ??= new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
    return format.format(at);
  },
  about: 'Every set is kept in this browser as you work. What you open is one more set; the one before stays here.',
  search: {
    sets: 'Search names and notes',
    boxes: 'Search names and notes of boxes',
    places: 'Search names and notes of places, names of stations',
  },
  kinds: 'What is listed',
  kind: { sets: 'Sets', boxes: 'Boxes of parts', places: 'Places' },
  count: listed(countedSets),
  noneFound: 'No set has these words in its name, notes or file name.',
  showMore: (count: number): string => `Show ${count} more`,
  fromBench: 'Begin from my bench…',
  exportAll: 'Save all to one archive',
  importArchive: 'Open an archive…',
  archivePicker: 'Open an archive of sets',
  current: 'Open now',
  changed: (when: string): string => `Changed ${when}`,
  open: (name: string): string => `Open ${name}`,
  unnamed: 'Set without a name',
  copy: 'Copy',
  copyNamed: (name: string): string => `Copy ${name}`,
  rename: 'Rename',
  renameNamed: (name: string): string => `Rename ${name}`,
  newName: 'New name',
  saveName: 'Save the name',
  cancel: 'Cancel',
  remove: 'Delete',
  removeNamed: (name: string): string => `Delete ${name}`,
  copyOf,
  deleted: (name: string): string => `${name} is deleted. It can be restored here for 30 days.`,
  undoDelete: 'Restore',
  deletedTitle: (count: number): string => `Deleted sets (${count})`,
  restoreNamed: (name: string): string => `Restore ${name}`,
  deletedOn: (when: string): string => `Deleted ${when}`,
  cannotOpen: 'This set cannot be read from the storage of this browser.',
  notKept: 'This browser cannot keep the change: its storage is blocked or full. Save the sets to an archive.',
  blocked:
    'The storage of this browser is blocked or full. Only the sets that are open now are listed; save them to an archive before you close the page.',
  isPersistent: 'The browser keeps these sets until you delete them.',
  isNotPersistent: 'The browser may delete these sets when it runs short of space. Save an archive from time to time.',
  versions: (name: string): string => `Versions of ${name}`,
  aboutVersions:
    'A version is kept when you go on after a pause of ten minutes, and at least every half hour of work. All of the last six hours stay, then one an hour, after two days one a day, after thirty days one a month.',
  noVersions: 'No earlier version yet.',
  until: (when: string): string => `Until ${when}`,
  goBack: 'Go back to this',
  goBackTo: (when: string): string => `Go back to the version until ${when}`,
  versionLabel: (when: string): string => `version until ${when}`,
  /** Of a version, what the next one changed. */
  thenChanged: 'Then changed:',
  noChange: 'nothing that is written',
  difference: (place: string, before: string | undefined, after: string | undefined): string =>
    before === undefined
      ? `${place}: ${after} added`
      : after === undefined
        ? `${place}: ${before} removed`
        : `${place}: ${before} → ${after}`,
  part: 'several values',
  moreDifferences: (count: number): string => `and ${count} more`,
  archiveName: (date: string): string => `faintwave-shelf-${date}.zip`,
  archiveSaved: (sets: number, boxes: number, places: number): string =>
    `Saved ${listOf([countedSets(sets), ...besideSets(boxes, places)])} to an archive.`,
  archiveRead: (added: number, merged: number, same: number): string =>
    `From the archive: ${added} added, ${merged} merged with the versions of sets that were here, ${same} already here.`,
  archiveBeside: (boxes: number, places: number): string => `Added with them: ${listOf(besideSets(boxes, places))}.`,
  archiveLeftOut: (names: readonly string[]): string =>
    `Left out, because they hold no set or this browser could not keep it whole: ${firstOf(names)}.`,
  archiveWithout: (names: readonly string[]): string =>
    `Not in it, because this browser could not read them: ${firstOf(names)}.`,
  keptPlaces: 'places kept once',
  archiveInPart: (names: readonly string[]): string =>
    `In it without earlier versions or log, which this browser could not read: ${firstOf(names)}.`,
  notAnArchive: (name: string): string =>
    `${name} is not an archive of sets: expected a .zip file that this page saved.`,
  archiveTooLarge: (name: string): string => `${name} is larger than an archive of sets may be (200 MB unpacked).`,
  working: (done: number, all: number): string => `${done} of ${all}`,
  linkTitle: 'Link to this set',
  linkAbout:
    'The link holds the whole set, notes included; nothing is sent to a server. Whoever opens it sees it in this page.',
  position: 'Position of the place',
  positions: {
    none: 'left out',
    coarse: 'rounded to 0.1°, about 10 km',
    exact: 'exact',
  },
  distancesStay:
    'Distances and bearings of the stations stay in the description: from them the place can be calculated.',
  copyLink: 'Copy the link',
  linkCopied: (characters: number): string => `Link copied (${characters} characters).`,
  linkNotCopied: 'The browser did not allow copying. Mark the link below and copy it.',
  linkTooLong: 'This set is too long for a link. Save it to a file and send that.',
  linkText: 'The link',
  noSetToShare: 'Correct the marked fields first: the link is made of the set as read.',
  writeUp: {
    title: 'Write-up for others',
    about:
      'Drawings, circuit, figures, cautions, a wave to zoom into and a sound, for a web site or a magazine. The web page is one file that needs no network.',
    addPhotos: 'Add photos…',
    photoPicker: 'Photos for the write-up',
    photosAbout: 'Place and time of the camera are taken out; large photos are made smaller.',
    caption: (name: string): string => `What is seen in ${name}`,
    removePhoto: (name: string): string => `Leave out ${name}`,
    tooLarge: (name: string, most: number): string =>
      `${name} is larger than ${most / 1e6} MB. Make the picture smaller first.`,
    withLog: 'With what was heard, from the log',
    saveHtml: 'Save as a web page',
    saveMarkdown: 'Save as Markdown',
    working: 'Calculating, drawing and listening… Stay on the shelf until it is saved.',
    saved: (name: string): string => `Saved: ${name}`,
    unread: (names: readonly string[]): string =>
      `Not saved. This browser cannot read as a picture: ${firstOf(names)}. Leave it out, or save it as JPEG or PNG first.`,
    failed: (problem: string): string => `Not saved: ${problem}.`,
  },
} as const;
