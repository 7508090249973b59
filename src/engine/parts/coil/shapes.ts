import { demandWithin, ImpossibleValues } from '../../facts/impossible-values.ts';
import type { Metres } from '../../units/quantities.ts';
import { closePitch, conductorDiameter, isCoveringUnknown, overallDiameter, type Wire } from '../wire/wire.ts';
import type { BankSpec, BasketSpec, MultilayerSpec, SolenoidSpec, SpiderSpec, SpiralSpec, WoundSpec } from './spec.ts';
import { layOut, MOST_TURNS, ringCount, type Weave, type Winding } from './winding.ts';

/** Radius that carries the current: the bare wire, or the whole bundle of Litz. */
const conductorRadius = (wire: Wire): Metres => conductorDiameter(wire) / 2;

/** Mean diameter of a layer wound on a former: the former and the wire with its covering. */
const meanDiameterOn = (formerDiameter: Metres, wire: Wire): Metres => formerDiameter + overallDiameter(wire);

/** Diameter of the wire where turns lie on one another; with no covering said, over some covering. */
const wovenDiameter = (wire: Wire): Metres => (isCoveringUnknown(wire) ? closePitch(wire) : overallDiameter(wire));

function firstDiameter(spec: { formerDiameter?: Metres; wire: Wire }, centre: Metres | undefined): Metres {
  if (centre !== undefined) return centre;
  if (spec.formerDiameter === undefined) throw new ImpossibleValues({ code: 'coil.no-diameter' });
  return meanDiameterOn(spec.formerDiameter, spec.wire);
}

/** Screw-shaped turns are longer than rings: √(1 + (p/πD)²). */
const climb = (pitch: Metres, diameter: Metres): number => Math.hypot(1, pitch / (Math.PI * diameter));

/** The winding of any wound coil as turns in winding order. */
export function windingOf(spec: WoundSpec): Winding {
  switch (spec.shape) {
    case 'solenoid':
      return solenoid(spec);
    case 'multilayer':
      return multilayer(spec);
    case 'bank-wound':
      return bankWound(spec);
    case 'spiral':
      return spiral(spec);
    case 'spider':
      return spider(spec);
    case 'basket':
      return basket(spec);
  }
}

function solenoid(spec: SolenoidSpec): Winding {
  const pitch = spec.pitch ?? closePitch(spec.wire);
  const diameter = firstDiameter(spec, spec.meanDiameter);
  return layOut({
    turns: spec.turns,
    radii: [diameter / 2],
    zStep: pitch,
    place: (i) => [0, i],
    full: true,
    rows: 'axial',
    pitch,
    rowPitch: Number.POSITIVE_INFINITY,
    wireRadius: conductorRadius(spec.wire),
    lengthFactor: climb(pitch, diameter),
  });
}

/** Layers wound to and fro, from the inside outward. */
function multilayer(spec: MultilayerSpec): Winding {
  const { turnsPerLayer: n, layers } = spec;
  const pitch = spec.pitch ?? closePitch(spec.wire);
  const layerPitch = spec.layerPitch ?? Math.max(pitch, closePitch(spec.wire));
  const first = firstDiameter(spec, spec.innerDiameter) / 2;
  const axial = layers === 1 || (n > 1 && pitch <= layerPitch * 1.0001);
  return layOut({
    turns: n * layers,
    radii: Array.from({ length: layers }, (_, l) => first + l * layerPitch),
    zStep: pitch,
    place: (i) => {
      const l = Math.floor(i / n);
      const c = i - l * n;
      return [l, l % 2 === 0 ? c : n - 1 - c];
    },
    full: Number.isInteger(n),
    rows: axial ? 'axial' : 'radial',
    pitch: axial ? pitch : layerPitch,
    rowPitch: layers === 1 || n === 1 ? Number.POSITIVE_INFINITY : axial ? layerPitch : pitch,
    wireRadius: conductorRadius(spec.wire),
  });
}

/** Turn k of the bottom layer, then one in the hollow behind it on each layer above: columns are half pitches. */
function bankWound(spec: BankSpec): Winding {
  const pitch = spec.pitch ?? closePitch(spec.wire);
  const first = firstDiameter(spec, spec.innerDiameter) / 2;
  // Each layer rests in the hollows of the one below: centres of touching round wires form equal-sided triangles.
  const rise = (pitch * Math.sqrt(3)) / 2;
  const places: [number, number][] = [];
  // Refused by layOut when there are too many.
  const turns = Math.min(spec.turns, MOST_TURNS);
  for (let k = 0; places.length < turns; k++) {
    for (let l = 0; l <= Math.min(k, spec.layers - 1); l++) places.push([l, 2 * k - l]);
  }
  return layOut({
    turns: spec.turns,
    radii: Array.from({ length: spec.layers }, (_, l) => first + l * rise),
    zStep: pitch / 2,
    place: (i) => places[i],
    full: false,
    rows: 'axial',
    pitch,
    rowPitch: rise,
    wireRadius: conductorRadius(spec.wire),
  });
}

function spiral(spec: SpiralSpec): Winding {
  const pitch = spec.pitch ?? closePitch(spec.wire);
  return disc(spec, spec.innerDiameter / 2, pitch);
}

function disc(
  spec: SpiralSpec | SpiderSpec,
  first: Metres,
  pitch: Metres,
  weave?: Weave,
  lengthFactor?: number,
): Winding {
  return layOut({
    turns: spec.turns,
    radii: Array.from({ length: ringCount(Math.min(spec.turns, MOST_TURNS)) }, (_, i) => first + i * pitch),
    zStep: pitch,
    place: (i) => [i, 0],
    full: true,
    rows: 'radial',
    pitch,
    rowPitch: Number.POSITIVE_INFINITY,
    wireRadius: conductorRadius(spec.wire),
    weave,
    lengthFactor,
  });
}

/** Each turn passes from face to face of the disc at the slots; in the slots the wires lie side by side. */
function spider(spec: SpiderSpec): Winding {
  const { slots = 9, over = 1, discThickness = 1.5e-3, wire } = spec;
  const overall = wovenDiameter(wire);
  const pitch = spec.pitch ?? overall;
  const first = (spec.innerDiameter + overall) / 2;
  const away = (discThickness + overall) / 2;
  const pattern = weavePattern(slots, over);
  const lengthFactor = crossingLength(first + (spec.turns * pitch) / 2, away, slots, over);
  return disc(
    spec,
    first,
    pitch,
    { outward: new Float64Array(pattern.wave.length), along: pattern.wave.map((w) => w * away), shift: pattern.shift },
    lengthFactor,
  );
}

/** Turns pile up along the pegs; where they cross between pegs they lie on one another. */
function basket(spec: BasketSpec): Winding {
  const { pegs = 13, over = 2, pegDiameter = 3e-3, wire } = spec;
  const overall = wovenDiameter(wire);
  const pitch = spec.pitch ?? overall;
  const radius = spec.pegCircle / 2;
  const away = (pegDiameter + overall) / 2;
  const pattern = weavePattern(pegs, over);
  return layOut({
    turns: spec.turns,
    radii: [radius],
    zStep: pitch,
    place: (i) => [0, i],
    full: true,
    rows: 'axial',
    pitch,
    rowPitch: Number.POSITIVE_INFINITY,
    wireRadius: conductorRadius(wire),
    weave: {
      outward: pattern.wave.map((w) => w * away),
      along: new Float64Array(pattern.wave.length),
      shift: pattern.shift,
    },
    lengthFactor: crossingLength(radius, away, pegs, over),
  });
}

/** Wire per turn over 2πr: once every `over` posts it crosses by twice `away` within half the space between two posts. */
function crossingLength(radius: Metres, away: Metres, posts: number, over: number): number {
  const level = (Math.PI * radius) / posts;
  return 1 + ((posts / over) * (Math.hypot(2 * away, level) - level)) / (2 * Math.PI * radius);
}

/**
 * Side of the vanes or pegs on which a turn lies, from −1 to 1, over one repeat of the pattern (2·over of them): level
 * while it passes them, crossing over half the space between. One turn later the pattern stands `shift` samples on, since
 * an odd number does not divide into whole repeats; that is why neighbours cross instead of lying side by side.
 */
export function weavePattern(posts: number, over: number): { wave: Float64Array; shift: number } {
  demandWithin('coil.posts', posts, { min: 3, whole: true });
  if (!(Number.isInteger(over) && over >= 1 && 2 * over < posts))
    throw new ImpossibleValues({ code: 'coil.weave', over, posts });
  const perPost = 4;
  const steps = 2 * over * perPost;
  const half = steps / 2;
  const wave = new Float64Array(steps);
  for (let q = 0; q < steps; q++) {
    const within = (q % half) + 0.5;
    const fromEdge = Math.min(within, half - within);
    // The crossing takes a quarter of a space on either side of its middle.
    wave[q] = (q < half ? 1 : -1) * Math.min(1, fromEdge / (perPost / 4));
  }
  return { wave, shift: (posts * perPost) % steps };
}
