import { formatNumber, formatQuantity } from '../../../../engine/units/format.ts';
import { hertz, kilohertz, percent, volts } from './format.ts';

const stage = {
  view: 'Explain',
  loading: 'Calculating the waves…',
  back: 'Back',
  next: 'Next',
  present: 'Present',
  canvas: (title: string): string => `${title}. Up and down arrows zoom, left and right arrows move along.`,
  zoomOut: 'Show more time',
  zoomIn: 'Show less time',
  span: 'How much time is shown',
  spanValue: (span: number): string => `${formatQuantity(span, 'time', 2)} from left to right`,
  slowZoom: 'Slow zoom',
  start: 'From the start',
  run: 'Run',
  freeze: 'Freeze',
  hear: 'Hear this point',
  stopSound: 'Stop the sound',
  heardPoint: 'The point that is heard',
  speed: 'Speed of the sound',
  speeds: { 'real time': 'in real time', slowed: 'slowed with the picture', silent: 'silent' },
  slowed: (times: number): string => `Sound slowed ${formatNumber(times, 2)} times`,
  closeUp: 'Zoom to single cycles',
  silence: 'Silence: the average is zero.',
  programme: 'The programme.',
  inWords: 'In words',
  audibleRange:
    'The ear hears frequencies from about 30 Hz to 15 or 18 kHz; a carrier is far above them (common practice).',
  warning: (sentence: string): string => `⚠ ${sentence}`,
} as const;

const show = {
  average: 'Running average',
  cover: 'Cover the lower half',
  envelope: 'Envelope',
  spectrum: 'Spectrum',
} as const;

const side = {
  scenes: 'Scenes',
  wholePath: 'The whole path at once',
  shown: 'What is shown',
  points: 'Points of the path',
  picture: 'Moving picture',
  noPicture: 'none',
  settings: 'Change values',
  export: 'Export',
} as const;

const scenes = {
  added: 'My view',
  add: 'Add this view',
  edit: 'Edit',
  title: 'Title',
  caption: 'Caption',
  note: 'Speaker’s note',
  figures: 'Figures that are filled in',
  rows: 'Rows',
  rowPoint: (row: number): string => `Point of row ${row}`,
  rowTitle: (row: number): string => `Title of row ${row}`,
  rowDetector: (row: number): string => `Detector of row ${row}`,
  rowUp: (row: number): string => `Move row ${row} up`,
  rowRemove: (row: number): string => `Remove row ${row}`,
  sameDetector: 'detector as in the scene',
  up: 'Up',
  addRow: 'Add a row',
  zoom: 'Slow zoom',
  zoomFromTo: (from: string, to: string): string => `From ${from} to ${to}.`,
  noZoom: (span: string): string => `The view stays at ${span}.`,
  zoomStart: 'Start at this view',
  zoomEnd: 'End at this view',
  zoomRemove: 'No zoom',
  zoomSeconds: 'Seconds it takes',
  heard: 'What is heard',
  heardUsual: 'the last row that can be heard',
  takeView: 'Use the view as it is now',
  earlier: 'Earlier',
  later: 'Later',
  remove: 'Remove',
  own: 'These scenes are your own and are saved with the set.',
  restore: 'Back to the original story',
} as const;

const settings = {
  station: 'Station',
  stationChoice: (name: string, frequency: number): string => `${name}, ${kilohertz(frequency, 5)}`,
  depth: 'Depth of modulation',
  depthValue: (depth: number): string => (depth > 1 ? `${percent(depth, 3)}: over-modulation` : percent(depth, 3)),
  carrier: 'Carrier',
  carrierValue: (f: number): string => kilohertz(f),
  loadedQ: 'Loaded Q of the tuned circuit',
  loadedQValue: (q: number, carrier: number): string => `${formatNumber(q, 3)}, bandwidth ${hertz(carrier / q, 2)}`,
  neighbours: 'Other stations',
  detector: 'Detector',
  asInSet: 'as in the set',
  resetLabel: (label: string): string => `as in the set: ${label}`,
  strength: 'Carrier at the detector',
  strengthValue: volts,
  capacitance: 'Load capacitor',
  capacitanceValue: (c: number): string => formatQuantity(c, 'capacitance', 2),
  resistance: 'Load resistance',
  resistanceValue: (r: number): string => formatQuantity(r, 'resistance', 2),
  reset: 'All as in the set',
  programme: 'Programme',
  tone: 'A tone',
  twoTones: 'Two tones',
  file: 'A sound file…',
  microphone: (seconds: number): string => `Your voice, up to ${seconds} seconds…`,
  microphoneName: 'the microphone',
  filePicker: 'A sound file as programme',
  recording: (seconds: number): string => `Recording, up to ${seconds} seconds. It starts at the first sound.`,
  stopRecording: 'Stop recording',
  toneFrequency: 'Tone',
  firstTone: 'First tone',
  secondTone: 'Second tone',
  toneValue: (f: number): string => `${formatNumber(f, 4)} Hz`,
  problems: {
    microphone: 'The microphone cannot be used. Allow it in the browser, or choose a file.',
    empty: 'The file is empty. Choose another one.',
    large: (megabytes: number): string =>
      `The file is larger than ${megabytes} MB. Cut a short piece out of it and choose that.`,
    unreadable: 'The browser cannot read this file as sound. Expected WAV, Ogg, Opus or MP3.',
    short: 'The sound is too short. Expected at least 50 ms.',
    silent: 'The file holds only silence. Choose another one.',
  },
} as const;

const presenting = {
  title: 'Presenting',
  place: (number: number, count: number): string => `${number} of ${count}`,
  spotlight: 'Spotlight',
  pen: 'Pen',
  wipe: 'Wipe',
  note: 'Speaker’s note',
  noteWindow: 'Notes in a window',
  noteWindowTitle: 'Speaker’s notes',
  blank: 'Blank screen',
  end: 'End',
  keys: 'Keys',
  /** Keys, and what each does. */
  keyList: [
    ['→ ← or a clicker', 'next, back'],
    ['Z', 'slow zoom'],
    ['+ −', 'zoom by hand'],
    ['F', 'freeze'],
    ['S', 'spotlight'],
    ['D', 'draw, C wipes'],
    ['B or .', 'blank screen; any key ends it'],
    ['K', 'background'],
    ['N', 'speaker’s note'],
    ['Esc', 'end'],
  ] as readonly (readonly [key: string, action: string])[],
} as const;

const exporting = {
  size: 'Size',
  sizeChoice: (name: string, width: number, height: number): string => `${name}, ${width} × ${height}`,
  sizes: { '1080p': '1080p', '4K': '4K', '720p': '720p', upright: 'upright' },
  background: 'Background',
  backgrounds: { plain: 'as the page', light: 'light', dark: 'dark', transparent: 'transparent' },
  picture: 'Picture (PNG)',
  drawing: 'Drawing (SVG)',
  numbers: 'Numbers (CSV)',
  sound: 'Sound (WAV)',
  film: 'Film',
  filmOf: 'Scenes',
  oneScene: 'this view',
  allScenes: (count: number): string => `all ${count} scenes`,
  format: 'Format',
  formats: { webm: 'WebM', mp4: 'MP4', gif: 'GIF, an animated picture' },
  /** Which players show a film with this picture and sound. */
  playsIn: {
    webm: {
      opus: 'VP9 with Opus sound: plays in current browsers and on computers. Many phones’ own players and some video editors cannot open it.',
      silent:
        'VP9 without sound: plays in current browsers and on computers. Many phones’ own players and some video editors cannot open it.',
    },
    mp4: {
      aac: 'H.264 with AAC sound: plays in nearly every browser, phone, player and video editor.',
      opus: 'H.264 with Opus sound: plays in current browsers. Some players and video editors show it without sound, because this browser cannot make AAC.',
      silent: 'H.264 without sound: plays in nearly every browser, phone, player and video editor.',
    },
  },
  gifSize: 'Picture size',
  gifSizeValue: (width: number, height: number): string => `${width} × ${height}`,
  /** Of an animated picture. */
  gifAbout: (width: number, height: number, rate: number): string =>
    `For forums and messages: ${width} × ${height}, ${rate} frames a second, of this view alone, without sound; it begins again at its end. Usually 1 to 5 MB.`,
  rate: 'Frames per second',
  rateValue: (rate: number): string => String(rate),
  withSound: 'With sound',
  noSound:
    'This browser cannot put sound into a film of this format: it will be silent. Save the sound as a WAV file and add it afterwards.',
  noTransparency: {
    mp4: 'MP4 cannot be transparent: the background will be dark. WebM can.',
    gif: 'An animated picture is not transparent: the background will be dark.',
  },
  makeFilm: 'Make the film',
  captions: 'Captions (WebVTT)',
  progress: 'Progress of the film',
  progressValue: (share: number): string => `${Math.round(share * 100)} %`,
  progressLeft: (share: number, seconds: number): string =>
    `${Math.round(share * 100)} %, ${Math.ceil(seconds)} s left`,
  cancel: 'Cancel',
  cancelled: 'The film was cancelled.',
  makePicture: 'Make the picture',
  noPictures: 'This browser can make neither films nor animated pictures.',
  noFilm: 'This browser cannot make films. An animated picture can be made.',
  saved: (file: string): string => `Saved ${file}.`,
  savedPicture: (file: string, width: number, height: number): string => `Saved ${file}, ${width} × ${height}.`,
  savedSound: (file: string, seconds: number): string => `Saved ${file}, ${seconds} seconds.`,
  savedFilm: (file: string, megabytes: number): string => `Saved ${file}, ${megabytes.toFixed(1)} MB.`,
  savedAnimation: (file: string, megabytes: number, width: number, height: number): string =>
    `Saved ${file}, ${width} × ${height}, ${megabytes.toFixed(1)} MB, without sound.`,
  savedSilentFilm: (file: string, megabytes: number): string =>
    `Saved ${file}, ${megabytes.toFixed(1)} MB, without sound: this browser could not add any.`,
  /** Stems of files’ names. */
  viewFile: 'view',
  storyFile: 'story',
  problems: {
    picture: 'The browser has no room for a picture of this size. Choose a smaller one.',
    film: 'The film could not be made. Choose a smaller size, or the other format.',
    codec: (format: string, width: number, height: number): string =>
      `This browser cannot make ${format} films of ${width} × ${height}. Choose the other format or a smaller size.`,
    failed: 'It could not be made. Try again.',
  },
  formatNames: { webm: 'WebM', mp4: 'MP4' },
} as const;

/** The view that explains the set: its controls, by panel. */
export const explainTexts = { stage, show, side, scenes, settings, presenting, exporting } as const;
