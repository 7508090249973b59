import { DETECTOR_IDS } from '../../../../engine/parts/detector/library.ts';
import { SCENE_POINTS } from '../../../../engine/set/scenes.ts';
import { sheetNames } from '../sheets/paper.ts';
import { WANT_FORMS } from './options.ts';

/** Whether the ground wave alone arrives or the sky wave too. */
const TIME = {
  day: { about: 'with ground waves only, whatever the description says' },
  night: {
    about: 'with the night-time sky wave; with neither option the time in the description, or else day',
  },
} as const;

const STATION = {
  value: 'NAME',
  about: 'the station, by part of its name or its frequency in kHz; default the one received best',
} as const;

/** Not "--band": under that name `listen` takes a recorded band. */
const SWITCH = {
  value: 'BAND',
  about: 'of a set with a band switch: on this band, by its name; default the one the switch stands on',
} as const;
/** Of commands whose stations are each received on their best band. */
const SWITCH_OF_BEST = {
  value: 'BAND',
  about: 'of a set with a band switch: on this band alone, by its name; default the one best for each station',
} as const;

const JSON_DATA = { about: 'as data' } as const;

const WIDTH_OF_PNG = {
  value: 'PX',
  about: 'of a PNG: the same picture so many px wide; default the width of --size',
} as const;

const OUT = {
  value: 'FILE',
  about: 'write the data to a file, whole or not at all, instead of printing it',
} as const;

/**
 * Every command: what it does, how it is called, and its options, each with what stands for its value. Which options a
 * command takes is said by the command; one without words does not compile.
 */
export const commandWords = {
  path: {
    about: 'Follow a station from the field to the ear: every level, and what would help most.',
    usage: ['path SET [--station NAME|kHz] [--all] [--want WANT…] [--keep PART…] [--day | --night] [--json]'],
    options: {
      station: STATION,
      all: { about: 'the table of all stations only' },
      ...TIME,
      want: {
        value: 'WANT',
        about: `besides the wants of the description, judge suggestions by this: ${WANT_FORMS}; may be given several times`,
      },
      keep: {
        value: 'PART',
        about: 'leave a part or place as it is, such as load, coils[0] or aerial.height; may be given several times',
      },
      json: { about: 'everything as data' },
      switch: SWITCH,
    },
  },
  dial: {
    about: 'Tuning range of a set, where each station is on the scale, and the bandwidth along it.',
    usage: ['dial SET [--day | --night] [--json]'],
    options: { ...TIME, json: JSON_DATA, switch: SWITCH },
  },
  listen: {
    about: 'Hear a set before it is built: one station, or the dial tuned from end to end, as a WAV file.',
    usage: ['listen SET --out FILE [--station NAME|kHz | --sweep] [--seconds 10]'],
    options: {
      out: { value: 'FILE', about: 'the sound: WAV, 48 kHz, one channel' },
      station: STATION,
      sweep: { about: 'tune from the low end of the dial to its high end instead' },
      seconds: { value: 'N', about: 'duration, 0.1 to 600; default 10' },
      as: {
        value: 'phones|up',
        about: 'as in the phones, at their level and with the noise of the room; or amplified (default)',
      },
      heater: { value: 'on|off', about: 'switch a valve’s heater on from cold, or off while hot, at the beginning' },
      day: TIME.day,
      night: {
        about:
          'with the night-time sky wave and its fading; with neither option the time in the description, or else day',
      },
      seed: {
        value: 'N',
        about: 'other noise, fading and programmes; the same seed gives the same sound, bit for bit',
      },
      band: { value: 'FILE', about: 'a recorded band (stereo WAV: in-phase, quadrature) instead of the stations' },
      centre: { value: 'kHz', about: 'centre frequency of the band, where neither its header nor its name gives it' },
      'full-scale': { value: 'mV', about: 'full scale of the band at the aerial; default 10 mV' },
      switch: SWITCH,
    },
  },
  stations: {
    about: 'Stations at the place of a set: field strength by day and by night, best received first.',
    usage: [
      'stations SET [--day | --night | --time WHEN] [--json | --csv] [--out FILE]',
      'stations [SET] --import TABLE [--out FILE]',
    ],
    options: {
      ...TIME,
      time: {
        value: 'WHEN',
        about:
          'at a moment, such as 2026-01-15T21:00Z: with the sun at the middle of each path and the hours of transmission',
      },
      json: JSON_DATA,
      csv: { about: 'the list of stations as a comma-separated table' },
      import: {
        value: 'TABLE',
        about: 'read stations from a table of text; with a SET, print it with these stations added to its own',
      },
      out: OUT,
      switch: SWITCH_OF_BEST,
    },
  },
  compare: {
    about:
      'Two to four sets side by side on a station, and which parts make the difference; or one set with each usual detector.',
    usage: [
      'compare SET SET… [--station NAME|kHz] [--day | --night] [--json] [--out FILE]',
      'compare SET SET… --sheet FILE [--paper a4|letter] [--station NAME|kHz] [--day | --night]',
      'compare SET [--station NAME|kHz] [--day | --night] [--json] [--out FILE]',
    ],
    options: {
      station: {
        value: 'NAME',
        about:
          'the station, by part of its name or its frequency in kHz; default the one that the first set receives best, and of detectors the first',
      },
      ...TIME,
      json: JSON_DATA,
      out: OUT,
      sheet: { value: 'FILE', about: 'all of it on one page for print, a PDF or SVG, by the ending of the name' },
      paper: { value: 'a4|letter', about: 'of that page; a4 unless told otherwise' },
      switch: {
        value: 'BAND',
        about:
          'of a first set with a band switch: on this band, by its name; default the one it stands on, of several sets the one best for the station',
      },
    },
  },
  match: {
    about: 'Best taps, coil distance and transformer for a station, and what those at hand lose.',
    usage: ['match SET [--station NAME|kHz] [--taps 12,18] [--ratios 8,16] [--day | --night] [--json] [--out FILE]'],
    options: {
      station: STATION,
      taps: { value: 'N,N', about: 'taps already on the coil, in turns from the earthed end' },
      ratios: { value: 'N,N', about: 'turns ratios of the transformers at hand, to one' },
      ...TIME,
      json: JSON_DATA,
      out: OUT,
      switch: SWITCH,
    },
  },
  measure: {
    about: 'What was measured beside what is calculated, readings fitted and taken together, and what to measure next.',
    usage: [
      'measure SET [READINGS] [--kind KIND] [--coil NAME] [--use] [--out FILE] [--station NAME|kHz] [--json]',
      'measure SET --how KIND',
    ],
    options: {
      use: {
        about: 'put the measured values and the readings into the description, and print it or write it to --out',
      },
      out: OUT,
      kind: {
        value: 'KIND',
        about:
          'what READINGS are of where the file does not say it: a Touchstone sweep (analyser-coil, analyser-peak, …), a table; a WAV file is a ringing',
      },
      coil: { value: 'NAME', about: 'the coil that the file of an instrument is of; default the first' },
      how: {
        value: 'KIND',
        about: 'how a measurement of this kind is made: what it takes, steps, what to write down, the trap, cautions',
      },
      station: { value: 'NAME', about: 'the station whose answer is to be narrowed; default the one received best' },
      json: JSON_DATA,
      switch: SWITCH,
    },
  },
  fault: {
    about: 'Why a built set is silent or weak: likely causes by what is heard and measured, and the next check.',
    usage: [
      'fault SET [--observed FILE] [--day | --night] [--json]',
      'fault SET --sheet FILE [--paper a4|letter] [--day | --night]',
    ],
    options: {
      observed: {
        value: 'FILE',
        about: 'what was heard and measured, as JSON; without it the command asks, where there is a terminal',
      },
      sheet: {
        value: 'FILE',
        about: 'a decision tree for print instead, with expected values: a PDF or SVG, by the ending of the name',
      },
      paper: { value: 'a4|letter', about: 'of that sheet; a4 unless told otherwise' },
      ...TIME,
      json: JSON_DATA,
      switch: SWITCH,
    },
  },
  wave: {
    about: 'Draw the signal at any point of its path, over any interval of time.',
    usage: ['wave SET [--exact] [--point POINT]… [--from TIME] [--for TIME] [--out FILE]'],
    options: {
      point: {
        value: 'POINT',
        about: () => `${SCENE_POINTS.join(', ')}; may be given several times; default all of them`,
      },
      from: { value: 'TIME', about: 'beginning of the interval; default 0' },
      for: { value: 'TIME', about: 'its duration, 50 ns to 5 s; default 2 ms' },
      station: STATION,
      tone: { value: 'F', about: 'frequency of the tone sent as programme; default 1 kHz' },
      depth: { value: 'SHARE', about: 'modulation depth; default the station’s' },
      detector: { value: 'NAME', about: () => `another detector: perfect, ${DETECTOR_IDS.join(', ')}` },
      capacitor: { value: 'C', about: 'another load capacitor' },
      alone: { about: 'without other stations' },
      ...TIME,
      average: { about: 'draw the mean of each trace' },
      cover: { about: 'cover the lower half of each trace' },
      envelope: { about: 'draw the envelope over each trace' },
      spectrum: { about: 'draw the spectrum beside each trace' },
      size: { value: 'WxH', about: 'size of the picture in px; default 1200x900, or lower for fewer points' },
      width: WIDTH_OF_PNG,
      print: { about: 'in black, for printers' },
      exact: {
        about:
          'calculate the whole circuit cycle by cycle: --point is then any point of the set ("top of the coil"), --for at most 50 ms; without --out it prints readings and lists the other points',
      },
      'coming-on': { about: 'with --exact: from the moment the station comes on, not the settled state' },
      out: {
        value: 'FILE',
        about: 'a file ending in .svg or .png (picture), .csv (table of numbers) or .wav (sound at the point)',
      },
      switch: SWITCH,
    },
  },
  film: {
    about: 'Make a film or an animated picture of the scenes of Explain, without a browser.',
    usage: [
      'film SET [--scene SCENE]… [--station NAME|kHz] [--day | --night]',
      'film SET --out FILE [--scene SCENE]… [--size WxH] [--rate N] [--dark] [--silent] [--ffmpeg PROGRAM]',
      'film SET --frames FOLDER [--scene SCENE]… [--size WxH] [--rate N] [--dark] [--silent]',
    ],
    options: {
      scene: {
        value: 'SCENE',
        about: 'a scene by its number or by part of its title; may be given several times; default all of them',
      },
      station: { ...STATION, about: `${STATION.about}; scenes that name a station themselves keep theirs` },
      ...TIME,
      size: {
        value: 'WxH',
        about: 'size of the picture in px; default 1280x720, of a GIF 640x360; MP4 and WebM need even numbers',
      },
      rate: {
        value: 'N',
        about: 'frames a second; default 30, of a GIF 12.5, which counts in hundredths of a second and is at most 50',
      },
      dark: { about: 'on a dark background; default a light one' },
      silent: { about: 'without sound' },
      frames: {
        value: 'FOLDER',
        about: 'every frame as a PNG in this folder, with sound.wav and captions.vtt, for a video editor',
      },
      ffmpeg: { value: 'PROGRAM', about: 'the ffmpeg program for MP4 and WebM; default the one that the system finds' },
      out: {
        value: 'FILE',
        about:
          'a film ending in .mp4 (H.264, AAC) or .webm (VP9, Opus), an animated picture ending in .gif, its sound in .wav or its captions in .vtt; without it, the scenes and how long each is',
      },
      switch: SWITCH,
    },
  },
  curves: {
    about:
      'Resonance curve, response across the band, Q of the coils or detector characteristic, set tuned to a station.',
    usage: [
      'curves SET [--curve resonance|band|q|detector] [--station NAME|kHz] [--day | --night] [--json] [--out FILE]',
    ],
    options: {
      curve: {
        value: 'CURVE',
        about:
          'resonance (level at the detector around the station), band (the same over the tuning range), q (Q of each coil against frequency) or detector (current against voltage); default resonance',
      },
      station: STATION,
      ...TIME,
      size: { value: 'WxH', about: 'size of the picture in px; default 1200x600' },
      width: WIDTH_OF_PNG,
      print: { about: 'in black, for printers' },
      json: JSON_DATA,
      out: {
        value: 'FILE',
        about: 'a file ending in .svg or .png (picture) or .csv (table of numbers); with --json the data',
      },
      switch: SWITCH,
    },
  },
  move: {
    about: 'Move a set to another band: new turns and taps, the problems to expect, and what to do about them.',
    usage: ['move SET --to long-wave|medium-wave [--out FILE] [--json]'],
    options: {
      to: { value: 'BAND', about: 'long-wave or medium-wave' },
      out: { value: 'FILE', about: 'write the changed description' },
      json: { about: 'sentences, changes and the changed description as data' },
      switch: SWITCH,
    },
  },
  rework: {
    about:
      'A wave trap made for a station, or two tuned circuits made out of one: coils, taps, distance, and what they do.',
    usage: ['rework SET [--stop STATION|--two-circuits] [--station STATION] [--day|--night] [--out FILE] [--json]'],
    options: {
      stop: { value: 'STATION', about: 'the station that a trap is to stop, by name or frequency' },
      'two-circuits': { about: 'work out two tuned circuits; with neither: what the traps of the set do' },
      station: STATION,
      ...TIME,
      out: { value: 'FILE', about: 'write the changed description' },
      json: { about: 'sentences, changes and the changed description as data' },
      switch: SWITCH,
    },
  },
  sheets: {
    about: 'Printable sheets for building a set, at full size: PDF and SVG.',
    usage: ['sheets SET --out FOLDER [--paper a4|letter] [--pdf] [--svg] [--only SHEET,…]'],
    options: {
      out: { value: 'FOLDER', about: 'the folder for the files; created if missing' },
      paper: { value: 'a4|letter', about: 'paper size; default a4' },
      pdf: { about: 'one PDF of all sheets; the default' },
      svg: { about: 'one SVG for each page' },
      only: {
        value: 'SHEET,…',
        about: () =>
          Object.entries(sheetNames)
            .map(([id, name]) => `${id} (${name})`)
            .join(', '),
      },
      board: { value: 'WIDTHxLENGTH', about: 'size of the board, such as 200mmx300mm; default what the parts need' },
      ...TIME,
      switch: SWITCH,
    },
  },
  check: {
    about: 'Read description files and list every problem.',
    usage: ['check SET... [--json]'],
    options: { json: { about: 'problems as data' } },
  },
  log: {
    about: 'Set what was heard, by day and by night, beside what was predicted, and say what does not fit.',
    usage: ['log SET LOG [--json] [--out FILE]'],
    options: { json: JSON_DATA, out: OUT, switch: SWITCH_OF_BEST },
  },
  share: {
    about: 'Put a whole set into a link that the page opens, or into a write-up for others to read.',
    usage: [
      'share SET [--page ADDRESS] [--exact-position] [--json] [--out FILE]',
      'share SET [--html FILE] [--markdown FILE] [--photo FILE…] [--log FILE] [--exact-position]',
    ],
    options: {
      html: {
        value: 'FILE',
        about:
          'one HTML file with drawings, figures, a wave to zoom into and a sound; it needs no network and no server',
      },
      markdown: { value: 'FILE', about: 'the same as Markdown, with its pictures in files beside it' },
      photo: {
        value: 'FILE',
        about:
          'a photo (JPEG or PNG) for the write-up; "FILE=what is seen in it" says it in words; may be given several times. Where and when it was taken is left out',
      },
      log: { value: 'FILE', about: 'a log, for what was heard beside what was predicted' },
      day: TIME.day,
      night: TIME.night,
      page: { value: 'ADDRESS', about: 'where the page is; default: only what follows its address, "#set1=…"' },
      'exact-position': { about: 'tell the position as it is, not rounded to 0.1°, which is about 10 km' },
      json: JSON_DATA,
      out: OUT,
      switch: SWITCH,
    },
  },
  find: {
    about: 'The few sets worth building from a box of parts, each received as built.',
    usage: ['find BOX --at PLACE|SET [--want WANT…] [--keep PART…] [--out FOLDER] [--json]'],
    options: {
      at: { value: 'FILE', about: 'where the set is to stand: a place, or a set that stands there' },
      want: {
        value: 'WANT',
        about: `besides the wants of the box and of the set: ${WANT_FORMS}; may be given several times; default most stations`,
      },
      keep: {
        value: 'PART',
        about:
          'take this part of the set, and none from the box: aerial, earth, tuning, arrangement, detector or load; may be given several times',
      },
      out: { value: 'FOLDER', about: 'write the sets that are found as files into a folder' },
      threads: { value: 'N', about: 'threads at work, 1 to 64; default one for each core; the answer is the same' },
      ...TIME,
      json: { about: 'everything as data' },
    },
  },
  schema: {
    about: 'Print the JSON Schema of a description file, or of a box of parts.',
    usage: ['schema [--box] [--out FILE]'],
    options: { box: { about: 'of a box of parts' }, out: OUT },
  },
  calc: {
    about: 'Calculations for scripts: one JSON object in, or an array of them, and the same out.',
    usage: ['calc WHAT [FILE] [--out FILE]'],
    options: { out: OUT },
  },
} as const satisfies Record<string, CommandTexts>;

interface CommandTexts {
  readonly about: string;
  /** One line for each form of the call, without the program's name. */
  readonly usage: readonly string[];
  readonly options: Readonly<Record<string, { readonly value?: string; readonly about: string | (() => string) }>>;
}

export type CommandName = keyof typeof commandWords;
/** Options of a command: those with a value and those without. */
export type CommandOptions<N extends CommandName> = {
  readonly [O in keyof (typeof commandWords)[N]['options']]: (typeof commandWords)[N]['options'][O] extends {
    readonly value: string;
  }
    ? { readonly type: 'string'; readonly multiple?: true }
    : { readonly type: 'boolean' };
};
