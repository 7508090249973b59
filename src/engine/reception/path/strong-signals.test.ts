import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { setCircuit } from '../../built/set-circuit.ts';
import { exponentialDetector } from '../../parts/detector/exponential.ts';
import { readValue } from '../../set/read.ts';
import { fieldsAtSite } from './field.ts';
import { receiver, receiveStation } from './receive-station.ts';

const FOLDER = 'examples';
const examples = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
/** Nothing but its exponential: under a strong signal a switch. */
const bare = [
  exponentialDetector({ saturationCurrent: 5e-7, ideality: 1.1 }),
  exponentialDetector({ saturationCurrent: 1e-9, ideality: 1.05 }),
];

test.each(examples)('%s: a bare junction needs few balances of the tone up to 3 V/m', (name) => {
  const read = readValue(JSON.parse(readFileSync(`${FOLDER}/${name}`, 'utf8')));
  if (!read.ok) throw new Error(`${name} does not read`);
  const { set } = read;
  const fieldOf = fieldsAtSite(set.place);
  for (const detector of bare) {
    const circuit = setCircuit(set, { detector });
    for (const fieldStrength of [0.1, 1, 3]) {
      const ready = receiver(circuit, (station) => ({ ...fieldOf(station), fieldStrength }));
      for (const station of set.place.stations.slice(0, 6)) {
        const { audio } = receiveStation(ready, { ...station, modulation: 1 });
        expect(audio.iterations, `${station.name} at ${fieldStrength} V/m`).toBeLessThanOrEqual(200);
      }
    }
  }
});
