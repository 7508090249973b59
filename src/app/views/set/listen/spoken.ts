import type { SetDescription } from '../../../../engine/index.ts';
import evening from './programmes/evening-news.opus?url&no-inline';
import lesson from './programmes/lesson.opus?url&no-inline';
import market from './programmes/market.opus?url&no-inline';
import sea from './programmes/sea-areas.opus?url&no-inline';
import story from './programmes/story.opus?url&no-inline';
import village from './programmes/village.opus?url&no-inline';

const SPOKEN = [evening, sea, story, lesson, market, village];
/** The spoken programmes' own rate when decoded. */
const SPOKEN_RATE = 24_000;

/** Stations that speak, as far as there are programmes for them. */
const speakingStations = ({ place }: SetDescription): number[] =>
  place.stations.flatMap((s, i) => (s.programme === 'speech' ? [i] : [])).slice(0, SPOKEN.length);

/** What a station says, as samples at 24 kHz; undefined where it has no programme of its own or that is not to be had. */
export async function spokenProgramme(set: SetDescription, station: number): Promise<Float32Array | undefined> {
  const k = speakingStations(set).indexOf(station);
  if (k < 0) return undefined;
  try {
    const bytes = await (await fetch(SPOKEN[k])).arrayBuffer();
    const decoded = await new OfflineAudioContext(1, 1, SPOKEN_RATE).decodeAudioData(bytes);
    return decoded.getChannelData(0).slice();
  } catch {
    return undefined; // a made-up voice then
  }
}

/** Stations that speak get a spoken programme each, in turn, as far as they go. */
export async function spokenFor(set: SetDescription): Promise<Map<number, Float32Array>> {
  const found = await Promise.all(
    speakingStations(set).map(async (index) => {
      const samples = await spokenProgramme(set, index);
      return samples && ([index, samples] as const);
    }),
  );
  return new Map(found.filter((one) => one !== undefined));
}
