import { coilsOf, mutualOf } from '../built/coil-parts.ts';
import { loadElements } from '../built/load-elements.ts';
import { type SetCircuit, setCircuit } from '../built/set-circuit.ts';
import { workingFrequency } from '../built/set-parts.ts';
import { AERIAL, OUT } from '../kinds/arrangements/assembly.ts';
import type { SectionedCoil } from '../kinds/arrangements/coil-sections.ts';
import { EARTH } from '../network/elements.ts';
import type { Complex } from '../numerics/complex.ts';
import type { SetDescription } from '../set/description.ts';
import { linearSolver } from '../solvers/linear/solve.ts';
import { greatest, type StraightQuotient } from '../solvers/linear/straight-quotient.ts';
import type { Farads, Henries, Hertz } from '../units/quantities.ts';

/** Aerial over earth as its terminals show it, per volt of emf. */
export interface Feed {
  readonly open: Complex;
  readonly z: Complex;
}

/** Elements between two nodes, as the rest of a set sees them at any frequency; each frequency is solved once. */
function seenAt(look: (frequency: Hertz) => Feed): (frequency: Hertz) => Feed {
  const known = new Map<Hertz, Feed>();
  return (frequency) => {
    let feed = known.get(frequency);
    if (!feed) known.set(frequency, (feed = look(frequency)));
    return feed;
  };
}

/** What a set's aerial and earth are to the rest of it. */
export function aerialFeed({ aerial }: SetCircuit): (frequency: Hertz) => Feed {
  const solver = linearSolver({ elements: aerial!.elements }, [{ from: AERIAL, to: EARTH }]);
  return seenAt((frequency) => {
    const { open, z } = solver.look(frequency);
    return { open: open[0], z: z[0][0] };
  });
}

/** What the load is to the carrier. */
export function loadAtRadio({ set, load }: SetCircuit): (frequency: Hertz) => Complex {
  const solver = linearSolver({ elements: loadElements(set.load, load).elements }, [{ from: OUT, to: EARTH }]);
  const seen = seenAt((frequency) => {
    const { open, z } = solver.look(frequency);
    return { open: open[0], z: z[0][0] };
  });
  return (frequency) => seen(frequency).z;
}

/** A coil's turns as the closed form takes them: flux linked, resistance and wire between its earthed end and any tap. */
export interface Turns {
  readonly turns: number;
  readonly selfCapacitance: Farads;
  readonly resistanceAt: (frequency: Hertz) => number;
  /** Flux through the turns up to the lower of two taps, per ampere in those up to the higher. */
  readonly flux: (p: number, q: number) => Henries;
  /** Share of the wire up to a tap. */
  readonly share: (p: number) => number;
}

function turnsOf(coil: SectionedCoil): Turns {
  const N = coil.turns;
  const flux = new Map<number, Henries>();
  const resistance = new Map<Hertz, number>();
  const shares = new Map<number, number>();
  return {
    turns: N,
    selfCapacitance: coil.selfCapacitance,
    resistanceAt: (f) => {
      let known = resistance.get(f);
      if (known === undefined) resistance.set(f, (known = coil.resistanceAt(f)));
      return known;
    },
    flux: (p, q) => {
      const [low, high] = p <= q ? [p, q] : [q, p];
      const key = low * 4096 + high;
      let known = flux.get(key);
      if (known === undefined) {
        known = low === N ? coil.inductance : coil.partial(0, low);
        if (high > low) known += coil.mutual([0, low], [low, high]);
        flux.set(key, known);
      }
      return known;
    },
    share: (p) => {
      let known = shares.get(p);
      if (known === undefined) shares.set(p, (known = coil.wireShare(0, p)));
      return known;
    },
  };
}

/** The coils of a set ready for the closed form. */
export interface RadioCoils {
  readonly main: Turns;
  /** Of an aerial coil: its inductance and resistance, and what it shares with the main coil up to a tap. */
  readonly second?: {
    readonly inductance: Henries;
    readonly selfCapacitance: Farads;
    readonly resistanceAt: (frequency: Hertz) => number;
    readonly mutual: (tap: number) => Henries;
  };
  /** A frame or rod has its emf in its own turns. */
  readonly isLoop: boolean;
}

/** The coils of a set, made once for all its taps. */
export function radioCoils(set: SetDescription): RadioCoils {
  const { arrangement } = set;
  if (arrangement.kind === 'frame' || arrangement.kind === 'ferrite rod')
    return { main: turnsOf(setCircuit(set).loop!), isLoop: true };
  const [coil, other] = coilsOf(set, 1, workingFrequency(set));
  const main = turnsOf(coil);
  if (arrangement.kind !== 'coupled') return { main, isLoop: false };
  const between = mutualOf(other, coil, arrangement);
  const known = new Map<number, Henries>();
  return {
    main,
    isLoop: false,
    second: {
      inductance: other.inductance,
      selfCapacitance: other.selfCapacitance,
      resistanceAt: (f) => other.resistanceAt(f),
      mutual: (tap) => {
        let mutual = known.get(tap);
        if (mutual === undefined) known.set(tap, (mutual = between([0, other.turns], [0, tap])));
        return mutual;
      },
    },
  };
}

/** What the closed form is asked of: one frequency, with where the aerial and the detector are joined. */
export interface RadioQuestion {
  readonly frequency: Hertz;
  readonly coils: RadioCoils;
  /** None for a frame or rod. */
  readonly feed?: Feed;
  /** In the aerial's lead; none: a wire. */
  readonly series?: Farads;
  readonly aerialTap: number;
  readonly detectorTap: number;
  readonly load: Complex;
  /** Across the detector. */
  readonly junction: Farads;
  readonly conductance: number;
  readonly lossTangent: number;
}

/** What of it the detector sees, per volt of emf. */
export interface Shown {
  open: number;
  resistance: number;
  /** What the tuning capacitor has to be, F: negative where no capacitor would do. */
  wanted: Farads;
  /** With the detector joined. */
  loadedQ: number;
  /** Room to work in. */
  readonly quotient: StraightQuotient;
}

/**
 * One tuned circuit in closed form: a tap of the aerial, a tap of the detector and the top of one coil, with an aerial
 * coil beside it where there is one. Z(p, q) = jωΦ(p, q) + R·share(min(p, q)); what is joined to a node is a step of
 * rank one. It is the linear network that the full reception solves, but for the pointer, which stands where the
 * susceptance at the top cancels, or at the end of the scale.
 * @param range of the tuning capacitor. @param at its capacitance, where it stands for another station. @param into where the answer goes.
 */
export function shownBy(
  {
    frequency,
    coils,
    feed,
    series,
    aerialTap,
    detectorTap: d,
    load,
    junction,
    conductance,
    lossTangent,
  }: RadioQuestion,
  range: readonly [Farads, Farads],
  into: Shown,
  at?: Farads,
): Shown {
  const w = 2 * Math.PI * frequency;
  const { main, second, isLoop } = coils;
  const N = main.turns;
  const R = main.resistanceAt(frequency);
  const sd = main.share(d);
  let ddr = R * sd;
  let ddi = w * main.flux(d, d);
  let ttr = R;
  let tti = w * main.flux(N, N);
  let dtr = R * sd;
  let dti = w * main.flux(d, N);
  let odr = 0;
  let odi = 0;
  let otr = 0;
  let oti = 0;
  if (isLoop) {
    odr = d / N;
    otr = 1;
  } else {
    let fr = feed!.z.re;
    let fi = feed!.z.im;
    if (series !== undefined) fi -= 1 / (w * series);
    else fr += LEAD;
    // What the aerial's mesh links of each node: a tap of the coil, or an aerial coil's flux.
    let adr = 0;
    let adi = 0;
    let atr = 0;
    let ati = 0;
    let er = feed!.open.re;
    let ei = feed!.open.im;
    if (second) {
      // Its own capacitance lies across it, and so across what feeds it.
      const b = w * second.selfCapacitance;
      const [br, bi] = [1 - b * fi, b * fr];
      const b2 = br * br + bi * bi;
      [fr, fi] = [(fr * br + fi * bi) / b2, (fi * br - fr * bi) / b2];
      [er, ei] = [(er * br + ei * bi) / b2, (ei * br - er * bi) / b2];
      fr += second.resistanceAt(frequency);
      fi += w * second.inductance;
      adi = w * second.mutual(d);
      ati = w * second.mutual(N);
    } else {
      const a = aerialTap;
      fr += R * main.share(a);
      fi += w * main.flux(a, a);
      adr = R * main.share(Math.min(a, d));
      adi = w * main.flux(a, d);
      atr = R * main.share(a);
      ati = w * main.flux(a, N);
    }
    const size = fr * fr + fi * fi;
    const gr = fr / size;
    const gi = -fi / size;
    const dgr = adr * gr - adi * gi;
    const dgi = adr * gi + adi * gr;
    const tgr = atr * gr - ati * gi;
    const tgi = atr * gi + ati * gr;
    ddr -= dgr * adr - dgi * adi;
    ddi -= dgr * adi + dgi * adr;
    dtr -= dgr * atr - dgi * ati;
    dti -= dgr * ati + dgi * atr;
    ttr -= tgr * atr - tgi * ati;
    tti -= tgr * ati + tgi * atr;
    odr = dgr * er - dgi * ei;
    odi = dgr * ei + dgi * er;
    otr = tgr * er - tgi * ei;
    oti = tgr * ei + tgi * er;
  }
  const nodes = { ddr, ddi, ttr, tti, dtr, dti, odr, odi, otr, oti };
  return tunedTo(w, nodes, { load, junction, conductance, lossTangent, self: main.selfCapacitance }, range, into, at);
}

/** Impedances of the detector's tap and of the top, between them, and the open voltages of both, re and im. */
interface TwoNodes {
  readonly ddr: number;
  readonly ddi: number;
  readonly ttr: number;
  readonly tti: number;
  readonly dtr: number;
  readonly dti: number;
  readonly odr: number;
  readonly odi: number;
  readonly otr: number;
  readonly oti: number;
}

const within = ([least, most]: readonly [Farads, Farads], C: Farads): Farads => Math.min(most, Math.max(least, C));

/** How far about where the susceptances cancel the top is looked for, as the full reception does. */
const STRETCH = 0.1;
const WIDEST = 0.95;

/** Of a wire, as the arrangements have it, Ω. */
const LEAD = 0.01;

function tunedTo(
  w: number,
  { ddr, ddi, ttr, tti, dtr, dti, odr, odi, otr, oti }: TwoNodes,
  by: Pick<RadioQuestion, 'load' | 'junction' | 'conductance' | 'lossTangent'> & { readonly self: Farads },
  range: readonly [Farads, Farads],
  into: Shown,
  at: Farads | undefined,
): Shown {
  const { load, junction, conductance: g, lossTangent, self } = by;
  const pr = ddr + load.re;
  const pi = ddi + load.im;
  // The top with the detector joined: Z − Z_td²/(Z_port + 1/Y).
  const b = w * junction;
  const y2 = g * g + b * b;
  const lr = y2 > 0 ? pr + g / y2 : 1e18;
  const li = y2 > 0 ? pi - b / y2 : 0;
  const l2 = lr * lr + li * li;
  const sr = dtr * dtr - dti * dti;
  const si = 2 * dtr * dti;
  const topR = ttr - (sr * lr + si * li) / l2;
  const topI = tti - (si * lr - sr * li) / l2;
  const top2 = topR * topR + topI * topI;
  const wanted = topI / top2 / w - self;
  const broad = ((2 * topR) / topI) ** 2;
  const stretch = broad > STRETCH ? Math.min(broad, WIDEST) : STRETCH;
  const low = within(range, wanted * (1 - stretch));
  const high = within(range, wanted * (1 + stretch));
  const { quotient } = into;
  // What the detector is left of the open voltage, as a quotient in the tuning's admittance.
  quotient[0] = odr;
  quotient[1] = odi;
  quotient[2] = odr * ttr - odi * tti - (dtr * otr - dti * oti);
  quotient[3] = odr * tti + odi * ttr - (dtr * oti + dti * otr);
  quotient[4] = 1 + g * pr - b * pi;
  quotient[5] = g * pi + b * pr;
  const er = pr * ttr - pi * tti - sr;
  const ei = pr * tti + pi * ttr - si;
  quotient[6] = ttr + g * er - b * ei;
  quotient[7] = tti + g * ei + b * er;
  const loss = w * lossTangent;
  const top =
    low === high
      ? low
      : greatest(quotient, { w, low: low + self, high: high + self, lossLow: loss * low, lossHigh: loss * high }) -
        self;
  const C = at ?? top;
  const yr = w * C * lossTangent;
  const yi = w * (C + self);
  const tuning2 = yr * yr + yi * yi;
  const qr = tuning2 > 0 ? ttr + yr / tuning2 : 1e18;
  const qi = tuning2 > 0 ? tti - yi / tuning2 : 0;
  const q2 = qr * qr + qi * qi;
  // 1/(Z_tt + 1/Y) times Z_dt.
  const mr = (dtr * qr + dti * qi) / q2;
  const mi = (dti * qr - dtr * qi) / q2;
  const vr = odr - (mr * otr - mi * oti);
  const vi = odi - (mr * oti + mi * otr);
  const zr = pr - (mr * dtr - mi * dti);
  const zi = pi - (mr * dti + mi * dtr);
  // The junction's capacitance lies across the port.
  const jr = 1 - b * zi;
  const ji = b * zr;
  const j2 = jr * jr + ji * ji;
  into.open = Math.sqrt((vr * vr + vi * vi) / j2);
  const resistance = Math.max((zr * jr + zi * ji) / j2, 1);
  const reactance = (zi * jr - zr * ji) / j2;
  // A reactance in the source takes from what a detector that conducts is left.
  into.open *= (1 + g * resistance) / Math.hypot(1 + g * resistance, g * reactance);
  into.resistance = resistance;
  into.wanted = top > range[0] && top < range[1] ? top : wanted;
  into.loadedQ = yi / Math.max(topR / top2 + yr, 1e-15);
  return into;
}
