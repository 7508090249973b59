import { describe, expect, test } from 'vitest';
import { exampleSet } from '../../../test/support/example-set.ts';
import { builtSet } from '../built/built-set.ts';
import { lazily } from '../numerics/lazily.ts';
import { HEARD_AS } from './checks.ts';
import { diagnose } from './diagnose.ts';
import type { FaultCode } from './fault.ts';
import { type FaultModel, faultModel } from './fault-model.ts';
import { answersTo, OBSERVED_FORMAT, readObserved, writtenCheck } from './observed.ts';

type Observed = { readonly check: string; readonly of?: string; readonly answer: string };

const modelOf = lazily((name: string) => faultModel(builtSet(exampleSet(name)), { cases: 8 }));

/** dB over the threshold, halfway between the words of loudness. */
const MIDDLES = [-10, 5, 16, 30, 45, 60];

/** Every station, so many words fainter than it should be. */
const fainter =
  (by: number) =>
  ({ bench, built, sound }: FaultModel): readonly Observed[] =>
    bench.stations.map((station, i) => {
      const distances = MIDDLES.map((middle) => Math.abs(middle - sound.margins[i]));
      const usual = distances.indexOf(Math.min(...distances));
      const answer = HEARD_AS[Math.max(0, usual - by)];
      return { ...writtenCheck({ kind: 'loudness', station }, built), answer };
    });
const silent = fainter(HEARD_AS.length);
const asUsual = fainter(0);
/** How the loudest station tunes. */
const tunes =
  (answer: string) =>
  ({ bench, built, sound }: FaultModel): readonly Observed[] => {
    const station = bench.stations[sound.margins.indexOf(Math.max(...sound.margins))];
    return [{ ...writtenCheck({ kind: 'width', station }, built), answer }];
  };
const ohms = (of: string, answer: string) => (): readonly Observed[] => [{ check: 'ohms', of, answer }];
const sign =
  (of: string, answer = 'yes') =>
  (): readonly Observed[] => [{ check: 'sign', of, answer }];

// As builders tell them, from common practice: what is heard first, then what little was tried or measured.
describe('faults as builders tell them: the true one is among the first three', () => {
  test.each<[string, string, FaultCode, readonly ((model: FaultModel) => readonly Observed[])[]]>([
    [
      'the earpiece lay on the window sill in the sun; another one plays',
      'spider-coil-earpiece',
      'crystal-dead',
      [silent, sign('louder-with-other-phones'), sign('click-from-cell', 'no')],
    ],
    [
      'the diode was soldered in with a hot iron, and all is weak since',
      'spider-coil-earpiece',
      'device-leaky',
      [
        fainter(2),
        tunes('broader'),
        ohms('detector-forward', '1.5 kΩ'),
        ohms('detector-back', '5 kΩ'),
        sign('louder-with-other-detector'),
      ],
    ],
    [
      'silent since the table was moved; the coil itself measures well',
      'spider-coil-earpiece',
      'aerial-tap-open',
      [silent, ohms('coil-to-earth', '1.2 Ω'), ohms('aerial-to-earth', 'open'), sign('hum', 'no')],
    ],
    [
      'after a week of rain the weak stations are gone and the loud one tunes broadly; it is better by the stove',
      'long-wave-foil',
      'dielectric-wet',
      [fainter(2), tunes('broader'), sign('weaker-when-wet'), sign('crackle-on-turning', 'no')],
    ],
    [
      'nothing, until the capacitor to the aerial is bridged with a wire',
      'long-wave-foil',
      'capacitor-open',
      [silent, sign('louder-with-capacitor-bridged'), sign('hum', 'no')],
    ],
    [
      'stations come and go within minutes, and sound hollow',
      'coast-by-night',
      'fading-at-night',
      [fainter(1), sign('swings-within-minutes'), sign('other-receiver-hears-it')],
    ],
    [
      'the amplifier is dumb: no hiss with the volume full up, no buzz when its input is touched',
      'coast-by-night',
      'amplifier-dead',
      [silent, sign('hiss-at-full-volume', 'no'), sign('buzz-from-input', 'no')],
    ],
    [
      'silent after the gale; ten metres of wire out of the window bring everything back',
      'coast-by-night',
      'lead-in-broken',
      [
        silent,
        sign('louder-with-other-wire'),
        sign('hiss-at-full-volume'),
        ohms('aerial-to-earth', '0.3 Ω'),
        sign('switch-at-earth', 'no'),
      ],
    ],
    [
      'stations jump and crackle as the slider is moved',
      'slider-set',
      'slider-dirty',
      [fainter(1), sign('jumps-on-sliding'), sign('hum', 'no')],
    ],
    [
      'weak and humming; a hand on the earth terminal makes it louder',
      'slider-set',
      'earth-lead-broken',
      [fainter(2), sign('hum'), sign('louder-with-hand-on-earth'), ohms('coil-to-earth', '1 Ω')],
    ],
    [
      'the valve stays dark and nothing is heard',
      'ferrite-rod-valve-diode',
      'heater-cold',
      [silent, sign('heater-glows', 'no')],
    ],
    [
      'the coils were moved on the board: all a little weaker, but sharper',
      'two-tuned-circuits',
      'coils-far',
      [
        fainter(1),
        tunes('narrower'),
        ohms('coil-to-earth', '1 Ω'),
        sign('hum', 'no'),
        sign('louder-with-other-earth', 'no'),
      ],
    ],
    [
      'everything plays as it should, with hum under it wherever the dial stands',
      'medium-wave-germanium-amplifier',
      'mains-hum',
      [asUsual, sign('hum'), sign('swings-within-minutes', 'no')],
    ],
    [
      'the low end of the dial scrapes and falls silent, the rest plays',
      'medium-wave-galena',
      'vanes-touch',
      [
        (model) => asUsual(model).map((one, i) => (i === 0 ? { ...one, answer: HEARD_AS[0] } : one)),
        sign('scrape-at-one-place'),
      ],
    ],
  ])('%s', (_, name, code, told) => {
    const model = modelOf(name);
    const observed = told.flatMap((of) => of(model));
    const read = readObserved(JSON.stringify({ format: OBSERVED_FORMAT, observed }), model.built);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { answered, impossible } = answersTo(model, read.observations);
    expect(answered).toHaveLength(observed.length);
    const { causes } = diagnose(model, answered, impossible);
    expect(causes.slice(0, 3).map(({ faults: [{ fault }] }) => fault.code)).toContain(code);
  });
});
