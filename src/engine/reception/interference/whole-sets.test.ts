import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inRoot } from '../../../../scripts/support/paths.mjs';
import { setCircuit } from '../../built/set-circuit.ts';
import { readValue } from '../../set/read.ts';
import { detectByTransient } from '../../solvers/transient/waveform-figures.ts';
import { decibels } from '../../units/quantities.ts';
import { bearingOf, emfOf, receiver, receiveStation, TEST_TONE } from '../path/receive-station.ts';
import { disturbancesAt } from './interference.ts';

/** A tone beside the one that both programmes are reckoned with, to tell them apart. */
const OTHER_TONE = 1100;

/** Whole sets, aerial to phones, with two stations at once cycle by cycle: fields in volts per metre. */
it.each([
  ['medium-wave-galena', 909e3, 20e-3, 936e3, 40e-3],
  ['medium-wave-germanium-amplifier', 999e3, 10e-3, 1017e3, 20e-3],
  ['long-wave-foil', 198e3, 30e-3, 207e3, 20e-3],
] as const)('%s: the other programme within 1 dB of the transient', (example, wanted, field, frequency, otherField) => {
  const read = readValue(JSON.parse(readFileSync(inRoot(`examples/${example}.json`), 'utf8')));
  if (!read.ok) throw new Error('the example does not read');
  const { set } = read;
  const like = {
    ...set.place.stations[0],
    power: undefined,
    distance: undefined,
    position: undefined,
    modulation: 0.5,
  };
  const stations = [
    { ...like, name: 'Wanted', frequency: wanted, fieldStrength: field },
    { ...like, name: 'Other', frequency, fieldStrength: otherField },
  ];
  const ready = receiver(setCircuit({ ...set, place: { ...set.place, stations } }));
  const [own, other] = stations.map((station) => receiveStation(ready, station));
  const [disturbance] = disturbancesAt(ready, own, [own, other]);
  const { circuit } = ready;
  const { tones } = detectByTransient(circuit.assembly.circuitAt(own.position, own.other), {
    devices: [circuit.detector],
    stations: [
      { frequency: wanted, emf: own.emf, modulation: [{ frequency: TEST_TONE, depth: 0.5 }] },
      {
        frequency,
        emf: emfOf(circuit, other.station, other.field, bearingOf(own.station, own.field)),
        modulation: [{ frequency: OTHER_TONE, depth: 0.5 }],
      },
    ],
    output: { node: 'out' },
    input: { node: circuit.assembly.carrierPort.from },
    settle: example.includes('amplifier') ? 0.09 : 10e-3,
    duration: 20e-3,
    tones: [TEST_TONE, OTHER_TONE],
  });
  const truth = decibels(tones[0].amplitude / tones[1].amplitude);
  expect(Math.abs(disturbance.audioRatio - truth), `${disturbance.audioRatio} dB, transient ${truth} dB`).toBeLessThan(
    1,
  );
});
