import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { InputError, type Io } from '../../src/cli/command.ts';
import { processFiles } from '../../src/cli/files.ts';

/** A command's surroundings in memory: it reads real files and writes none. */
export function memoryIo(): Io & {
  printed: string;
  dataPrinted: string;
  problems: string;
  readonly files: Map<string, string | Uint8Array>;
  readonly shares: number[];
} {
  const files = new Map<string, string | Uint8Array>();
  const shares: number[] = [];
  const reading = <T>(file: string, work: () => T): T => {
    try {
      return work();
    } catch (error) {
      throw new InputError(`cannot read ${file}: ${(error as Error).message}`);
    }
  };
  return {
    printed: '',
    dataPrinted: '',
    problems: '',
    files,
    shares,
    out(text) {
      this.printed += text;
    },
    data(text) {
      this.dataPrinted += text;
    },
    err(text) {
      this.problems += text;
    },
    colour: false,
    width: 100,
    read: async (file) => reading(file, () => readFileSync(file, 'utf8')),
    open: processFiles().open,
    checkTarget: async () => {},
    write: async (file, data) => void files.set(file, data),
    async writeInto(folder, pieces) {
      for (const { name, data } of pieces) files.set(join(folder, name), data);
      return pieces.map(({ name }) => join(folder, name));
    },
    async writeSeries(folder, _option, _isOfSeries, pieces) {
      for (const { name, data } of pieces) files.set(join(folder, name), data);
    },
    progress: (_what, share) => void shares.push(share),
  };
}
