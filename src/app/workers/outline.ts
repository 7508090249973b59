import { geoAzimuthalEquidistant, geoPath } from 'd3-geo';
import type { FeatureCollection } from 'geojson';
import { feature } from 'topojson-client';
import { type LandTopology, MEAN_RADIUS, type Position } from '../../engine/index.ts';

/** A part of the map in km east and south of its centre: left, top, right, bottom. */
export type Extent = readonly [number, number, number, number];

export interface OutlineQuestion {
  readonly about: 'outline';
  readonly centre: Position;
  readonly extent: Extent;
  /** How fine: nothing smaller than about half a pixel is drawn. */
  readonly kmPerPixel: number;
}
export interface Outline extends OutlineQuestion {
  /** SVG path of the land, in km from the centre. */
  readonly d: string;
}

/** Distances and directions from the centre are true: what a frame aerial is pointed by. In km. */
export const projectionAt = ({ latitude, longitude }: Position) =>
  geoAzimuthalEquidistant()
    .rotate([-longitude, -latitude])
    .scale(MEAN_RADIUS / 1e3)
    .translate([0, 0]);

const features = new WeakMap<LandTopology, FeatureCollection>();

/** Land as one path. */
export function outlineOf(question: OutlineQuestion, topology: LandTopology): Outline {
  const { centre, extent, kmPerPixel } = question;
  let land = features.get(topology);
  if (!land) features.set(topology, (land = feature(topology, topology.objects.land)));
  const projection = projectionAt(centre)
    .clipExtent([
      [extent[0], extent[1]],
      [extent[2], extent[3]],
    ])
    .precision(kmPerPixel);
  const pen = new OutlinePen(kmPerPixel / 2);
  geoPath(projection, pen)(land);
  return { ...question, d: pen.text() };
}

/** Writes rings as SVG and leaves out what is too small to see. */
class OutlinePen {
  private readonly parts: string[] = [];
  private ring: string[] = [];
  private x = 0;
  private y = 0;
  private readonly least: number;
  private readonly decimals: number;

  constructor(least: number) {
    this.least = least;
    this.decimals = Math.max(0, Math.ceil(-Math.log10(least)));
  }
  beginPath(): void {}
  arc(): void {}
  moveTo(x: number, y: number): void {
    this.ring = [this.point(x, y)];
  }
  lineTo(x: number, y: number): void {
    if (Math.abs(x - this.x) < this.least && Math.abs(y - this.y) < this.least) return;
    this.ring.push(this.point(x, y));
  }
  closePath(): void {
    if (this.ring.length > 2) this.parts.push(`M${this.ring.join('L')}Z`);
    this.ring = [];
  }
  text(): string {
    return this.parts.join('');
  }
  private point(x: number, y: number): string {
    this.x = x;
    this.y = y;
    return `${x.toFixed(this.decimals)},${y.toFixed(this.decimals)}`;
  }
}
