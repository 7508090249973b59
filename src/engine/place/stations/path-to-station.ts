import { type Warning, warning } from '../../facts/warning.ts';
import { type Degrees, type Hertz, LIGHT_SPEED, type Metres } from '../../units/quantities.ts';
import type { Coast } from '../coast.ts';
import { destination, FARTHEST, greatCircle, type Position } from '../geodesy.ts';
import { type Ground, groundConstants } from '../ground.ts';
import type { PathSection } from '../ground-wave/mixed-path.ts';
import type { Station } from './station.ts';

/** Where somebody listens. */
export interface Site {
  readonly position?: Position;
  /** The land around and on the way. Default average. */
  readonly ground?: Ground;
}

/** The way from a transmitter to the site. */
export interface StationPath {
  /** m; no less than a tenth of a wavelength, no more than half round the earth. */
  readonly distance: Metres;
  /** At the site toward the transmitter, degrees clockwise from north. */
  readonly bearing?: Degrees;
  readonly transmitter?: Position;
  /** From the transmitter. */
  readonly sections: readonly PathSection[];
  readonly warnings: readonly Warning[];
}

/**
 * Distance, direction and land and sea on the way to a station.
 * Sections written with the station win; else the coastline when both ends are known; else one kind of ground.
 * @returns undefined for a station with no place and no distance.
 */
export function pathToStation(site: Site, station: Station, coast?: Coast): StationPath | undefined {
  const warnings: Warning[] = [];
  const circle = site.position && station.position && greatCircle(site.position, station.position);
  const written = circle?.distance ?? station.distance ?? total(station.sections);
  if (written === undefined) return undefined;
  const distance = within(written, station.frequency, warnings);
  const bearing = circle?.bearing ?? station.bearing;
  const transmitter =
    station.position ??
    (site.position && bearing !== undefined ? destination(site.position, bearing, distance) : undefined);
  return { distance, bearing, transmitter, sections: sectionsTo(), warnings };

  function sectionsTo(): PathSection[] {
    if (station.sections?.length) return scaled(station.sections, distance);
    const land = landGround(site.ground ?? 'average');
    if (!coast || !site.position || !transmitter) return [{ length: distance, ground: site.ground ?? 'average' }];
    const stretches = coast.sections(transmitter, site.position).filter(({ length }) => length > 0);
    if (stretches.length === 0) return [{ length: distance, ground: land }];
    return scaled(
      stretches.map(({ surface, length }) => ({ length, ground: surface === 'sea' ? 'sea' : land })),
      distance,
    );
  }
}

/** What the land is made of where the site's own ground was given as water. */
const landGround = (ground: Ground): Ground => (groundConstants(ground).conductivity >= 1 ? 'average' : ground);

const total = (sections?: readonly PathSection[]): Metres | undefined =>
  sections?.length ? sections.reduce((sum, { length }) => sum + length, 0) : undefined;

/** Sections made to add up to the distance. */
function scaled(sections: readonly PathSection[], distance: Metres): PathSection[] {
  const sum = total(sections) ?? distance;
  if (sections.length === 1) return [{ ...sections[0], length: distance }];
  return sections.map((section) => ({ ...section, length: (section.length * distance) / sum }));
}

function within(distance: Metres, frequency: Hertz, warnings: Warning[]): Metres {
  const wavelength = LIGHT_SPEED / frequency;
  if (!(distance <= FARTHEST)) {
    warnings.push(warning('place.distance-beyond-antipode', { distance }));
    return FARTHEST;
  }
  if (!(distance >= wavelength)) {
    warnings.push(warning(distance >= wavelength / 10 ? 'place.near-field' : 'place.beside-transmitter'));
    return Math.max(distance || 0, wavelength / 10);
  }
  return distance;
}
