import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import { slopeResistance } from '../../../engine/parts/detector/detector.ts';
import { detectorByKind } from '../../../engine/parts/detector/library.ts';
import { spotsWords, spotsWorth } from '../../../engine/reception/detection/spots.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import { formatQuantity, inSeries } from '../../../engine/units/format.ts';
import type { Step } from './step.ts';
import { ohms, printable } from './words.ts';

type CrystalDescription = Extract<DetectorDescription, { kind: 'galena' | 'mineral' }>;

export const isCrystal = (detector: DetectorDescription): detector is CrystalDescription =>
  detector.kind === 'galena' || detector.kind === 'mineral';

/** What is set by hand on a crystal. */
export const contactOf = (detector: CrystalDescription): string =>
  detector.kind === 'mineral' && detector.mineral === 'zincite-bornite' ? 'pair of crystals' : 'whisker';

/** What an ordinary meter's diode range shows forward, some 1 mA through it. Common practice, no source. */
const FORWARD: Partial<Record<DetectorDescription['kind'], string>> = {
  germanium: '0.2 to 0.4 V',
  silicon: '0.5 to 0.7 V',
  schottky: '0.1 to 0.4 V',
};

/** Trying the detector by itself, before anything is joined to it. @param tags its names on the board. */
export function detectorSteps(set: SetDescription, reception: Reception, tags: readonly string[]): Step[] {
  const { detector } = set;
  const each = tags.length > 1 ? `${inSeries(tags)}, one after the other` : (tags[0] ?? 'the detector');
  if (isCrystal(detector)) return [crystalStep(set, detector, reception, each)];
  if (detector.kind === 'valve')
    return detector.heaterVoltage > 0
      ? [
          {
            act: `Heater only: ${formatQuantity(detector.heaterVoltage, 'voltage')} from an isolated, fused supply. Wait half a minute.`,
            expect: `A dull red glow; the glass warm; ${detector.heaterVoltage < detector.ratedHeaterVoltage * 0.97 ? 'less than its rating on purpose: dimmer than usual' : 'its rated brightness'}.`,
            suspect: 'Dark: heater pins, socket, supply. Bright: too many volts, switch off.',
          },
        ]
      : [];
  return [
    {
      act: `Take one wire off ${each}. Meter on its diode range across it; then the other way round.`,
      expect: `${FORWARD[detector.kind] ?? 'Some tenths of a volt, or less,'} one way, nothing the other. Put the wire back.`,
      suspect: `Both ways alike: a dead diode${detector.kind === 'germanium' ? '; heat from soldering kills germanium (hold its lead with pliers)' : ''}.`,
    },
  ];
}

function crystalStep(set: SetDescription, detector: CrystalDescription, reception: Reception, each: string): Step {
  const { kind } = detector;
  const contact = contactOf(detector);
  const setting =
    contact === 'whisker'
      ? kind === 'mineral' && detector.mineral === 'carborundum'
        ? 'Set the whisker firmly on the crystal: this one bears it.'
        : 'Set the whisker lightly on the crystal: its own weight and a little.'
      : 'Touch the two crystals together, lightly.';
  const figure = reception.parts.detector.zeroBiasResistance;
  const figures =
    kind === 'galena'
      ? ` ${spotFigures(detector, figure)}${spotsHere(set, reception)}`
      : ` To very small voltages it is about ${ohms(figure)}; a meter drives more and shows less.`;
  return {
    act: `Take one wire off ${each}. ${setting} Meter on ohms across it: try spots until the two directions differ.`,
    expect: `Much one way, little the other. Keep that spot and put the wire back.${figures}`,
    suspect: `The same both ways: pressed too hard, or a dead spot. Wipe the crystal with spirit, never with fingers${contact === 'whisker' ? '; bend the whisker’s tip fresh' : ''}.`,
  };
}

/** Which spot the set is reckoned with, and what it is to very small voltages, beside luckier and unluckier ones. */
function spotFigures(detector: Extract<DetectorDescription, { kind: 'galena' }>, ownFigure: number): string {
  const own = detector.saturationCurrent !== undefined || detector.ideality !== undefined;
  if (own) return `The sheets reckon with your own figures for it: about ${ohms(ownFigure)} to very small voltages.`;
  const others = (['poor', 'fair', 'good'] as const)
    .filter((spot) => spot !== detector.spot)
    .map((spot) => `a ${spot} one ${ohms(slopeResistance(detectorByKind(`galena-${spot}`)))}`);
  return `The sheets reckon with a ${detector.spot} spot: about ${ohms(ownFigure)} to very small voltages (${inSeries(others)}); a meter drives more and shows less.`;
}

/** What a good spot of the crystal is worth on the station heard best. */
function spotsHere(set: SetDescription, reception: Reception): string {
  const best = reception.stations[reception.best[0] ?? -1];
  return best ? ` ${spotsWords(spotsWorth(set, best.index), printable(best.name))}` : '';
}
