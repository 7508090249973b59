/** Every usual caution. Its sentence is in `outputs/words`; local codes and licensed practice come first. */
export type CautionCode =
  | 'aerial.power-lines'
  | 'aerial.thunder'
  | 'aerial.ladders-and-masts'
  | 'earth.mains-and-gas'
  | 'earth.buried-cables'
  | 'detector.lead-sulphide'
  | 'detector.low-melting-metal'
  | 'detector.hot-valve'
  | 'detector.heater-supply'
  | 'detector.accumulator'
  | 'load.volume'
  | 'load.mains-amplifier'
  | 'load.clicks-on-ears'
  | 'load.loud'
  | 'old-parts'
  | 'bench.wire-ends'
  | 'bench.solder'
  | 'bench.no-mains'
  | 'bench.mains-isolated'
  | 'bench.licensed-person';

/** What a caution is about: a part of the set, or the work on it. */
export type CautionSubject = 'aerial' | 'earth' | 'detector' | 'load' | 'old parts' | 'bench';

/** One danger, and what it comes from. */
export interface Caution {
  readonly about: CautionSubject;
  readonly code: CautionCode;
}

/** What an amplifier's supply adds. */
export const supplyCautions = (supply: 'battery' | 'mains'): readonly CautionCode[] =>
  supply === 'mains' ? ['load.mains-amplifier'] : [];
