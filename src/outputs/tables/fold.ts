/** Characters, as a terminal counts them for the letters used here. */
export const widthOf = (text: string): number => [...text].length;

/** Words broken into lines of at most so many characters; a longer word has a line of its own. */
export function wordLines(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = '';
    }
    line += (line && ' ') + word;
  }
  return [...lines, line];
}

/** Lines that are too long for a terminal broken between words, the rest of each as far in as its beginning. */
export function folded(text: string, width: number): string {
  return text
    .split('\n')
    .map((line) => {
      if (widthOf(line) <= width) return line;
      const [indent] = /^\s*([•⚠!?►] )?/.exec(line)!;
      const [first, ...more] = wordLines(line.slice(indent.length), Math.max(20, width - indent.length));
      return [indent + first, ...more.map((rest) => ' '.repeat(indent.length) + rest)].join('\n');
    })
    .join('\n');
}
