import { type AdjustContext, type Adjustment, type AdjustmentsByKind, adjustmentsIn } from '../adjustment.ts';
import type { DetectorDescription } from './detector-schema.ts';

/** Another detector in its place: a point-contact germanium diode is what most people can get. */
const germanium = ({ kind, wiring }: Pick<DetectorDescription, 'kind' | 'wiring'>): Adjustment => ({
  id: 'detector.kind',
  part: 'detector',
  path: ['detector'],
  effort: 'buy',
  domain: { is: 'choice', of: [{ kind: 'germanium', make: 'point contact', wiring }] },
  now: kind,
  serves: ['loudness', 'clearance'],
});

/** From a cell, in the direction that helps conduction. Only a single detector is given one. */
const bias = ({ bias: now, wiring }: Pick<DetectorDescription, 'bias' | 'wiring'>, most: number): Adjustment[] =>
  wiring === 'single'
    ? [
        {
          id: 'detector.bias',
          part: 'detector',
          path: ['detector', 'bias'],
          effort: now === undefined ? 'rewire' : 'knob',
          domain: { is: 'real', from: 0.05, to: most, scale: 'linear', unit: 'voltage', digits: 2 },
          now,
          serves: ['loudness'],
        },
      ]
    : [];

/** What each detector has to adjust: one entry for each kind. */
const DETECTOR_ADJUSTMENTS: AdjustmentsByKind<DetectorDescription> = {
  galena: (detector) =>
    detector.spot === 'good'
      ? []
      : [
          {
            id: 'detector.spot',
            part: 'detector',
            path: ['detector', 'spot'],
            effort: 'knob',
            domain: { is: 'choice', of: ['good'] },
            now: detector.spot,
            serves: ['loudness', 'clearance'],
          },
        ],
  mineral: (detector) => [germanium(detector), ...(detector.mineral === 'carborundum' ? bias(detector, 1.5) : [])],
  germanium: { none: 'it needs no bias and has nothing to set' },
  schottky: (detector) => [germanium(detector), ...(detector.bias === undefined ? [] : bias(detector, 0.6))],
  silicon: (detector) => [germanium(detector), ...bias(detector, 0.6)],
  exponential: (detector) => [germanium(detector), ...(detector.bias === undefined ? [] : bias(detector, 0.6))],
  valve: (detector) => [germanium(detector)],
  measured: (detector) => [germanium(detector)],
};

export const detectorAdjustments = (detector: DetectorDescription, about: AdjustContext): readonly Adjustment[] =>
  adjustmentsIn(DETECTOR_ADJUSTMENTS, detector, about, ['detector']);
