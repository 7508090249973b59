import { readFileSync } from 'node:fs';
import { setCircuit } from '../src/engine/built/set-circuit.ts';
import { arrivalMemory } from '../src/engine/place/stations/arrival.ts';
import { dialOf, tuningCurve } from '../src/engine/reception/dial/dial.ts';
import { receive } from '../src/engine/reception/path/receive.ts';
import { receiver, receiveStation } from '../src/engine/reception/path/receive-station.ts';
import type { Verdict } from '../src/engine/reception/path/types.ts';
import { readText, readValue } from '../src/engine/set/read.ts';
import { linearSolver } from '../src/engine/solvers/linear/solve.ts';
import { tunedNetwork } from '../src/engine/solvers/linear/tuned.ts';
import { receiveRanged } from '../src/engine/uncertainty/receive-ranged.ts';
import { bestSetting } from '../src/engine/vary/match.ts';
import { suggest } from '../src/engine/vary/suggest.ts';
import { trialsOf } from '../src/engine/vary/trial.ts';
import type { Measurement } from './bench.ts';

/** Medium-wave channels that 40 stations, or more, are spread over. */
const CHANNELS = 40;

/** An example with so many stations spread over medium wave. What is timed takes a copy each time: a set's circuit is made once. */
function bandOf(count: number, file: string) {
  const written = JSON.parse(readFileSync(`examples/${file}`, 'utf8'));
  const base = written.place.stations;
  written.place.stations = Array.from({ length: count }, (_, i) => ({
    ...base[i % base.length],
    name: `Station ${i + 1}`,
    frequency: `${531 + 27 * (i % CHANNELS)} kHz`,
  }));
  const read = readValue(written);
  if (!read.ok) throw new Error('the example does not read');
  return read.set;
}
const set = bandOf(40, 'medium-wave-galena.json');
const many = bandOf(1000, 'medium-wave-galena.json');
const twoCircuits = bandOf(40, 'two-tuned-circuits.json');
const ready = receiver(setCircuit(set));
const tuned = set.place.stations.map((station) => receiveStation(ready, station));
const curve = tuningCurve(ready);
const verdicts = tuned.map((s): Verdict => (s.within ? s.heard.loudness : 'out of range'));

/** Position by position, station by station, each with its own solution of the whole circuit. */
function dialStraightforward(positions: number): number {
  let sum = 0;
  const { assembly } = ready.circuit;
  for (let i = 0; i < positions; i++) {
    const solver = linearSolver(assembly.circuitAt(i / (positions - 1)), [assembly.carrierPort]);
    for (const { station } of tuned) sum += solver.look(station.frequency).open[0].re;
  }
  return sum;
}

function example(file: string) {
  const read = readText(readFileSync(`examples/${file}`, 'utf8'));
  if (!read.ok) throw new Error('the example does not read');
  return read.set;
}
const demoSet = example('medium-wave-galena.json');
const slider = example('slider-set.json');

export const measurements: Measurement[] = [
  {
    name: 'best detector tap of 56 turns, one station',
    unit: 'search',
    run: () => void bestSetting(trialsOf(demoSet), 0, 'arrangement.detectorTap'),
  },
  {
    name: 'suggestions for all 8 stations of the first example',
    unit: 'set',
    run: () => {
      const trials = trialsOf(demoSet);
      for (const station of demoSet.place.stations.keys()) suggest(trials, station);
    },
  },
  {
    name: 'whole reception, 40 stations',
    unit: 'reception',
    run: () => void receive({ ...set }),
    goal: { atMost_s: 0.005 },
  },
  {
    name: 'whole reception, 40 stations, two tuned circuits',
    unit: 'reception',
    run: () => void receive({ ...twoCircuits }),
    goal: { atMost_s: 0.005 },
  },
  {
    name: 'whole reception, 1,000 stations',
    unit: 'station',
    run: () => receive({ ...many }).stations.length,
    against: 'whole reception, 40 stations, by station',
    // Growing with the stations and not with their pairs.
    goal: { atLeastRatio: 0.7 },
  },
  {
    name: 'whole reception, 40 stations, by station',
    unit: 'station',
    run: () => receive({ ...set }).stations.length,
  },
  {
    name: 'whole reception of a slider set, 3 stations',
    unit: 'reception',
    run: () => void receive({ ...slider }),
  },
  {
    name: 'reception with ranges of all 8 stations of the first example',
    unit: 'reception',
    run: () => void receiveRanged({ ...demoSet }),
    goal: { atMost_s: 0.1 },
  },
  {
    name: 'reception with ranges of all 40 stations',
    unit: 'reception',
    run: () => void receiveRanged({ ...set }),
  },
  {
    name: 'whole reception, its ground waves found anew',
    unit: 'reception',
    run: () => void receive({ ...set }, { memory: arrivalMemory() }),
  },
  {
    name: 'dial, 200 positions × 40 stations',
    unit: 'dial',
    goal: { atMost_s: 0.1, atLeastRatio: 3 },
    against: 'the same, every point solved by itself',
    run: () => {
      const fresh = { ...ready, network: tunedNetwork(ready.circuit.assembly) };
      dialOf(fresh, curve, tuned, verdicts, 200);
    },
  },
  { name: 'the same, every point solved by itself', unit: 'dial', run: () => void dialStraightforward(200) },
];
