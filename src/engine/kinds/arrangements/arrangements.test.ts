import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { element } from '../../../../test/support/element.ts';
import { type SetCircuit, setCircuit } from '../../built/set-circuit.ts';
import type { Circuit, Element } from '../../network/elements.ts';
import { valueAt } from '../../network/elements.ts';
import type { ElementId } from '../../network/ids.ts';
import { cholesky } from '../../numerics/cholesky.ts';
import { type Complex, magnitude } from '../../numerics/complex.ts';
import type { SetDescription } from '../../set/description.ts';
import { readValue } from '../../set/read.ts';
import { linearSolver } from '../../solvers/linear/solve.ts';
import { tunedNetwork } from '../../solvers/linear/tuned.ts';
import { loaded } from '../../solvers/linear/views.ts';

const galena = JSON.parse(
  readFileSync(new URL('../../../../examples/medium-wave-galena.json', import.meta.url), 'utf8'),
);
// biome-ignore lint/suspicious/noExplicitAny: written sets are plain data here
type Written = any;

const solenoid = (name: string, turns: number, formerDiameter = '63 mm'): Written => ({
  shape: 'solenoid',
  name,
  formerDiameter,
  turns,
  wire: { size: '26 SWG' },
});
const COILS = [solenoid('main', 56), solenoid('aerial', 14), solenoid('rotor', 50, '52 mm')];
const FRAME = { kind: 'frame', side: '0.6 m', turns: 14, wire: { size: '0.6 mm' } };
const ROD = {
  kind: 'ferrite rod',
  length: '160 mm',
  diameter: '10 mm',
  turns: 60,
  winding: '40 mm',
  wire: { size: '0.3 mm' },
};
const traps = ['series', 'parallel', 'absorption'].map((kind, i) => ({
  kind,
  inductance: '200 µH',
  capacitance: `${90 + 40 * i} pF`,
}));

/** Every arrangement, plain and with what may be added to it. */
const ARRANGEMENTS: Record<string, Written> = {
  direct: { arrangement: { kind: 'direct', coil: 'main' } },
  'direct, with every trap': { arrangement: { kind: 'direct', coil: 'main', detectorTap: 20, traps } },
  'series capacitor': { arrangement: { kind: 'series capacitor', coil: 'main', seriesCapacitor: '60 pF' } },
  tapped: { arrangement: { kind: 'tapped', coil: 'main', aerialTap: 11, detectorTap: 18, traps } },
  'part of the coil, the rest shorted': {
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 11, detectorTap: 18, usedTurns: 40, traps },
  },
  'part of the coil, the rest open': {
    arrangement: { kind: 'direct', coil: 'main', usedTurns: 40, unusedTurns: 'open' },
  },
  coupled: { arrangement: { kind: 'coupled', coil: 'main', aerialCoil: 'aerial', distance: '30 mm' } },
  'coupled and tilted': {
    arrangement: { kind: 'coupled', coil: 'main', aerialCoil: 'aerial', tilt: 50, detectorTap: 25, traps },
  },
  'two circuits': {
    arrangement: {
      kind: 'two circuits',
      coil: 'main',
      aerialCoil: 'rotor',
      distance: '110 mm',
      aerialTap: 12,
      detectorTap: 25,
    },
  },
  slider: { arrangement: { kind: 'slider', coil: 'main', parallelCapacitor: '100 pF', traps } },
  'slider with a tap': { arrangement: { kind: 'slider', coil: 'main', detectorTap: 20 } },
  variometer: { arrangement: { kind: 'variometer', coil: 'main', rotor: 'rotor', parallelCapacitor: '100 pF', traps } },
  frame: { aerial: FRAME, arrangement: { kind: 'frame', detectorTap: 5, traps: [traps[2]] } },
  'ferrite rod': { aerial: ROD, arrangement: { kind: 'ferrite rod', detectorTap: 20 } },
  'full-wave': { arrangement: { kind: 'direct', coil: 'main' }, detector: { kind: 'germanium', wiring: 'full-wave' } },
  'full-wave on a frame': {
    aerial: FRAME,
    arrangement: { kind: 'frame' },
    detector: { kind: 'germanium', wiring: 'full-wave' },
  },
  doubler: {
    arrangement: { kind: 'tapped', coil: 'main', aerialTap: 11, detectorTap: 30 },
    detector: { kind: 'germanium', wiring: 'doubler' },
  },
  elements: {
    arrangement: {
      kind: 'elements',
      elements: [
        { kind: 'coil', name: 'field', coil: 'main', from: 'top', to: 'earth' },
        { kind: 'inductor', name: 'detector', from: 'aerial', to: 'earth', inductance: '30 µH' },
        { kind: 'mutual', name: 'coupling', first: 'field', second: 'detector', mutual: '20 µH' },
        { kind: 'tuning', name: 'C', from: 'top', to: 'earth' },
        { kind: 'resistor', name: 'R', from: 'top', to: 'ground', resistance: '1 MΩ' },
        { kind: 'capacitor', name: 'C2', from: 'ground', to: 'earth', capacitance: '100 pF' },
        { kind: 'detector', name: 'D', from: 'top', to: 'out' },
      ],
    },
  },
};

function setOf(change: Written): SetDescription {
  const read = readValue({ ...galena, coils: COILS, ...change });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.set;
}
const made = Object.fromEntries(Object.entries(ARRANGEMENTS).map(([name, c]) => [name, setCircuit(setOf(c))]));
const each = (check: (circuit: SetCircuit, name: string) => void): void => {
  for (const [name, circuit] of Object.entries(made)) check(circuit, name);
};

/** Power the sources give and power lost in each element, at one frequency. */
function powers(circuit: Circuit, f: number): { given: number; lost: number; of: Map<ElementId, number> } {
  const solution = linearSolver(circuit).solve(f);
  const of = new Map<ElementId, number>();
  let given = 0;
  let lost = 0;
  for (const e of circuit.elements) {
    if (e.kind === 'mutual' || e.kind === 'detector' || e.kind === 'cell') continue;
    const i = solution.current(e.id);
    const I2 = i.re ** 2 + i.im ** 2;
    if (e.kind === 'source') {
      given += (e.emf.re * i.re + e.emf.im * i.im) / 2;
      continue;
    }
    const v = {
      re: solution.voltage(e.from).re - solution.voltage(e.to).re,
      im: solution.voltage(e.from).im - solution.voltage(e.to).im,
    };
    const p =
      e.kind === 'capacitor'
        ? (2 * Math.PI * f * e.capacitance * valueAt(e.lossTangent ?? 0, f) * (v.re ** 2 + v.im ** 2)) / 2
        : (I2 * (e.kind === 'impedance' ? e.impedance(f).re : Math.max(valueAt(e.resistance, f), 1e-9))) / 2;
    of.set(e.id, p);
    lost += p;
  }
  return { given, lost, of };
}

const inductors = (circuit: Circuit) => circuit.elements.filter((e) => e.kind === 'inductor');
function inductanceMatrix(circuit: Circuit): { ids: ElementId[]; matrix: Float64Array } {
  const list = inductors(circuit);
  const ids = list.map((e) => e.id);
  const n = ids.length;
  const matrix = new Float64Array(n * n);
  list.forEach((e, i) => {
    matrix[i * n + i] = e.inductance;
  });
  for (const e of circuit.elements) {
    if (e.kind !== 'mutual') continue;
    const [i, j] = [ids.indexOf(e.first), ids.indexOf(e.second)];
    matrix[i * n + j] += e.mutual;
    matrix[j * n + i] += e.mutual;
  }
  return { ids, matrix };
}
const frequencies = fc.double({ min: 1.5e5, max: 1.7e6, noNaN: true });
const positions = fc.double({ min: 0, max: 1, noNaN: true });

describe('laws of every arrangement', () => {
  it('power from the field is what its parts and the detector take, to 1e-9', () => {
    each(({ assembly }, name) => {
      fc.assert(
        fc.property(frequencies, positions, fc.double({ min: 1e3, max: 1e6, noNaN: true }), (f, p, R) => {
          const detector: Element = element({
            kind: 'resistor',
            name: 'in the detector’s place',
            resistance: R,
            ...assembly.carrierPort,
          });
          const circuit = { elements: [...assembly.circuitAt(p, 1 - p).elements, detector] };
          const { given, lost } = powers(circuit, f);
          expect(given, name).toBeGreaterThan(0);
          expect(Math.abs(lost / given - 1), `${name} at ${f} Hz, ${p}`).toBeLessThan(1e-9);
        }),
        { numRuns: 12, seed: 3 },
      );
    });
  });

  it('is reciprocal: any two ports see each other alike', () => {
    each(({ assembly, transducer }, name) => {
      const ports = [assembly.carrierPort, assembly.tunedPort, assembly.outputPort, transducer];
      const solver = linearSolver(assembly.circuitAt(0.4), ports);
      for (const f of [400, 2e5, 9e5, 1.6e6]) {
        const { z } = solver.look(f);
        const size = Math.max(...z.flat().map(magnitude));
        for (let i = 0; i < 4; i++)
          for (let j = 0; j < i; j++) {
            expect(Math.abs(z[i][j].re - z[j][i].re) / size, name).toBeLessThan(1e-9);
            expect(Math.abs(z[i][j].im - z[j][i].im) / size, name).toBeLessThan(1e-9);
          }
      }
    });
  });

  it('couples less than wholly: every k below 1, and all coils together store energy whatever their currents', () => {
    each(({ assembly }, name) => {
      for (const p of [0, 0.3, 0.77, 1]) {
        const { ids, matrix } = inductanceMatrix(assembly.circuitAt(p));
        const n = ids.length;
        for (let i = 0; i < n; i++)
          for (let j = 0; j < i; j++)
            expect(Math.abs(matrix[i * n + j]) / Math.sqrt(matrix[i * n + i] * matrix[j * n + j]), name).toBeLessThan(
              1,
            );
        expect(cholesky(matrix, n, 1e-9), `${name} at ${p}`).toBeDefined();
      }
    });
  });

  it('cuts a coil at its taps so that parts and mutuals make the whole', () => {
    each(({ assembly, coils, loop }, name) => {
      for (const coil of [...coils, ...(loop ? [loop] : [])]) {
        const circuit = assembly.circuitAt(0.6);
        const { ids, matrix } = inductanceMatrix(circuit);
        const own = inductors(circuit).flatMap((e, i) => (e.owner.part === coil.id ? [i] : []));
        if (own.length < 2) continue;
        const sum = own.reduce((s, i) => s + own.reduce((t, j) => t + matrix[i * ids.length + j], 0), 0);
        expect(sum / coil.inductance, name).toBeCloseTo(1, 6);
      }
    });
  });

  it('has an id of its own for every element, and no coil of negative inductance', () => {
    each(({ assembly }, name) => {
      const ids = assembly.circuitAt(0.5).elements.map((e) => e.id);
      expect(new Set(ids).size, name).toBe(ids.length);
      for (const e of inductors(assembly.circuitAt(0.5))) expect(e.inductance, `${name}: ${e.id}`).toBeGreaterThan(0);
    });
  });

  it('tunes lower as the pointer goes towards 1, whatever does the tuning', () => {
    each(({ assembly }, name) => {
      const network = tunedNetwork(assembly);
      const peakOf = (p: number): number => {
        let best = 0;
        let at = 0;
        for (let f = 3e5; f < 2.5e6; f *= 1.004) {
          const size = loaded(network.at(f).at(p, p), 2e-6) / f;
          if (size > best) [best, at] = [size, f];
        }
        return at;
      };
      if (name.includes('trap')) return;
      expect(peakOf(0.85), name).toBeLessThan(peakOf(0.25));
    });
  });
});

const single = (change: Written) => {
  const circuit = setCircuit(setOf(change));
  const network = tunedNetwork(circuit.assembly);
  return { circuit, network };
};
/** Voltage at the detector per volt of emf with the set tuned to `tuned`, listening at `f`. */
function response(change: Written, tuned: number, f: number): number {
  const { network } = single(change);
  const g = 5e-6;
  const peak = network.at(tuned).peak(g);
  return network.at(f).level(g, peak.position, peak.other);
}
const db = (ratio: number): number => 20 * Math.log10(ratio);

describe('wave traps', () => {
  const plain = { kind: 'tapped', coil: 'main', aerialTap: 8, detectorTap: 20 };
  // A trap across the aerial wants much inductance and little capacitance to leave the rest alone; one in the lead the
  // other way about (common practice, no source).
  const tunedTo = (f: number, L: number) => ({ inductance: L, capacitance: 1 / ((2 * Math.PI * f) ** 2 * L), q: 150 });
  for (const kind of ['series', 'parallel'] as const) {
    it(`a ${kind} trap takes its station down by 20 dB and more, and leaves another 35 % away within 3 dB`, () => {
      const with_ = {
        arrangement: { ...plain, traps: [{ kind, ...tunedTo(909e3, kind === 'series' ? 200e-6 : 40e-6) }] },
      };
      const without = { arrangement: plain };
      // The set tuned to the unwanted station itself, its worst case; then to another and how loud that still is.
      expect(db(response(without, 909e3, 909e3) / response(with_, 909e3, 909e3))).toBeGreaterThan(20);
      for (const wanted of [603e3, 1251e3])
        expect(
          Math.abs(db(response(without, wanted, wanted) / response(with_, wanted, wanted))),
          `${wanted}`,
        ).toBeLessThan(3);
    });
  }
  it('an absorption trap well coupled takes 20 dB off its station', () => {
    const with_ = {
      arrangement: { ...plain, traps: [{ kind: 'absorption', coupling: 0.2, ...tunedTo(909e3, 100e-6) }] },
    };
    const tuned = single({ arrangement: plain });
    const at = tuned.network.at(909e3).peak(5e-6).position;
    const trapped = single(with_).network.at(909e3).level(5e-6, at, at);
    expect(db(tuned.network.at(909e3).level(5e-6, at, at) / trapped)).toBeGreaterThan(20);
  });
  it('a trap without a lead to stand in is left out and said so', () => {
    const { circuit } = single({
      aerial: FRAME,
      arrangement: { kind: 'frame', traps: [{ kind: 'series', ...tunedTo(909e3, 200e-6) }] },
    });
    expect(circuit.assembly.warnings).toEqual([{ code: 'arrangement.trap-without-lead', trap: 0 }]);
  });
});

describe('selectivity', () => {
  it('two circuits are narrower than one', () => {
    const one = {
      arrangement: { kind: 'coupled', coil: 'main', aerialCoil: 'aerial', coupling: '3 %', detectorTap: 12 },
    };
    const two = {
      arrangement: {
        kind: 'two circuits',
        coil: 'main',
        aerialCoil: 'rotor',
        coupling: '0.5 %',
        aerialTap: 4,
        detectorTap: 12,
      },
    };
    for (const off of [18e3, 36e3, 72e3]) {
      const skirt = (s: Written) => db(response(s, 909e3, 909e3) / response(s, 909e3, 909e3 + off));
      expect(skirt(two), `${off}`).toBeGreaterThan(skirt(one) + 6);
    }
  });

  it('a gang turns both together, and with like circuits loses little against peaking each', () => {
    const coils = [solenoid('main', 56), solenoid('other', 56)];
    const set = (ganged: boolean) => ({
      coils,
      arrangement: {
        kind: 'two circuits',
        coil: 'main',
        aerialCoil: 'other',
        coupling: '1 %',
        aerialTap: 3,
        detectorTap: 10,
        ganged,
      },
    });
    const { circuit, network } = single(set(true));
    expect(circuit.assembly.ganged).toBe(true);
    const peak = network.at(909e3).peak(5e-6);
    expect(peak.other).toBe(peak.position);
    const [together, each_] = [response(set(true), 909e3, 909e3), response(set(false), 909e3, 909e3)];
    expect(together).toBeLessThanOrEqual(each_ * 1.001);
    expect(db(each_ / together)).toBeLessThan(12);
  });

  it('looser coupling is sharper and, past the best, weaker', () => {
    const at = (coupling: number) => ({
      arrangement: { kind: 'coupled', coil: 'main', aerialCoil: 'aerial', coupling, detectorTap: 15 },
    });
    const skirt = (k: number) => db(response(at(k), 909e3, 909e3) / response(at(k), 909e3, 945e3));
    expect(skirt(0.05)).toBeGreaterThan(skirt(0.2));
    expect(skirt(0.2)).toBeGreaterThan(skirt(0.6));
    expect(response(at(0.002), 909e3, 909e3)).toBeLessThan(response(at(0.05), 909e3, 909e3));
  });

  it('coils turned square to each other do not couple', () => {
    const at = (tilt: number) =>
      response(
        { arrangement: { kind: 'coupled', coil: 'main', aerialCoil: 'aerial', distance: 0, tilt } },
        909e3,
        909e3,
      );
    expect(db(at(60) / at(90))).toBeGreaterThan(60);
  });
});

describe('coils that tune', () => {
  it('a slider further from the earthed end tunes lower; a variometer aiding tunes lower than opposing', () => {
    for (const name of ['slider', 'variometer']) {
      const bare = single({ arrangement: { ...ARRANGEMENTS[name].arrangement, traps: undefined } });
      const at = (f: number) => bare.network.at(f).peak(2e-6).position;
      const [low, high] = [at(650e3), at(1000e3)];
      expect(low, name).toBeGreaterThan(high);
    }
  });

  it('a variometer’s mutual inductance by five sums is that of the whole sum, within 0.5 % of its greatest', () => {
    const { circuit } = single(ARRANGEMENTS.variometer);
    const of = (p: number) =>
      circuit.assembly
        .baseAt(p)
        .elements.find(
          (e) => e.kind === 'mutual' && e.first.startsWith('coil:0/') && e.second.startsWith('coil:2/'),
        ) as {
        mutual: number;
      };
    const exact = (p: number) => {
      const tilt = 180 * (1 - p);
      const s = setCircuit(
        setOf({ arrangement: { kind: 'coupled', coil: 'main', aerialCoil: 'rotor', distance: 0, tilt } }),
      ).assembly.baseAt(0);
      return (s.elements.find((e) => e.kind === 'mutual') as { mutual: number }).mutual;
    };
    const most = of(1).mutual;
    for (const p of [0, 0.1, 0.31, 0.5, 0.66, 0.8, 0.95])
      expect(Math.abs(of(p).mutual - exact(p)) / most).toBeLessThan(5e-3);
    expect(of(0).mutual).toBeCloseTo(-most, 12);
  });
});

describe('loops', () => {
  it('has the whole emf across all its turns and a share of it at a tap, when nothing flows', () => {
    const { circuit } = single({ aerial: FRAME, arrangement: { kind: 'frame', detectorTap: 7 } });
    const source = (e: Element): e is Extract<Element, { kind: 'source' }> => e.kind === 'source';
    const sum = circuit.assembly
      .baseAt(0)
      .elements.filter(source)
      .reduce((s, e) => s + e.emf.re, 0);
    expect(sum).toBeCloseTo(1, 12);
    // Far below resonance no current flows worth speaking of.
    const view = linearSolver(circuit.assembly.baseAt(0), [
      circuit.assembly.tunedPort,
      { from: 'turn 7', to: 'earth' },
    ]).look(2e3);
    expect(magnitude(view.open[0])).toBeCloseTo(1, 3);
    expect(magnitude(view.open[1])).toBeCloseTo(0.5, 2);
  });

  it('is fed alike on both halves by a full-wave pair', () => {
    const { assembly } = made['full-wave on a frame'];
    const { open } = linearSolver(assembly.baseAt(0), [
      { from: 'top', to: 'earth' },
      { from: 'earth', to: 'bottom' },
    ]).look(2e3);
    const close = (a: Complex, b: Complex) => magnitude({ re: a.re - b.re, im: a.im - b.im });
    expect(close(open[0], open[1])).toBeLessThan(1e-3);
  });
});

describe('detectors in pairs', () => {
  it('a full-wave pair feeds its load in one direction from both ends, a doubler stacks two', () => {
    const ends = (name: string) =>
      made[name].assembly
        .circuitAt(0.5)
        .elements.filter((e) => e.kind === 'detector')
        .map((e) => `${(e as { from: string }).from}→${(e as { to: string }).to}`);
    expect(ends('full-wave')).toEqual(['top→out', 'bottom→out']);
    expect(ends('doubler')).toEqual(['pump→out', 'earth→pump']);
  });

  it('earths the middle of the coil for a full-wave pair: opposite and nearly equal ends', () => {
    const { assembly } = made['full-wave'];
    const peak = tunedNetwork(assembly).at(909e3).peak(1e-6);
    const s = linearSolver(assembly.circuitAt(peak.position)).solve(909e3);
    const [top, bottom] = [s.voltage('top'), s.voltage('bottom')];
    expect(top.re * bottom.re + top.im * bottom.im).toBeLessThan(-0.95 * magnitude(top) * magnitude(bottom));
    expect(magnitude(bottom) / magnitude(top)).toBeGreaterThan(0.7);
    expect(magnitude(bottom) / magnitude(top)).toBeLessThan(1.4);
  });
});

describe('a coil of which part is in use', () => {
  const used = (rest: 'shorted' | 'open') =>
    setCircuit(setOf({ arrangement: { kind: 'direct', coil: 'main', usedTurns: 40, unusedTurns: rest } }));
  /** Inductance at the top of the turns in use, the tuning capacitor and the aerial's lead taken away. */
  const inductanceOf = ({ assembly, coils }: SetCircuit, f: number): number => {
    const elements = assembly.baseAt(0.5).elements.filter((e) => e.kind === 'mutual' || e.owner.part === coils[0].id);
    const { z } = linearSolver({ elements }, [{ from: 'top', to: 'earth' }]).look(f);
    return z[0][0].im / (2 * Math.PI * f);
  };

  it('is what its turns are where the rest is open, far below the resonance of the whole', () => {
    const circuit = used('open');
    expect(inductanceOf(circuit, 2e4) / circuit.coils[0].partial(0, 40)).toBeCloseTo(1, 3);
  });

  it('is less by M²/L of the rest where that is shorted', () => {
    const circuit = used('shorted');
    const [coil] = circuit.coils;
    const M = coil.mutual([0, 40], [40, 56]);
    const expected = coil.partial(0, 40) - M ** 2 / coil.partial(40, 56);
    expect(inductanceOf(circuit, 5e5) / expected).toBeCloseTo(1, 2);
  });

  it('is the whole where all turns are in use', () => {
    const whole = setOf({ arrangement: { kind: 'direct', coil: 'main' } });
    const all = setOf({ arrangement: { kind: 'direct', coil: 'main', usedTurns: 56 } });
    expect(
      setCircuit(all)
        .assembly.circuitAt(0.5)
        .elements.map(({ id }) => id),
    ).toEqual(
      setCircuit(whole)
        .assembly.circuitAt(0.5)
        .elements.map(({ id }) => id),
    );
  });
});
