import { formatNumber } from '../../../../../engine/units/format.ts';
import { duration, kilohertz } from '../format.ts';
import { slowMotion } from './slow-motion.ts';

export interface SwingPictureFacts {
  readonly carrier: number;
  readonly loadedQ: number;
  /** Cycles driven, and as many left alone. */
  readonly cycles: number;
  /** Cycles that one swing drawn stands for. */
  readonly cyclesPerSwing: number;
  /** Share of the final amplitude reached when the drive ends. */
  readonly reached: number;
}

const title = 'Energy moving between coil and capacitor';

function about({ carrier, loadedQ }: SwingPictureFacts): string {
  const cycles = loadedQ / Math.PI;
  return `At a loaded Q of ${formatNumber(loadedQ, 2)} the oscillation takes about ${formatNumber(cycles, 2)} cycles (${duration(cycles / carrier)}) to reach 63 % of its amplitude, and as long to lose 63 % again: like a pendulum of the same Q that is pushed in phase.`;
}

const drawn = (cycles: number): string => (cycles > 1 ? `one swing drawn for ${cycles} cycles` : 'every cycle drawn');

const moves = ({ carrier, cycles, reached, cyclesPerSwing }: SwingPictureFacts): string =>
  `Charge flows out of the capacitor, through the coil, to the other plate and back, at ${kilohertz(carrier)}. When the plates are fully charged no current flows; half way between, they are empty and the magnetic field of the coil is at its maximum. A pendulum beside it moves in phase. For ${cycles} cycles (${duration(cycles / carrier)}) both are pushed a little in each swing (${drawn(cyclesPerSwing)}) and their amplitude grows, to ${formatNumber(100 * reached, 2)} % of its final value; then the pushing stops, and for as long again the amplitude decays. A strip at the bottom shows the amplitude from cycle to cycle.`;

export const swingPictureWords = {
  title,
  about,
  description: (facts: SwingPictureFacts): string => `${title}. ${moves(facts)} ${about(facts)}`,
  speed: (times: number, cyclesPerSwing: number): string => `${slowMotion(times)}, ${drawn(cyclesPerSwing)}`,
  coil: 'coil',
  capacitor: 'capacitor',
  magnetic: 'magnetic energy, coil',
  electric: 'electric energy, capacitor',
  energy: 'energy: magnetic, electric',
  driven: 'pushed in phase',
  free: 'not pushed',
  stripDriven: 'driven',
  stripDrivenLong: 'driven: it builds up',
  stripFree: 'free',
  stripFreeLong: 'free: it decays',
  cycle: (number: number, time: number): string => `cycle ${number}, ${duration(time)}`,
} as const;
