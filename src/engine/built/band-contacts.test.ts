import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inRoot } from '../../../scripts/support/paths.mjs';
import { turnSwitch } from '../set/band-switch.ts';
import { readValue } from '../set/read.ts';
import { bandContacts } from './band-contacts.ts';

const written = JSON.parse(readFileSync(inRoot('examples/two-band.json'), 'utf8'));
const [medium, long] = written.bands;
function contacts(arrangement: object, other: object, band = 0) {
  const read = readValue({ ...written, arrangement, bands: [medium, { ...long, arrangement: other }] });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return bandContacts(turnSwitch(read.set, band))!;
}

it('has a pole for every lead that goes elsewhere on another band', () => {
  expect(contacts(written.arrangement, long.arrangement).poles).toEqual([
    {
      leads: ['aerial lead'],
      ways: [
        { coil: 'medium', turn: 9 },
        { coil: 'long', turn: 45 },
      ],
    },
    {
      leads: ['tuning capacitor'],
      ways: [
        { coil: 'medium', turn: 52 },
        { coil: 'long', turn: 225 },
      ],
    },
    {
      leads: ['detector'],
      ways: [
        { coil: 'medium', turn: 20 },
        { coil: 'long', turn: 90 },
      ],
    },
  ]);
});

it('has one pole for leads that always go together, and none for those that stay', () => {
  const direct = contacts({ kind: 'direct', coil: 'medium' }, { kind: 'direct', coil: 'long' });
  expect(direct.poles.map(({ leads }) => leads)).toEqual([['aerial lead', 'tuning capacitor', 'detector']]);
  const taps = contacts(
    { kind: 'tapped', coil: 'medium', aerialTap: 9, detectorTap: 20 },
    { kind: 'tapped', coil: 'medium', aerialTap: 20, detectorTap: 20 },
  );
  expect(taps.poles.map(({ leads }) => leads)).toEqual([['aerial lead']]);
});

it('puts another series capacitor in the way of its band', () => {
  const { poles } = contacts(
    { kind: 'direct', coil: 'medium' },
    { kind: 'series capacitor', coil: 'medium', seriesCapacitor: '100 pF' },
  );
  expect(poles).toEqual([
    {
      leads: ['aerial lead'],
      ways: [
        { coil: 'medium', turn: 52 },
        { coil: 'medium', turn: 52 },
      ],
      through: [undefined, { traps: [], seriesCapacitor: 1e-10 }],
    },
  ]);
});

it('shorts the turns of a shared coil that a band leaves out: what is on its end stays there', () => {
  const { poles } = contacts({ kind: 'direct', coil: 'medium', usedTurns: 30 }, { kind: 'direct', coil: 'medium' });
  expect(poles).toEqual([{ leads: ['coil end'], ways: [{ coil: 'medium', turn: 30 }, undefined] }]);
  const open = contacts(
    { kind: 'direct', coil: 'medium', usedTurns: 30, unusedTurns: 'open' },
    { kind: 'direct', coil: 'medium' },
  );
  expect(open.poles).toEqual([
    {
      leads: ['aerial lead', 'tuning capacitor', 'detector'],
      ways: [
        { coil: 'medium', turn: 30 },
        { coil: 'medium', turn: 52 },
      ],
    },
  ]);
});

it('is the same switch on whatever band it stands', () => {
  const one = contacts(written.arrangement, long.arrangement);
  const other = contacts(written.arrangement, long.arrangement, 1);
  expect(other.standing).toBe(1);
  expect({ ...other, standing: 0 }).toEqual(one);
  const { bands: _, ...plain } = written;
  const read = readValue(plain);
  expect(read.ok && bandContacts(read.set)).toBeUndefined();
});
