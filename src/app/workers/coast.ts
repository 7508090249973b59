import land50 from 'world-atlas/land-50m.json?url';
import land110 from 'world-atlas/land-110m.json?url';
import { type Coast, coastline, type LandTopology, type PlaceDescription } from '../../engine/index.ts';
import { widgetWords } from '../../outputs/words/index.ts';

const ADDRESSES = { fine: land50, coarse: land110 } as const;
export type LandDetail = keyof typeof ADDRESSES;
const topologies = new Map<LandDetail, Promise<LandTopology>>();

/** The packaged coastline, fetched once in a worker and only when wanted; a failed fetch is tried again next time. */
export function loadLand(detail: LandDetail): Promise<LandTopology> {
  let topology = topologies.get(detail);
  if (!topology) {
    // Its address changes with what is in it, so one worker's copy serves every other without asking whether it is old.
    topology = fetch(ADDRESSES[detail], { cache: 'force-cache' }).then((response) => {
      if (!response.ok) throw new Error(widgetWords.coastNotLoaded(response.status));
      return unpack(response);
    });
    topology.catch(() => topologies.delete(detail));
    topologies.set(detail, topology);
  }
  return topology;
}

/** The page of one file carries it packed: the address of a worker that has it within must not grow too long. */
async function unpack(response: Response): Promise<LandTopology> {
  const bytes = new Uint8Array(await response.arrayBuffer());
  const isPacked = bytes[0] === 0x1f && bytes[1] === 0x8b;
  const stream = new Blob([bytes]).stream();
  return new Response(isPacked ? stream.pipeThrough(new DecompressionStream('gzip')) : stream).json();
}

let kept: Coast | undefined;

/**
 * Land and sea for a place: only where it can matter. Without a network and
 * before it was kept for offline use, undefined: all is then the place's own ground.
 */
export async function coastFor({ position, stations }: PlaceDescription): Promise<Coast | undefined> {
  const matters = position && stations.some((s) => s.position ?? (s.bearing !== undefined && s.distance !== undefined));
  if (!matters) return undefined;
  try {
    kept ??= coastline(await loadLand('fine'));
  } catch (error) {
    console.warn(error);
  }
  return kept;
}
