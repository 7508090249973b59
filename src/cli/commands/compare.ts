import { compareDetectorsOn, formatNumber, formatQuantity } from '../../engine/index.ts';
import { clean, table } from '../../outputs/tables/index.ts';
import { detectionLawWords, jsonText, verdictWords } from '../../outputs/words/index.ts';
import { fileAndOptions } from '../arguments.ts';
import { chooseStation } from '../choose-station.ts';
import { coastFor } from '../coast.ts';
import type { Command } from '../command.ts';
import { readSet } from '../read-set.ts';

export const compare: Command = {
  name: 'compare',
  about: 'The same station through every usual detector: loudness, loading, distortion, best tap.',
  usage: 'compare SET [--station NAME|kHz] [--json]',
  options: [
    ['--station NAME', 'by part of its name or its frequency in kHz; default the first'],
    ['--json', 'as data'],
  ],
  examples: ['faintwave compare examples/medium-wave-galena.json --station 909'],
  async run(args, io) {
    const { values, file } = fileAndOptions(args, { station: { type: 'string' }, json: { type: 'boolean' } });
    const set = await readSet(file, io);
    const index = chooseStation(set.place.stations, values.station);
    const rows = compareDetectorsOn(set, index, undefined, true, { coast: coastFor(set.place) });
    if (values.json) {
      io.data(`${jsonText(rows)}\n`);
      return 0;
    }
    const station = set.place.stations[index];
    io.out(
      `${clean(station.name)}, ${formatNumber(station.frequency / 1e3, 5)} kHz, on ${clean(set.name)}: loudest first\n\n`,
    );
    io.out(
      `${table(
        [
          { title: 'detector', text: (r) => r.label },
          { title: 'sound', text: (r) => `${Math.round(r.soundPressureLevel)} dB SPL`, align: 'right' },
          { title: 'than now', text: (r) => formatQuantity(r.difference, 'level'), align: 'right' },
          { title: 'heard', text: (r) => verdictWords[r.heard] },
          { title: 'direct', text: (r) => formatQuantity(r.directVoltage, 'voltage', 2), align: 'right' },
          { title: 'loads like', text: (r) => formatQuantity(r.inputResistance, 'resistance', 2), align: 'right' },
          { title: 'Q', text: (r) => formatNumber(r.loadedQ, 2), align: 'right' },
          { title: 'off', text: (r) => formatQuantity(-r.loading, 'level', 2), align: 'right' },
          { title: 'distortion', text: (r) => formatQuantity(r.distortion, 'ratio', 2), align: 'right' },
          { title: 'straight from', text: (r) => formatQuantity(r.squareLawEnds, 'voltage', 2), align: 'right' },
          {
            title: 'best tap',
            text: (r) =>
              r.bestTap
                ? `${r.bestTap.turns} turns, ${formatQuantity(r.bestTap.gain, 'level')} ${r.bestTap.of === 'clearance' ? 'clearance' : ''}`.trim()
                : '',
          },
          {
            title: 'best load',
            text: (r) =>
              `${formatQuantity(r.bestLoad.resistance, 'resistance', 2)}, ${formatQuantity(r.bestLoad.gain, 'level')}`,
          },
        ],
        rows,
        io.width,
      )}\n`,
    );
    io.out('\nWhat each is good for\n');
    for (const r of rows) io.out(`  ${r.label}: ${r.merit} ${detectionLawWords(r)}\n`);
    io.out(
      '\n“off”: what its loading takes off the voltage it is joined to. “straight from”: the carrier across it where square law has half turned into following the envelope straight, in this set. “best load”: a plain resistance in place of what is there.\n',
    );
    return 0;
  },
};
