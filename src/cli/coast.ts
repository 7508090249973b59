import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Coast, coastline, type LandTopology, type PlaceDescription } from '../engine/index.ts';

let cached: Coast | undefined;

/** The packaged coastline, read once. */
function packagedCoast(): Coast {
  const file = createRequire(import.meta.url).resolve('world-atlas/land-50m.json');
  cached ??= coastline(JSON.parse(readFileSync(file, 'utf8')) as LandTopology);
  return cached;
}

/** The coastline where it can matter: the place and a station have positions; reading it takes a tenth of a second. */
export const packagedCoastFor = ({ position, stations }: PlaceDescription): Coast | undefined =>
  position && stations.some((s) => s.position ?? (s.bearing !== undefined && s.distance !== undefined))
    ? packagedCoast()
    : undefined;
