/** What a file holds, by its content. */
export const contentNames = {
  nothing: 'nothing',
  description: 'a description',
  json: 'other JSON',
  wav: 'a WAV sound',
  svg: 'an SVG picture',
  pdf: 'a PDF',
  png: 'a PNG picture',
  gif: 'a GIF picture',
  mp4: 'an MP4 film',
  webm: 'a WebM film',
  vtt: 'captions',
  csv: 'a CSV table',
  text: 'other text',
  other: 'something else',
} as const;
export type ContentKind = keyof typeof contentNames;

/** What the operating system says when it fails, by its code. */
interface SystemError {
  readonly code?: string;
  readonly message: string;
}
const ofCode = (table: Readonly<Record<string, string>>, code = ''): string | undefined =>
  Object.hasOwn(table, code) ? table[code] : undefined;

const READING: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'part of that path is a file, not a folder',
  EISDIR: 'it is a folder, not a file; name a file in it',
  ESPIPE: 'it is a device or a pipe; a file on a disk is needed',
  EACCES: 'permission denied; use a file that you may read',
  EPERM: 'permission denied; use a file that you may read',
  EIO: 'the disk or device reports an error; use a copy on another disk',
  ELOOP: 'its links lead round in a circle',
  ENAMETOOLONG: 'the name is too long',
  ERR_FS_FILE_TOO_LARGE: 'it is larger than 2 GB',
};

const UNCHANGED = 'nothing was written, and what was there before is unchanged';
const WRITING: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder; make it first, or name another with --out',
  ENOTDIR: 'part of that path is a file, not a folder; name another with --out',
  EISDIR: 'it is a folder, not a file; add a file name',
  EACCES: 'permission denied; name a place where you may write with --out',
  EPERM: 'permission denied; name a place where you may write with --out',
  EROFS: 'that disk is read-only; name another with --out',
  ENOSPC: `the disk is full; ${UNCHANGED}. Free some space, or name another disk with --out`,
  EDQUOT: `your share of the disk is used up; ${UNCHANGED}. Free some space, or name another disk with --out`,
  EFBIG: `the file would be larger than the limit here allows (ulimit -f, or the file system); ${UNCHANGED}. Raise the limit, or name another disk with --out`,
  EIO: `the disk reports an error; ${UNCHANGED}. Name another disk with --out`,
  EPIPE: 'whatever reads it has closed it',
  ELOOP: 'its links lead round in a circle; name another file with --out',
  ENAMETOOLONG: 'the name is too long; name a shorter one with --out',
};

const FOLDERS: Readonly<Record<string, string>> = {
  ...WRITING,
  ENOENT: 'no folder can be made there; name another with --out',
  EEXIST: 'there is a file of that name; name another with --out',
};

/** The way out of a problem, with the option that names the file or folder. */
const naming = (text: string, option = '--out'): string => text.replaceAll('--out', option);

/** What is wrong with a file that was to be read or written, and the way out. */
export const fileProblems = {
  sweepWithoutKind: (file: string, kinds: readonly string[]): string =>
    `${file} is a sweep of a network analyser: say what it is of by --kind (${kinds.join(', ')}).`,
  sweepForFit: (file: string, kinds: readonly string[]): string =>
    `${file} is a sweep of a network analyser: say what it is of in JSON that names it, such as {"kind":"${kinds[0]}","file":"coil.s1p"} (kinds: ${kinds.join(', ')}).`,
  tableWithoutKind: (file: string, kinds: readonly string[]): string =>
    `${file} is no recording of time and volts, and does not say which measurement it is of: begin it with a line such as “# kind: ${kinds[0]}” (kinds: ${kinds.join(', ')}).`,
  standardInput: 'the standard input',
  input: 'the input',
  cannotRead: (file: string, { code, message }: SystemError): string =>
    `cannot read ${file}: ${ofCode(READING, code) ?? message}`,
  cannotWrite: (file: string, { code, message }: SystemError, option?: string): string =>
    `cannot write ${file}: ${naming(ofCode(WRITING, code) ?? `${message}; name another place with --out`, option)}`,
  cannotMakeFolder: (folder: string, { code, message }: SystemError, option?: string): string =>
    `cannot make the folder ${folder}: ${naming(ofCode(FOLDERS, code) ?? `${message}; name another with --out`, option)}`,
  seriesThere: (folder: string, name: string, option: string): string =>
    `the folder ${folder} holds ${name} already, and two series would be mixed: name another folder with ${option}, or empty that one first`,
  cannotPrint: ({ code, message }: SystemError): string =>
    code === 'ENOSPC'
      ? 'cannot write to the standard output: the disk is full; free some space, or send it elsewhere'
      : `cannot write to the standard output: ${message}`,
  isInput: (file: string, input: string): string =>
    `${file} is the same file as ${input}, which this command reads, and would be lost: name another file with --out`,
  isOther: (file: string, there: ContentKind, here: ContentKind): string =>
    `${file} holds ${contentNames[there]}, and would be replaced by ${contentNames[here]}: name another file with --out, or delete that one first`,
} as const;
