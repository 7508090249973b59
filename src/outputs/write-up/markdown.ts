import { safeLines } from '../../engine/units/safe-text.ts';
import { sceneToSvg } from '../scene/index.ts';
import { writeUpText as texts } from '../words/index.ts';
import type { WriteUp, WriteUpTable } from './write-up.ts';

/** A file that a write-up in Markdown refers to, beside it. */
export interface WriteUpFile {
  readonly name: string;
  readonly data: string | Uint8Array;
}

/** Signs that mean something in Markdown, or in the HTML that it may hold. */
const escaped = (text: string): string => safeLines(text).replace(/[\\`*_{}[\]<>#|!~&]/g, '\\$&');

/** A name as an address; brackets would end it. */
const addressOf = (name: string): string =>
  encodeURIComponent(name).replace(/[()]/g, (c) => `%${c.charCodeAt(0).toString(16)}`);

/**
 * A write-up in Markdown (CommonMark with tables), for a web site or a magazine, with the pictures beside it.
 * @param about from `writeUp`
 * @param stem what the names of the files beside it begin with
 * @param description what the name of the description ends with
 * @returns the text, and the files that it refers to; the description is the last of them
 */
export function writeUpMarkdown(
  about: WriteUp,
  stem: string,
  description = 'description.json',
): { text: string; files: WriteUpFile[] } {
  const files: WriteUpFile[] = [];
  const beside = (name: string, data: WriteUpFile['data']): string => {
    files.push({ name: `${stem}-${name}`, data });
    return addressOf(`${stem}-${name}`);
  };
  const photos = about.photos.map(({ type, bytes, caption }, i) => {
    const address = beside(`photo-${i + 1}.${type === 'image/png' ? 'png' : 'jpg'}`, bytes);
    return `![${escaped(caption)}](${address})`;
  });
  const drawings = about.drawings.flatMap(({ file, title, scene }) => [
    `## ${escaped(title)}`,
    `![${escaped(scene.description)}](${beside(`${file}.svg`, sceneToSvg(scene, { colours: 'day' }))})`,
  ]);
  const sound = about.sound
    ? [`## ${texts.sound}`, escaped(about.sound.about), `[WAV](${beside('sound.wav', about.sound.wav)})`]
    : [];
  const where = about.position === 'none' ? '' : ` ${about.position === 'exact' ? texts.exact : texts.coarse}`;
  const blocks = [
    `# ${escaped(about.name)}`,
    escaped(about.summary),
    ...about.notes.map(escaped),
    ...photos,
    ...drawings,
    ...about.tables.flatMap((one) => [`## ${escaped(one.title)}`, tableText(one)]),
    ...(about.wave ? [`## ${texts.wave}`, escaped(texts.waveWords(about.wave.rows))] : []),
    ...sound,
    ...(about.cautions.length > 0
      ? [`## ${texts.cautions}`, about.cautions.map((one) => `- ${escaped(one)}`).join('\n')]
      : []),
    `## ${texts.link}`,
    `${texts.linkAbout}${where} [${texts.linkName}](${beside(description, about.description)})`,
    texts.calculated,
  ];
  return { text: `${blocks.join('\n\n')}\n`, files };
}

function tableText({ head, rows }: WriteUpTable): string {
  const line = (cells: readonly string[]): string => `| ${cells.map(escaped).join(' | ')} |`;
  return [line(head), `|${head.map(() => ' --- |').join('')}`, ...rows.map(line)].join('\n');
}
