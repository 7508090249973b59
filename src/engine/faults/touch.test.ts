import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { builtSet } from '../built/built-set.ts';
import { readText } from '../set/read.ts';
import { type OhmPlace, ohmPlacesOf, portOfPlace } from './ohmmeter.ts';
import { touchOf } from './touch.ts';

const examples = readdirSync('examples').filter((name) => name.endsWith('.json'));

const OFF_THE_SET: readonly OhmPlace[] = ['phones', 'leads-apart', 'earth-lead'];

const builtOf = (name: string) => {
  const read = readText(readFileSync(`examples/${name}`, 'utf8'));
  if (!read.ok) throw new Error(`${name} does not read`);
  return builtSet(read.set);
};

describe('where a check touches a set', () => {
  it.each(examples)(
    '%s: each reading on the set has two terminals, on the nodes between which it is computed',
    (name) => {
      const built = builtOf(name);
      const jointOf = (part: string, terminal: string) =>
        [...built.parts].find(([id]) => id === part)?.[1].terminals.find(({ id }) => id === terminal)?.joint;
      for (const place of ohmPlacesOf(built)) {
        const { leads } = touchOf({ kind: 'ohms', place }, built);
        if (OFF_THE_SET.includes(place)) continue;
        expect(leads, place).toHaveLength(2);
        expect(leads[0].terminal, place).not.toBe(leads[1].terminal);
        const port = portOfPlace(place, built.circuit);
        const joints = leads.map(({ part, terminal }) => jointOf(part, terminal));
        if (port) expect(joints, place).toEqual([port.from, port.to].map(built.jointOf));
      }
    },
  );

  it('what is measured off the set touches none of its terminals', () => {
    const built = builtOf('medium-wave-galena.json');
    for (const place of OFF_THE_SET) {
      expect(ohmPlacesOf(built)).toContain(place);
      expect(touchOf({ kind: 'ohms', place }, built), place).toEqual({ leads: [], parts: [] });
    }
  });

  it('a spot is looked for on the detector, a crackle of turning on the capacitor, hum nowhere', () => {
    const built = builtOf('medium-wave-galena.json');
    expect(touchOf({ kind: 'sign', sign: 'louder-at-another-spot' }, built).parts).toEqual(['detector']);
    expect(touchOf({ kind: 'sign', sign: 'crackle-on-turning' }, built).parts).toEqual(['tuning']);
    expect(touchOf({ kind: 'sign', sign: 'hum' }, built)).toEqual({ leads: [], parts: [] });
  });
});
