import type { LoadDescription } from '../../../../engine/kinds/loads/load-schema.ts';
import { formatQuantity } from '../../../../engine/units/format.ts';
import { printable } from '../../printable.ts';

/** What the set works into. */
export const outputNames: Record<LoadDescription['kind'], string> = {
  phones: 'phones',
  'moving-coil phones': 'phones',
  'crystal earpiece': 'earpiece',
  amplifier: 'amplifier',
};

const V = (voltage: number): string => formatQuantity(voltage, 'voltage', 2);

/** What a station gives at a test point, V. */
interface WithStation {
  readonly station: string;
}

export const circuitSheetWords = {
  title: 'Circuit diagram',
  columns: { point: 'Point', where: 'Where', what: 'What to expect' },
  headings: {
    points: 'Test points',
    pointsOnBand: (band: string): string => `Test points on “${printable(band)}”`,
    words: 'The diagram in words',
    warnings: 'Notes',
  },
  intro:
    'For checking, and for those who cannot see the diagram: what lies between which points. “Earth” is the bottom line, “top” the top of the tuned circuit, “out” the point behind the detector.',
  places: {
    aerial: 'aerial lead',
    beforeDetector: 'before the detector',
    afterDetector: (load: LoadDescription['kind']): string => `after the detector, to the ${outputNames[load]}`,
  },
  signals: {
    aerial: 'no direct voltage',
    aerialWith: ({ station, voltage }: WithStation & { readonly voltage: number }): string =>
      `${V(voltage)} peak of signal with ${printable(station)} tuned in; no direct voltage`,
    beforeDetector: 'radio frequency',
    beforeDetectorWith: ({ station, voltage }: WithStation & { readonly voltage: number }): string =>
      `radio frequency, about ${V(voltage)} peak at the detector with ${printable(station)} tuned in; a meter connected here detunes the set`,
    afterDetector: 'direct and audio voltage',
    afterDetectorWith: ({
      station,
      direct,
      audio,
    }: WithStation & { readonly direct: number; readonly audio: number }) =>
      `direct ${V(direct)} and audio ${V(audio)} peak with ${printable(station)} tuned in`,
  },
};
