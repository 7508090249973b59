import qrcode from 'qrcode-generator';
import { withoutRecording } from '../../../engine/set/link.ts';
import { line, rect, text } from '../../scene/build.ts';
import type { Item } from '../../scene/scene.ts';
import { textWidth } from '../../scene/text-width.ts';
import { textSheetWords as texts } from '../../words/index.ts';
import { Flow } from '../paper/flow.ts';
import type { PaperName, Sheet } from '../paper/page.ts';

/** Most bytes in one code of the largest size with the least correction (ISO/IEC 18004). */
const MOST_ALONE = 2900;
/** Where there must be several, each may be coarser, and easier to scan. */
const MOST_OF_SEVERAL = 1900;
/** Nobody scans more. */
const MOST_CODES = 8;
const LETTERS = 2.5;
/** At the end of a line that goes on in the next without a space between. */
export const GOES_ON = '»';

/** The description on paper, to be scanned or typed back; without a recording. */
export function textSheet(written: unknown, name: string, paper: PaperName): Sheet {
  const flow = new Flow({ id: 'text', title: texts.title, set: name, paper, file: 'text' });
  const json = JSON.stringify(withoutRecording(written));
  const codes = codesOf(json);
  flow.para(texts.intro(codes.length));
  codes.forEach((code, i) => {
    flow.need(CODE + 12);
    if (codes.length > 1) flow.para(texts.code(i + 1, codes.length), { small: true });
    flow
      .add(
        'Figure',
        codeItems(code, flow.left + (flow.width - CODE) / 2, flow.y + 3),
        texts.codeAlt(i + 1, codes.length),
      )
      .space(CODE + 8);
  });
  flow.para(texts.lineEnds(GOES_ON), {
    small: true,
  });
  for (const row of textLines(json, flow.width)) {
    flow.need(LETTERS * 1.4);
    flow.add('P', [text([flow.left, flow.y + LETTERS], row, LETTERS)]).space(LETTERS * 1.36);
  }
  return flow.finish(texts.description);
}

/** Width of the code on paper, mm. */
const CODE = 110;

interface Code {
  readonly size: number;
  dark(row: number, column: number): boolean;
}

/** As many codes as a text needs, none if too many; what they say, one directly behind the other, is the text as plain ASCII. */
export function codesOf(json: string): Code[] {
  // Readers guess at any letter that is not plain ASCII, and guess wrong: JSON can do without.
  const bytes = json.replace(/[^ -~]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
  const count = bytes.length <= MOST_ALONE ? 1 : Math.ceil(bytes.length / MOST_OF_SEVERAL);
  if (count > MOST_CODES) return [];
  const codes: Code[] = [];
  let from = 0;
  for (let left = count; left > 0; left--) {
    let to = from + Math.ceil((bytes.length - from) / left);
    // Readers drop a space at either end.
    while (to < bytes.length && to > from + 1 && /\s/.test(bytes[to - 1] + bytes[to])) to--;
    codes.push(codeOf(bytes.slice(from, to)));
    from = to;
  }
  return codes;
}

function codeOf(bytes: string): Code {
  const code = qrcode(0, bytes.length < MOST_OF_SEVERAL ? 'M' : 'L');
  code.addData(bytes, 'Byte');
  code.make();
  return { size: code.getModuleCount(), dark: (r, c) => code.isDark(r, c) };
}

function codeItems(code: Code, x: number, y: number): Item[] {
  const step = CODE / code.size;
  const items: Item[] = [rect(x, y, CODE, CODE, { fill: 'paper' })];
  for (let r = 0; r < code.size; r++) {
    // Neighbours in a row are one stroke: far fewer things to draw.
    for (let c = 0; c < code.size; c++) {
      if (!code.dark(r, c)) continue;
      let end = c;
      while (end + 1 < code.size && code.dark(r, end + 1)) end++;
      const at = y + (r + 0.5) * step;
      items.push(
        line([x + c * step, at], [x + (end + 1) * step, at], { stroke: 'ink', width: step * 1.01, cap: 'butt' }),
      );
      c = end;
    }
  }
  return items;
}

/** JSON broken between its tokens; a longer string is broken with a mark. */
export function textLines(json: string, room: number): string[] {
  const tokens = json.match(/"(?:[^"\\]|\\.)*"[:,]?|[{}[\],:]|[^{}[\],:"]+,?/g) ?? [];
  const lines: string[] = [];
  let line = '';
  const put = (): void => {
    if (line) lines.push(line);
    line = '';
  };
  const wide = (words: string): boolean => textWidth(words, LETTERS) > room - 4;
  for (const token of tokens) {
    if (!wide(line + token)) {
      line += token;
      continue;
    }
    put();
    let rest = token;
    while (wide(rest)) {
      let n = 1;
      while (n < rest.length && !wide(rest.slice(0, n + 1))) n++;
      // A space at a line's end would be lost.
      while (n > 1 && /\s/.test(rest[n - 1])) n--;
      lines.push(`${rest.slice(0, n)}${GOES_ON}`);
      rest = rest.slice(n);
    }
    line = rest;
  }
  put();
  return lines;
}
