import type { LoadDescription } from '../../kinds/loads/load-schema.ts';
import type { Decibels, Degrees, Hertz, Metres, Ohms, Ratio, Volts, Watts } from '../../units/quantities.ts';
import type { DetectionLaw } from '../detection/detection-law.ts';
import type { Programme } from '../hearing/programme.ts';
import type { Hearing } from '../hearing/types.ts';

/** How a station's field comes to the site. */
export interface FieldFacts {
  readonly how: 'as given' | 'ground wave' | 'sky wave' | 'both' | 'nothing' | 'off the air';
  readonly distance?: Metres;
  /** Of that, over sea. */
  readonly sea: Metres;
  /** Of the sky wave at the transmitter. */
  readonly departureAngle?: Degrees;
}

/** A steady tone of 1 kHz as deep as the programme, and how far the mean level of the programme is below it. */
export interface ToneFacts {
  readonly programme: Programme;
  readonly depth: Ratio;
  readonly level: Decibels;
  readonly below: Decibels;
  /** Of `below`, what is due to the crest factor of the programme; the rest is due to the frequency response. */
  readonly crest: Decibels;
}

/** What happens at each stage. */
export type StageFacts =
  | ({ readonly stage: 'field' } & FieldFacts)
  | {
      readonly stage: 'aerial';
      readonly effectiveHeight: Metres;
      readonly emf: Volts;
      readonly availablePower: Watts;
    }
  | {
      readonly stage: 'tuned circuit';
      /** Voltage over the emf. */
      readonly gain: Ratio;
      readonly loadedQ: number;
      readonly bandwidth: Hertz;
    }
  | {
      readonly stage: 'detector';
      readonly inputPower: Watts;
      readonly inputResistance: Ohms;
      readonly law: DetectionLaw;
    }
  | {
      readonly stage: 'audio';
      readonly directVoltage: Volts;
      readonly depth: Ratio;
      readonly distortion: Ratio;
    }
  | {
      readonly stage: 'phones';
      readonly load: LoadDescription;
      /** At 1 kHz. */
      readonly impedance: Ohms;
      readonly sensitivity: { readonly level: Decibels; readonly per: 'mW' | 'V' | '10 mV' };
      readonly listening: 'phones' | 'loudspeaker';
    }
  | {
      readonly stage: 'ear';
      /** Undefined out of range. */
      readonly hearing?: Hearing;
      readonly tone?: ToneFacts;
    };
