import { feature } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';
import type { Metres } from '../units/quantities.ts';
import { greatCircle, type Position } from './geodesy.ts';

/** A packaged coastline: TopoJSON with an object `land`, such as Natural Earth's 1:50 million land. */
export type LandTopology = Topology<{ land: GeometryCollection }>;

export type Surface = 'land' | 'sea';
/** A stretch of land or sea along a great circle. */
export interface CoastSection {
  readonly surface: Surface;
  /** m. */
  readonly length: Metres;
}

export interface Coast {
  /** What lies at a place. Lakes count as land, closed seas as the coastline has them. */
  readonly surfaceAt: (position: Position) => Surface;
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
 * @throws RangeError when there is no object `land` in it.
 */
export function coastline(topology: LandTopology): Coast {
  const bands = bandedEdges(topology);

  const isLand = (north: number, longitude: number): boolean => {
    // The coastline itself ends a hair short of the south pole.
    const latitude = Math.max(north, -89.99);
    const edges = bands[Math.min(BANDS - 1, Math.max(0, Math.floor((latitude + 90) / BAND)))];
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
  const surfaceAt = ({ latitude, longitude }: Position): Surface =>
    isLand(latitude, ((((longitude + 180) % 360) + 360) % 360) - 180) ? 'land' : 'sea';

  const kept = new Map<string, readonly CoastSection[]>();
  return {
    surfaceAt,
    sections(from, to) {
      const key = `${from.latitude},${from.longitude},${to.latitude},${to.longitude}`;
      let sections = kept.get(key);
      if (!sections) {
        sections = sectionsAlong(from, to, surfaceAt);
        if (kept.size >= KEPT) kept.delete(kept.keys().next().value as string);
        kept.set(key, sections);
      }
      return sections;
    },
  };
}

/** Edges x1, y1, x2, y2 of every ring, in each band of latitude they touch. */
function bandedEdges(topology: LandTopology): Float64Array[] {
  const land = topology?.objects?.land;
  if (!land) throw new RangeError('expected a topology with an object "land"');
  const bands: number[][] = Array.from({ length: BANDS }, () => []);
  const band = (y: number) => Math.min(BANDS - 1, Math.max(0, Math.floor((y + 90) / BAND)));
  const addEdges = (outline: readonly Point[]) => {
    for (let i = 0; i < outline.length; i++) {
      const [x1, y1] = outline[i];
      const [x2, y2] = outline[(i + 1) % outline.length];
      if (y1 === y2) continue;
      const last = band(Math.max(y1, y2));
      for (let b = band(Math.min(y1, y2)); b <= last; b++) bands[b].push(x1, y1, x2, y2);
    }
  };
  for (const { geometry } of feature(topology, land).features) {
    const polygons =
      geometry.type === 'MultiPolygon'
        ? geometry.coordinates
        : geometry.type === 'Polygon'
          ? [geometry.coordinates]
          : [];
    for (const polygon of polygons) {
      for (const ring of polygon) for (const outline of unrolled(ring)) addEdges(outline);
    }
  }
  return bands.map((edges) => Float64Array.from(edges));
}

type Point = readonly [x: number, y: number];

/**
 * A ring with its jumps over the antimeridian taken out, once for every turn of longitude in which it shows between −180
 * and 180. A ring that goes right round is closed over the pole it encloses.
 */
function unrolled(ring: readonly (readonly number[])[]): Point[][] {
  const outline: Point[] = [];
  let turn = 0;
  for (const [i, [x, y]] of ring.entries()) {
    const step = i === 0 ? 0 : x - ring[i - 1][0];
    if (step > 180) turn -= 360;
    else if (step < -180) turn += 360;
    outline.push([x + turn, y]);
  }
  const first = outline[0];
  const last = outline[outline.length - 1];
  if (Math.abs(last[0] - first[0]) > 180) {
    const pole = first[1] < 0 ? -90 : 90;
    outline.push([last[0], pole], [first[0], pole]);
  }
  const west = Math.min(...outline.map(([x]) => x));
  const east = Math.max(...outline.map(([x]) => x));
  const copies: Point[][] = [];
  for (let k = Math.ceil((-180 - east) / 360); west + 360 * k <= 180; k++)
    copies.push(k === 0 ? outline : outline.map(([x, y]) => [x + 360 * k, y]));
  return copies;
}

function sectionsAlong(from: Position, to: Position, surfaceAt: (position: Position) => Surface): CoastSection[] {
  const { distance, at } = greatCircle(from, to);
  const steps = Math.min(MOST_STEPS, Math.max(1, Math.ceil(distance / STEP)));
  const sections: CoastSection[] = [];
  let begun = 0;
  let here = surfaceAt(from);
  for (let n = 1; n <= steps; n++) {
    const end = (distance * n) / steps;
    const next = surfaceAt(at(end));
    if (next === here) continue;
    let low = (distance * (n - 1)) / steps;
    let high = end;
    while (high - low > FINE) {
      const middle = (low + high) / 2;
      if (surfaceAt(at(middle)) === here) low = middle;
      else high = middle;
    }
    sections.push({ surface: here, length: high - begun });
    begun = high;
    here = next;
  }
  if (distance > begun || sections.length === 0) sections.push({ surface: here, length: distance - begun });
  return sections;
}
