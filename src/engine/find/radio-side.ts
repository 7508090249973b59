import { type CoilPart, coilsOf, mutualOf } from '../built/coil-parts.ts';
import { loadElements } from '../built/load-elements.ts';
import { type SetCircuit, setCircuit } from '../built/set-circuit.ts';
import { workingFrequency } from '../built/set-parts.ts';
import { AERIAL, OUT } from '../kinds/arrangements/assembly.ts';
import type { SectionedCoil } from '../kinds/arrangements/coil-sections.ts';
import { EARTH, type Element } from '../network/elements.ts';
import type { Complex } from '../numerics/complex.ts';
import { fromMap, lazily } from '../numerics/lazily.ts';
import type { SetDescription } from '../set/description.ts';
import { linearSolver } from '../solvers/linear/solve.ts';
import { greatest, type StraightQuotient } from '../solvers/linear/straight-quotient.ts';
import type { Farads, Henries, Hertz } from '../units/quantities.ts';

/** Aerial over earth as its terminals show it, per volt of emf. */
export interface Feed {
  readonly open: Complex;
  readonly z: Complex;
}

/** Elements between a node and earth, as the rest of a set sees them at any frequency; each frequency is solved once. */
function seenAt(elements: readonly Element[], from: string): (frequency: Hertz) => Feed {
  const solver = linearSolver({ elements }, [{ from, to: EARTH }]);
  return lazily((frequency) => {
    const { open, z } = solver.look(frequency);
    return { open: open[0], z: z[0][0] };
  });
}

/** What a set's aerial and earth are to the rest of it. */
export const aerialFeed = ({ aerial }: SetCircuit): ((frequency: Hertz) => Feed) => seenAt(aerial!.elements, AERIAL);

/** What the load is to the carrier. */
export function loadAtRadio({ set, load }: SetCircuit): (frequency: Hertz) => Complex {
  const seen = seenAt(loadElements(set.load, load).elements, OUT);
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
  return {
    turns: N,
    selfCapacitance: coil.selfCapacitance,
    resistanceAt: lazily((f) => coil.resistanceAt(f)),
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
    share: lazily((p) => coil.wireShare(0, p)),
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

/** Coils kept with the flux of all their taps; a search is done with one before it comes to many others. */
const MOST_KEPT = 32;

/**
 * The coils of sets of one place, made once for all their taps.
 * @returns coils of a set; those of sets that have the same description of a coil are shared
 */
export function radioCoilsOf(): (set: SetDescription) => RadioCoils {
  const parts = new WeakMap<object, CoilPart>();
  const tapped = new Map<CoilPart, Turns>();
  const turnsOfPart = (part: CoilPart): Turns => fromMap(tapped, part, () => turnsOf(part), MOST_KEPT);
  return (set) => {
    const { arrangement } = set;
    if (arrangement.kind === 'frame' || arrangement.kind === 'ferrite rod')
      return { main: turnsOf(setCircuit(set).loop!), isLoop: true };
    const made = coilsOf(set, 1, workingFrequency(set), (description) => parts.get(description));
    for (const [i, part] of made.entries()) parts.set(set.coils[i], part);
    const main = turnsOfPart(made[0]);
    return arrangement.kind === 'coupled'
      ? { main, isLoop: false, second: besideMain(made[1], made[0], arrangement) }
      : { main, isLoop: false };
  };
}

/** An aerial coil, and what it shares with the main coil up to a tap. */
function besideMain(
  other: CoilPart,
  coil: CoilPart,
  placing: { readonly distance: number; readonly tilt: number; readonly coupling?: number },
): RadioCoils['second'] {
  const between = mutualOf(other, coil, placing);
  // Flux adds up along a winding, so a tap goes on from the one below it.
  let [below, linked] = [0, 0];
  const upTo = (tap: number): Henries => {
    if (tap === coil.turns) return between([0, other.turns], [0, tap]);
    if (tap < below) [below, linked] = [0, 0];
    linked += between([0, other.turns], [below, tap]);
    below = tap;
    return linked;
  };
  return {
    inductance: other.inductance,
    selfCapacitance: other.selfCapacitance,
    resistanceAt: (f) => other.resistanceAt(f),
    mutual: lazily(upTo),
  };
}

/** Where the aerial is joined at one frequency. */
export interface AerialJoint {
  readonly frequency: Hertz;
  readonly coils: RadioCoils;
  /** None for a frame or rod. */
  readonly feed?: Feed;
  /** In the aerial's lead; none: a wire. */
  readonly series?: Farads;
  readonly aerialTap: number;
}

/**
 * The top of a tuned circuit with its aerial joined, at one frequency: impedance and open voltage per volt of emf, and
 * what is needed to see the same from any tap. Numbers are re and im. Made once and filled again.
 */
export interface Mesh {
  frequency: Hertz;
  /** Of the whole coil. */
  resistance: number;
  /** The top. */
  ttr: number;
  tti: number;
  otr: number;
  oti: number;
  /** Between the aerial's mesh and the top, the mesh's admittance, and its emf. */
  atr: number;
  ati: number;
  gr: number;
  gi: number;
  er: number;
  ei: number;
}

export const emptyMesh = (): Mesh => ({
  frequency: 0,
  resistance: 0,
  ttr: 0,
  tti: 0,
  otr: 0,
  oti: 0,
  atr: 0,
  ati: 0,
  gr: 0,
  gi: 0,
  er: 0,
  ei: 0,
});

/**
 * One tuned circuit in closed form: a tap of the aerial, a tap of the detector and the top of one coil, with an aerial
 * coil beside it where there is one. Z(p, q) = jωΦ(p, q) + R·share(min(p, q)); what is joined to a node is a step of
 * rank one. It is the linear network that the full reception solves, but for the pointer, which stands where the
 * susceptance at the top cancels, or at the end of the scale.
 */
export function joinAerial({ frequency, coils, feed, series, aerialTap: a }: AerialJoint, into: Mesh): void {
  const w = 2 * Math.PI * frequency;
  const { main, second, isLoop } = coils;
  const N = main.turns;
  const R = main.resistanceAt(frequency);
  into.frequency = frequency;
  into.resistance = R;
  into.ttr = R;
  into.tti = w * main.flux(N, N);
  into.otr = 1;
  into.oti = 0;
  if (isLoop) return;
  let fr = feed!.z.re;
  let fi = feed!.z.im;
  if (series !== undefined) fi -= 1 / (w * series);
  else fr += LEAD;
  // What the aerial's mesh links of the top: through a tap of the coil, or by an aerial coil's flux.
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
    ati = w * second.mutual(N);
  } else {
    fr += R * main.share(a);
    fi += w * main.flux(a, a);
    atr = R * main.share(a);
    ati = w * main.flux(a, N);
  }
  const size = fr * fr + fi * fi;
  const gr = fr / size;
  const gi = -fi / size;
  const tgr = atr * gr - ati * gi;
  const tgi = atr * gi + ati * gr;
  into.atr = atr;
  into.ati = ati;
  into.gr = gr;
  into.gi = gi;
  into.er = er;
  into.ei = ei;
  into.ttr -= tgr * atr - tgi * ati;
  into.tti -= tgr * ati + tgi * atr;
  into.otr = tgr * er - tgi * ei;
  into.oti = tgr * ei + tgi * er;
}

/** Impedances of the detector's tap and of the top, between them, and the open voltages of both, re and im. */
export interface TwoNodes {
  frequency: Hertz;
  ddr: number;
  ddi: number;
  ttr: number;
  tti: number;
  dtr: number;
  dti: number;
  odr: number;
  odi: number;
  otr: number;
  oti: number;
}

export const emptyNodes = (): TwoNodes => ({
  frequency: 0,
  ddr: 0,
  ddi: 0,
  ttr: 0,
  tti: 0,
  dtr: 0,
  dti: 0,
  odr: 0,
  odi: 0,
  otr: 0,
  oti: 0,
});

/** A tap of the detector beside the top of a tuned circuit whose aerial is joined. */
export function joinTap(
  { coils: { main, second, isLoop }, aerialTap: a }: Pick<AerialJoint, 'coils' | 'aerialTap'>,
  mesh: Mesh,
  d: number,
  into: TwoNodes,
): void {
  const N = main.turns;
  const w = 2 * Math.PI * mesh.frequency;
  const { resistance: R, gr, gi, er, ei, atr, ati } = mesh;
  const share = R * main.share(d);
  into.frequency = mesh.frequency;
  into.ttr = mesh.ttr;
  into.tti = mesh.tti;
  into.otr = mesh.otr;
  into.oti = mesh.oti;
  into.ddr = share;
  into.ddi = w * main.flux(d, d);
  into.dtr = share;
  into.dti = w * main.flux(d, N);
  into.odr = d / N;
  into.odi = 0;
  if (isLoop) return;
  const adr = second ? 0 : R * main.share(Math.min(a, d));
  const adi = w * (second ? second.mutual(d) : main.flux(a, d));
  const dgr = adr * gr - adi * gi;
  const dgi = adr * gi + adi * gr;
  into.ddr -= dgr * adr - dgi * adi;
  into.ddi -= dgr * adi + dgi * adr;
  into.dtr -= dgr * atr - dgi * ati;
  into.dti -= dgr * ati + dgi * atr;
  into.odr = dgr * er - dgi * ei;
  into.odi = dgr * ei + dgi * er;
}

/** Load and detector as the carrier sees them at the detector's tap. */
export interface PortOf {
  readonly load: Complex;
  /** Across the detector. */
  readonly junction: Farads;
  readonly conductance: number;
}

/** What tunes. */
export interface Tuner {
  readonly range: readonly [Farads, Farads];
  readonly lossTangent: number;
}

/** What of a tuned circuit the detector sees, per volt of emf. */
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

const within = ([least, most]: readonly [Farads, Farads], C: Farads): Farads => Math.min(most, Math.max(least, C));

/** How far about where the susceptances cancel the top is looked for, as the full reception does. */
const STRETCH = 0.1;
const WIDEST = 0.95;

/** Of a wire, as the arrangements have it, Ω. */
const LEAD = 0.01;

/**
 * What the detector is shown with the tuning where its voltage is greatest.
 * @param self capacitance of the coil
 * @param into where the answer goes
 * @param at capacitance of the tuning, where it stands for another station
 */
export function tunedTo(
  { frequency, ddr, ddi, ttr, tti, dtr, dti, odr, odi, otr, oti }: TwoNodes,
  { load, junction, conductance: g }: PortOf,
  { range, lossTangent }: Tuner,
  self: Farads,
  into: Shown,
  at?: Farads,
): Shown {
  const w = 2 * Math.PI * frequency;
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
