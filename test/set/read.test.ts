import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { earthModel, tuningModel } from '../../src/engine/kinds/models.ts';
import { earth } from '../../src/engine/parts/earth/earth.ts';
import { LARGEST_FILE, readText, readValue } from '../../src/engine/set/read.ts';
import { withValueAt, writeText } from '../../src/engine/set/write.ts';
import { problemSentence, readNote } from '../../src/outputs/words/index.ts';

const example = (name: string) => readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8');
const galena = () => JSON.parse(example('medium-wave-galena'));
const sentences = (value: unknown) => {
  const result = typeof value === 'string' ? readText(value) : readValue(value);
  return result.ok ? [] : result.problems.map(problemSentence);
};

describe('reading a description', () => {
  it('reads every example to SI numbers with defaults filled in, and keeps what was written', () => {
    for (const file of readdirSync(new URL('../../examples', import.meta.url)).filter((f) => f.endsWith('.json'))) {
      const text = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');
      const result = readText(text);
      expect(result.ok ? [] : result.problems.map(problemSentence), file).toEqual([]);
      if (result.ok) {
        expect(writeText(result.written)).toBe(text);
        expect(result.notes).toEqual([]);
      }
    }
    const set = readText(example('medium-wave-galena'));
    expect(set.ok && set.set.coils[0]).toMatchObject({
      formerDiameter: 0.063,
      turns: 56,
      wire: { size: 0.018 * 0.0254, metal: 'copper' },
    });
  });

  it('keeps unknown keys through a read and write, and says so', () => {
    const value = { ...galena(), bench: { drawer: 3 } };
    value.coils[0].colour = 'green';
    const result = readValue(value);
    expect(result.ok && JSON.parse(writeText(result.written))).toEqual(value);
    expect(result.ok && result.notes.length).toBe(2);
  });

  it('names every problem at once with path, expected, received and a way out', () => {
    const value = galena();
    value.coils[0].turns = -3;
    value.tuning.maximum = '5 m';
    value.aerial.height = '8 pF';
    value.earth.kind = 'rood';
    value.place.stations[1].frequency = Number.NaN;
    value.place.stations[2].frequncy = value.place.stations[2].frequency;
    delete value.place.stations[2].frequency;
    const found = sentences(value);
    expect(found).toHaveLength(6);
    expect(found.join('\n')).toMatch(/coils\[0\]\.turns: expected a number from 0.25 to 5000/);
    expect(found.join('\n')).toMatch(
      /tuning\.maximum: expected a capacitance such as "500 pF", got "5 m" \("m" is the unit of a length/,
    );
    expect(found.join('\n')).toMatch(/aerial\.height: .*"pF" is the unit of a capacitance/);
    expect(found.join('\n')).toMatch(/earth\.kind.*"rod", "rods"/);
    expect(found.join('\n')).toMatch(/stations\[1\]\.frequency/);
    expect(found.join('\n')).toMatch(/"frequncy" is written there; did you mean "frequency"\?/);
  });

  it('says which kind was probably meant, and what a wire is written like', () => {
    const value = galena();
    value.detector.kind = 'galenna';
    value.coils[0].wire = '26 SWG';
    const found = sentences(value).join('\n');
    expect(found).toMatch(/detector\.kind: .*got "galenna" \(did you mean "galena"\?\)/);
    expect(found).toMatch(/coils\[0\]\.wire: .*write \{ "size": "28 SWG"/);
  });

  it('says which unit a bare number lacks, and names both fields that are at odds', () => {
    const changed = (part: string, more: object) => {
      const set = galena();
      return sentences({ ...set, [part]: { ...set[part], ...more } });
    };
    expect(changed('aerial', { height: '8' }).join()).toMatch(/^aerial\.height: .*add a unit: "8 m", not "8"/);
    expect(changed('tuning', { maximum: '365' }).join()).toMatch(/^tuning\.maximum: .*add a unit: "365 pF", not "365"/);
    expect(changed('tuning', { maximum: '10 pF' })).toEqual([
      'tuning.minimum: expected less than 10 pF, the value of tuning.maximum, got 15 pF (lower this, or raise tuning.maximum)',
    ]);
  });
  it('refuses what is smaller than anything there is, yet takes nothing at all', () => {
    const value = galena();
    value.tuning.minimum = '1e-300 F';
    value.tuning.stray = '0 pF';
    expect(sentences(value).join()).toMatch(
      /tuning\.minimum: expected a capacitance that is 0 or no smaller than 1e-24 F, got "1e-300 F"/,
    );
    value.tuning.minimum = '30 pF';
    expect(sentences(value)).toEqual([]);
  });

  it('refuses what refers to nothing', () => {
    const value = galena();
    value.arrangement.coil = 'mian';
    expect(sentences(value)).toEqual([
      'arrangement.coil: expected the name of a coil ("main"), got "mian" (did you mean "main"?)',
    ]);
    const taps = galena();
    taps.arrangement.aerialTap = 90;
    expect(sentences(taps)[0]).toMatch(/arrangement\.aerialTap: expected at most the coil’s 56 turns/);
  });

  it('says where a file is cut short or broken, and refuses junk without hanging', () => {
    const text = example('medium-wave-galena');
    expect(sentences(text.slice(0, 700))[0]).toMatch(/cut short/);
    expect(sentences(text.replace('"aerial": {', '"aerial": {{'))[0]).toMatch(/breaks at line \d+, column \d+/);
    expect(sentences(text.replace('"turns": 56', '"turns": NaN'))[0]).toMatch(/breaks at line \d+, column \d+/);
    expect(sentences('x'.repeat(LARGEST_FILE * 5))[0]).toMatch(/at most 2 MB/);
    expect(sentences('')[0]).toMatch(/empty/);
    expect(sentences('[1,2]')[0]).toMatch(/a description/);
  });

  it('has a note on correlations of what is not measured, and of a figure with itself', () => {
    const set = JSON.parse(example('medium-wave-galena'));
    set.coils[0].measured = { inductance: { value: '220 µH' } };
    set.tuning.measured = { stray: { value: '20 pF' } };
    const [L, C] = ['coils[0].inductance', 'tuning.stray'];
    set.correlations = [
      { first: L, second: C, correlation: -0.8 },
      { first: 'coils[0].inductnace', second: C, correlation: 0.5 },
      { first: L, second: L, correlation: 0.5 },
    ];
    const result = readText(JSON.stringify(set));
    expect(result.ok && result.notes).toEqual([
      { code: 'correlation-nowhere', path: 'coils[0].inductnace' },
      { code: 'correlation-nowhere', path: L },
    ]);
  });

  it('is not reached through prototype-named keys', () => {
    const text = example('medium-wave-galena').replace(
      '"name": "Breadboard',
      '"__proto__": {"polluted": 1}, "constructor": 5, "name": "Breadboard',
    );
    const result = readText(text);
    expect(result.ok).toBe(true);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(() => withValueAt({}, ['__proto__', 'x'], 1)).toThrow(RangeError);
  });

  it('never throws, whatever the JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        readValue(value);
      }),
      { numRuns: 200 },
    );
    const paths = ['place', 'aerial', 'coils', 'tuning', 'arrangement', 'detector', 'load'];
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue(), (key, junk) => {
        readValue({ ...galena(), [key]: junk });
      }),
      { numRuns: 300 },
    );
  });
});

describe('what cannot be built', () => {
  const problemsOf = (change: (value: ReturnType<typeof galena>) => void): string[] => {
    const value = galena();
    change(value);
    return sentences(value);
  };

  it('is named at reading, with its path', () => {
    expect(
      problemsOf((d) => {
        d.aerial.base = '9 m';
      })[0],
    ).toMatch(
      /^aerial\.base: expected sizes that can be built, got 9 \(the height of the foot of the lead-in must be at least 0 and below 8 m, not 9 m\)/,
    );
    expect(
      problemsOf((d) => {
        d.aerial = { kind: 'frame', side: '0.6 m', turns: 30, pitch: '0.2 mm', wire: { size: '0.5 mm' } };
        d.arrangement = { kind: 'frame' };
      })[0],
    ).toMatch(
      /^aerial\.pitch: expected sizes that can be built, got 0.0002 \(the pitch of the turns must be from 0\.5 mm to 10 m, not 0\.2 mm\)/,
    );
    expect(
      problemsOf((d) => {
        d.tuning = { kind: 'vanes', outerRadius: '5 mm', gap: '0.5 mm', vanes: 7 };
      })[0],
    ).toMatch(/^tuning\.outerRadius: .*the outer radius of the vanes must be above 8 mm/);
    expect(
      problemsOf((d) => {
        d.coils[0] = { ...d.coils[0], shape: 'basket', pegCircle: '60 mm', pegs: 5, over: 3 };
      })[0],
    ).toMatch(/^coils\[0\]\.over: .*over 3 of 5 cannot be woven/);
  });

  it('covers arrangements: two coils, full-wave pairs, lists that couple too closely', () => {
    expect(
      problemsOf((d) => {
        d.arrangement = { kind: 'coupled', coil: 'main', aerialCoil: 'main' };
      })[0],
    ).toMatch(/^arrangement\.aerialCoil: expected a coil of its own/);
    expect(
      problemsOf((d) => {
        d.arrangement = { kind: 'slider', coil: 'main' };
        d.detector.wiring = 'full-wave';
      })[0],
    ).toMatch(/^detector\.wiring/);
    const list = (mutual: string) =>
      problemsOf((d) => {
        d.arrangement = {
          kind: 'elements',
          elements: [
            { kind: 'inductor', name: 'L1', from: 'aerial', to: 'earth', inductance: '100 µH' },
            { kind: 'inductor', name: 'L2', from: 'top', to: 'earth', inductance: '400 µH' },
            { kind: 'mutual', name: 'M', first: 'L1', second: 'L2', mutual },
            { kind: 'detector', name: 'D', from: 'top', to: 'out' },
          ],
        };
      });
    expect(list('100 µH')).toEqual([]);
    expect(list('200 µH')[0]).toMatch(/^arrangement\.elements\[2\]\.mutual: expected less than 200 µH/);
  });

  it('is not upset by nesting a hundred thousand deep', () => {
    const deep = `${'['.repeat(100_000)}1${']'.repeat(100_000)}`;
    expect(sentences(deep)[0]).toMatch(/nested too deep/);
    expect(sentences(example('medium-wave-galena').replace('"notes": ', `"deep": ${deep}, "notes": `))[0]).toMatch(
      /nested too deep/,
    );
  });
});

describe('what stands for something else', () => {
  it('reads a Touchstone file into an aerial of measured impedance, and names the line that is wrong', () => {
    const value = galena();
    value.aerial = {
      kind: 'touchstone',
      text: '! from an analyser\n# MHz Z RI R 1\n0.6 30 -1200\n1.2 40 -500\n',
      effectiveHeight: '5 m',
    };
    const read = readValue(value);
    expect(read.ok && read.set.aerial).toEqual({
      kind: 'impedance',
      effectiveHeight: 5,
      points: [
        { frequency: 6e5, resistance: 30, reactance: -1200 },
        { frequency: 1.2e6, resistance: 40, reactance: -500 },
      ],
    });
    expect(read.ok && read.written.aerial).toEqual(value.aerial);
    value.aerial.text = '# MHz Z RI R 1\n0.6 thirty -1200\n';
    expect(sentences(value)).toHaveLength(1);
    expect(sentences(value)[0]).toMatch(
      /^aerial\.text: expected a one-port Touchstone file, got ".*line 2: expected numbers/,
    );
  });

  it('takes a named soil for its own figures', () => {
    const value = galena();
    value.earth = { kind: 'rod', length: '1.2 m', diameter: '12 mm', soil: 'clay' };
    const read = readValue(value);
    const rod = read.ok ? earthModel(read.set.earth) : undefined;
    const inClay = earth({ shape: 'rod', length: 1.2, diameter: 0.012, soil: 'clay', frequency: 1e6 });
    expect(rod!.range).toEqual(inClay.range);
    expect(rod!.resistance).toBe(inClay.resistance);
  });

  it('narrows a band by a padder', () => {
    const value = galena();
    const plain = readValue(value);
    value.tuning.padder = '500 pF';
    const padded = readValue(value);
    const [a, b] = [plain, padded].map((r) => (r.ok ? tuningModel(r.set.tuning) : undefined)!);
    // 500 pF in series with 500 pF is 250 pF, and 20 pF of strays.
    expect(b.max).toBeCloseTo(270e-12, 15);
    expect(b.min).toBeLessThan(a.min);
  });
});

describe('a file with very many problems', () => {
  const withStations = (stations: unknown) => {
    const value = galena();
    value.place.stations = stations;
    return readValue(value);
  };

  it('names the first few of each kind and how many others there are, whatever is wrong', () => {
    for (const bad of [
      {},
      5,
      { a: 1, b: 2 },
      { name: 'A', frequency: 'x', power: [[]], distance: '1,000 km' },
      ['x'.repeat(50)],
    ]) {
      const many = withStations(Array.from({ length: 20_000 }, () => bad));
      if (many.ok) throw new Error('read');
      expect(many.problems.length).toBeLessThan(100);
      expect(many.problems.map(problemSentence).join('\n')).toMatch(/at most 1000 of them, got 20000/);
      expect(many.problems.some(({ more = 0 }) => more === 1000 - 20)).toBe(true);
      expect(many.problems.map(problemSentence).join('\n')).toMatch(/and 980 more of the same kind/);
      for (const { given } of many.problems)
        if (given?.code === 'value') expect(given.json.length).toBeLessThanOrEqual(62);
    }
    const named = readValue({
      ...galena(),
      ...Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`k${i}`, i])),
    });
    expect(named.ok && named.notes).toHaveLength(21);
    expect(named.ok && named.notes.at(-1)).toEqual({ code: 'more-unknown-keys', count: 4980 });
  });

  it('looks at each value a fixed number of times, and at no more of a list than a description holds', () => {
    let looks = 0;
    const counted = (value: object): object =>
      new Proxy(value, {
        get(target, key) {
          looks++;
          return Reflect.get(target, key);
        },
        ownKeys(target) {
          looks++;
          return Reflect.ownKeys(target);
        },
      });
    const looksAt = (length: number): number => {
      looks = 0;
      withStations(Array.from({ length }, () => counted({ name: 'A', frequency: 'x', aaa: 1, frequancy: 2 })));
      return looks;
    };
    const [a, b, c] = [looksAt(500), looksAt(1000), looksAt(20_000)];
    expect(b).toBeLessThan(2.1 * a);
    // What lies beyond is only walked over once, to see how deep it nests.
    expect(c - b).toBeLessThanOrEqual(19_000 * 6);
    expect(a / 500).toBeLessThan(120);
  });
});

describe('what is not a set’s', () => {
  it('passes over $schema without a word', () => {
    const read = readValue({ $schema: 'faintwave-set-1.schema.json', ...galena() });
    expect(read.ok && read.notes).toEqual([]);
    expect(read.ok && (read.written as Record<string, unknown>).$schema).toBe('faintwave-set-1.schema.json');
  });

  it('opens an old file whose level wire has the foot of a lead-in, which nothing used, and says so', () => {
    const value = galena();
    value.aerial = { kind: 'horizontal', height: '6 m', length: '20 m', base: '1 m' };
    const read = readValue(value);
    expect(read.ok && read.notes.map(readNote)).toEqual(['aerial.base is not known here and is kept as it is']);
    expect(read.ok && read.written.aerial).toEqual(value.aerial);
  });

  it('does not take a list for an object', () => {
    for (const key of ['place', 'aerial', 'earth', 'tuning', 'arrangement', 'detector', 'load', 'ear']) {
      expect(sentences({ ...galena(), [key]: [] }).join(), key).toMatch(new RegExp(`^${key}`));
    }
    const value = galena();
    value.coils[0] = [];
    value.place.stations[0] = [];
    value.place.position = [];
    expect(sentences(value)).toHaveLength(3);
  });
});
