import { feature } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';
import { boundary } from '../numerics/roots.ts';
import { withinHalfTurn } from '../units/angle.ts';
import type { Metres } from '../units/quantities.ts';
import { greatCircle, type Position } from './geodesy.ts';

/** A packaged coastline: TopoJSON with an object `land`, such as Natural Earth's 1:50 million land. */
export type LandTopology = Topology<{ land: GeometryCollection }>;

export type LandOrSea = 'land' | 'sea';
/** A stretch of land or sea along a great circle. */
export interface CoastSection {
  readonly surface: LandOrSea;
  /** m. */
  readonly length: Metres;
}

/** Land and sea: what lies at a place, and on the way from one place to another. */
export interface Coast {
  /** What lies at a place. Lakes count as land, closed seas as the coastline has them. */
  readonly surfaceAt: (position: Position) => LandOrSea;
  /** Land and sea along the great circle, from the first place on; adds up to the distance. Kept for the next asking. */
  readonly sections: (from: Position, to: Position) => readonly CoastSection[];
}

/** Height of a band of latitude, degrees: about as fine as the coastline's own points. */
const BAND = 0.25;
const BANDS = 180 / BAND;
/** Longest step between samples of a path, m; a coast is then found to within FINE. */
const STEP: Metres = 1000;
const MOST_STEPS = 4000;
const FINE: Metres = 20;
/** Paths kept. */
const KEPT = 2000;

/**
 * Land and sea from a coastline.
 * Even-odd counting, in the plane of longitude and latitude, of the edges east of the place among those of its band of
 * latitude: about a microsecond a place. Edges are straight in that plane, which near the poles bends long ones a little.
 * @param topology parsed TopoJSON; nothing is loaded here.
 * @returns land and sea, by place and along a path
 * @throws RangeError when there is no object `land` in it.
 */
export function coastline(topology: LandTopology): Coast {
  const edgesIn = bandedEdges(topology);

  const isLand = (north: number, longitude: number): boolean => {
    // The coastline itself ends a hair short of the south pole.
    const latitude = Math.max(north, -89.99);
    const edges = edgesIn(Math.min(BANDS - 1, Math.max(0, Math.floor((latitude + 90) / BAND))));
    let inside = false;
    for (let i = 0; i < edges.length; i += 4) {
      const y1 = edges[i + 1];
      const y2 = edges[i + 3];
      if (y1 > latitude === y2 > latitude) continue;
      const x1 = edges[i];
      if (longitude < x1 + ((edges[i + 2] - x1) * (latitude - y1)) / (y2 - y1)) inside = !inside;
    }
    return inside;
  };
  const surfaceAt = ({ latitude, longitude }: Position): LandOrSea =>
    isLand(latitude, withinHalfTurn(longitude)) ? 'land' : 'sea';

  const cache = new Map<string, readonly CoastSection[]>();
  return {
    surfaceAt,
    sections(from, to) {
      const key = `${from.latitude},${from.longitude},${to.latitude},${to.longitude}`;
      let sections = cache.get(key);
      if (!sections) {
        sections = sectionsAlong(from, to, surfaceAt);
        if (cache.size >= KEPT) cache.delete(cache.keys().next().value as string);
        cache.set(key, sections);
      }
      return sections;
    },
  };
}

/**
 * Edges x1, y1, x2, y2 of every ring, in each band of latitude they touch; a band is gathered when it is first asked
 * for, since a place and its stations need a few of them and the whole world takes a tenth of a second.
 */
function bandedEdges(topology: LandTopology): (band: number) => Float64Array {
  const land = topology?.objects?.land;
  if (!land) throw new RangeError('expected a topology with an object "land"');
  const outlines: Outline[] = [];
  for (const { geometry } of feature(topology, land).features) {
    const polygons =
      geometry.type === 'MultiPolygon'
        ? geometry.coordinates
        : geometry.type === 'Polygon'
          ? [geometry.coordinates]
          : [];
    for (const polygon of polygons) {
      for (const ring of polygon) outlines.push(...unrolled(ring));
    }
  }
  const bands: (Float64Array | undefined)[] = new Array(BANDS);
  const band = (y: number) => Math.min(BANDS - 1, Math.max(0, Math.floor((y + 90) / BAND)));
  const gathered = (b: number): Float64Array => {
    const edges: number[] = [];
    for (const { points, south, north } of outlines) {
      if (band(north) < b || band(south) > b) continue;
      let x1 = points[points.length - 2];
      let y1 = points[points.length - 1];
      for (let i = 0; i < points.length; i += 2) {
        const x2 = points[i];
        const y2 = points[i + 1];
        if (y1 !== y2 && band(Math.max(y1, y2)) >= b && band(Math.min(y1, y2)) <= b) edges.push(x1, y1, x2, y2);
        x1 = x2;
        y1 = y2;
      }
    }
    return Float64Array.from(edges);
  };
  return (b) => {
    bands[b] ??= gathered(b);
    return bands[b];
  };
}

/** A closed line in the plane of longitude and latitude. */
interface Outline {
  /** x1, y1, x2, y2 … */
  readonly points: Float64Array;
  readonly south: number;
  readonly north: number;
}

/**
 * A ring with its jumps over the antimeridian taken out, once for every turn of longitude in which it shows between −180
 * and 180. A ring that goes right round is closed over the pole it encloses.
 */
function unrolled(ring: readonly (readonly number[])[]): Outline[] {
  const count = ring.length;
  const flat = new Float64Array(2 * count + 4);
  let turn = 0;
  let west = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let south = Number.POSITIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const before = ring[i === 0 ? 0 : i - 1];
    const point = ring[i];
    const step = point[0] - before[0];
    if (step > 180) turn -= 360;
    else if (step < -180) turn += 360;
    const x = point[0] + turn;
    const y = point[1];
    flat[2 * i] = x;
    flat[2 * i + 1] = y;
    west = Math.min(west, x);
    east = Math.max(east, x);
    south = Math.min(south, y);
    north = Math.max(north, y);
  }
  let length = 2 * count;
  const [first, last] = [flat[0], flat[length - 2]];
  if (Math.abs(last - first) > 180) {
    const pole = flat[1] < 0 ? -90 : 90;
    flat.set([last, pole, first, pole], length);
    length += 4;
    south = Math.min(south, pole);
    north = Math.max(north, pole);
  }
  const outline = flat.subarray(0, length);
  const copies: Outline[] = [];
  for (let k = Math.ceil((-180 - east) / 360); west + 360 * k <= 180; k++) {
    const points = k === 0 ? outline : outline.map((value, i) => (i % 2 === 0 ? value + 360 * k : value));
    copies.push({ points, south, north });
  }
  return copies;
}

function sectionsAlong(from: Position, to: Position, surfaceAt: (position: Position) => LandOrSea): CoastSection[] {
  const { distance, at } = greatCircle(from, to);
  const steps = Math.min(MOST_STEPS, Math.max(1, Math.ceil(distance / STEP)));
  const sections: CoastSection[] = [];
  let start = 0;
  let surface = surfaceAt(from);
  for (let n = 1; n <= steps; n++) {
    const end = (distance * n) / steps;
    const next = surfaceAt(at(end));
    if (next === surface) continue;
    const same = (along: number): boolean => surfaceAt(at(along)) === surface;
    const [, high] = boundary(same, (distance * (n - 1)) / steps, end, FINE);
    sections.push({ surface, length: high - start });
    start = high;
    surface = next;
  }
  if (distance > start || sections.length === 0) sections.push({ surface, length: distance - start });
  return sections;
}
