import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { receive } from '../reception/path/receive.ts';
import { readValue } from '../set/read.ts';
import { withValueAt } from '../set/write.ts';
import { trialsOf } from './trial.ts';
import { twoCircuitsEdits, twoCircuitsFor } from './two-circuits.ts';

const example = (name: string) => JSON.parse(readFileSync(`examples/${name}.json`, 'utf8'));
const read = (written: unknown) => {
  const result = readValue(written);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.set;
};

describe('two tuned circuits made out of one', () => {
  it('reach every wanted station, keep the dial, and part two stations 36 kHz apart', () => {
    const pair = ['Harbour Light', 'Northmoor Calling'];
    const galena = example('medium-wave-galena');
    // Strong enough to be heard: what is not heard is not clear of anything.
    const heard = galena.place.stations.map((one: { readonly name: string }) =>
      pair.includes(one.name) ? { ...one, fieldStrength: '5 mV/m' } : one,
    );
    const written = {
      ...galena,
      place: { ...galena.place, stations: heard },
      wants: [{ kind: 'clear', station: pair[0], from: pair[1], by: '40 dB' }],
    };
    const { stations } = read(written).place;
    const [wanted, near] = pair.map((name) => stations.findIndex((one) => one.name === name));
    const facts = twoCircuitsFor(trialsOf(read(written)), wanted)!;
    const after = read(
      twoCircuitsEdits(written, facts).reduce<unknown>((base, { path, to }) => withValueAt(base, path, to), written),
    );
    expect(after.arrangement.kind).toBe('two circuits');
    const [was, is] = [receive(read(written)), receive(after)];
    for (const i of [wanted, near]) {
      expect(is.stations[i].dial).toBeDefined();
      expect(is.stations[i].warnings.map(({ code }) => code)).not.toContain('arrangement.aerial-circuit-out-of-reach');
    }
    const below = (r: typeof was) => r.stations[wanted].disturbances.find(({ index }) => index === near)!.separation;
    expect(below(is)).toBeGreaterThan(below(was) + 6);
    expect(is.dial.highest / is.dial.lowest).toBeGreaterThan((0.9 * was.dial.highest) / was.dial.lowest);
    // As told, so built: what is written is what was calculated.
    expect(is.dial.lowest / facts.after[0]).toBeCloseTo(1, 3);
  });
  it('stay ganged where they are: what is written is what was calculated', () => {
    const written = withValueAt(example('two-tuned-circuits'), ['arrangement', 'ganged'], true);
    const facts = twoCircuitsFor(trialsOf(read(written)), 0)!;
    const after = read(
      twoCircuitsEdits(written, facts).reduce<unknown>((base, { path, to }) => withValueAt(base, path, to), written),
    );
    expect(facts.arrangement.ganged).toBe(true);
    expect(after.arrangement).toMatchObject({ ganged: true });
    const { now } = trialsOf(after);
    const { level, clearance } = now.medians.figures(0);
    expect(level).toBeCloseTo(facts.station.after.level, 1);
    expect(clearance).toBeCloseTo(facts.station.after.clearance, 1);
    expect(now.curve().lowest / facts.after[0]).toBeCloseTo(1, 3);
  });
  it('has nothing to offer for a frame', () => {
    const set = read(example('frame-aerial'));
    expect(twoCircuitsFor(trialsOf(set), 0)).toBeUndefined();
  });
  it('says of an aerial circuit that it does not reach a station', () => {
    const written = example('two-tuned-circuits');
    const few = withValueAt(written, ['coils', 0, 'turns'], 8);
    const swapped = withValueAt(few, ['arrangement', 'aerialTap'], undefined);
    const codes = receive(read(swapped)).stations.flatMap(({ warnings }) => warnings.map(({ code }) => code));
    expect(codes).toContain('arrangement.aerial-circuit-out-of-reach');
  });
});
