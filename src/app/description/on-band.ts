import { isRecord, standingBand, turnSwitch, valueAtPath, withValueAt } from '../../engine/index.ts';

/** Names of the bands as they stand in a description, whatever stands there; none without a band switch. */
export function bandNames(written: unknown): readonly string[] {
  const bands = valueAtPath(written, ['bands']);
  return Array.isArray(bands) && standingBand(written) !== undefined
    ? bands.map((band) => (isRecord(band) ? String(band.name ?? '') : ''))
    : [];
}

/** Name of one of the bands. @param band undefined: without a band switch, and so without a name */
export const bandNameOf = (written: unknown, band: number | undefined): string | undefined =>
  band === undefined ? undefined : bandNames(written)[band];

/** A change of a description with its switch on a band, as a change of the description as it stands. */
export const onBand =
  (band: number | undefined, make: (base: unknown) => unknown) =>
  (base: unknown): unknown => {
    const standing = standingBand(base);
    const turned = band === undefined ? base : turnSwitch(base, band);
    const changed = make(turned);
    if (changed === turned) return base;
    return standing === undefined ? changed : turnSwitch(changed, standing);
  };

/** The same change for every band. @param change of a description as it stands */
export function changeEveryBand(written: unknown, change: (standing: unknown) => unknown): unknown {
  const others = bandNames(written).flatMap((_, i) => (i === standingBand(written) ? [] : [i]));
  return others.reduce((now, band) => onBand(band, change)(now), change(written));
}

/**
 * Where a place of the description stands once its switch is turned to a band.
 * @param path such as "bands[1].arrangement.coil"
 * @param standing the band that the switch stands on
 */
export function pathOnBand(path: string, band: number | undefined, standing: number | undefined): string {
  if (band === undefined || standing === undefined || band === standing) return path;
  const own = `bands[${band}].arrangement`;
  if (path === own || path.startsWith(`${own}.`)) return path.slice(path.indexOf('arrangement'));
  return /^arrangement\b/.test(path) ? `bands[${standing}].${path}` : path;
}

/** The description without a band; the switch goes on to the next where it stood there. Of two bands the other is left, without a switch. */
export function withoutBand(written: unknown, index: number): unknown {
  const count = bandNames(written).length;
  if (index >= count) return written;
  const turned = standingBand(written) === index ? turnSwitch(written, (index + 1) % count) : written;
  const bands = valueAtPath(turned, ['bands']);
  const left = Array.isArray(bands) ? bands.filter((_, i) => i !== index) : [];
  return withValueAt(turned, ['bands'], left.length > 1 ? left : undefined);
}
