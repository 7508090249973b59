import {
  type AudioPickup,
  type AudioSpectrum,
  audioSpectrum,
  besidePredicted,
  type CardRecording,
  calculatedImpedance,
  impedanceSweep,
  playedSamples,
  predictedAudio,
  type SetDescription,
  type SpectrumBeside,
  type ThreeStates,
  type ToneReadings,
  tonePlan,
  toneReadings,
} from '../../../../engine/index.ts';
import { readWav } from '../../../../outputs/audio/index.ts';
import type { ImpedanceCurves } from '../../../../outputs/plots/index.ts';
import { errorText } from '../../../../outputs/words/index.ts';
import { answerMessages } from '../../../workers/answer-messages.ts';

/** What is to be played. */
export interface PlayedQuestion {
  readonly about: 'played';
  readonly sampleRate: number;
  readonly amplitude: number;
}
/** What one recording says. */
export interface TonesQuestion {
  readonly about: 'tones';
  readonly recording: CardRecording;
  /** Delay of an earlier recording that this one is to be compared with. */
  readonly delay?: number;
}
/** What three recordings say together. */
export interface SweepQuestion {
  readonly about: 'sweep';
  readonly set: SetDescription;
  readonly states: ThreeStates<ToneReadings>;
  /** Ω. */
  readonly resistor: number;
  readonly resistorError: number;
}
/** What a recording of the set's audio says beside the prediction. */
export interface SpectrumQuestion {
  readonly about: 'spectrum';
  readonly set: SetDescription;
  /** In the list of the place. */
  readonly station: number;
  readonly pickup: AudioPickup;
  /** Samples at a rate; a WAV file is read here. */
  readonly recording: { readonly sampleRate: number; readonly samples: Float32Array } | Uint8Array<ArrayBuffer>;
  /** Level of a sine that fills the input, dBV or dB SPL. */
  readonly fullScale?: number;
}
export interface SpectrumAnswer {
  readonly faults: AudioSpectrum['faults'];
  /** Nothing where there is too little to compare. */
  readonly beside?: SpectrumBeside;
  /** Why nothing is predicted for this set and station. */
  readonly whyNotPredicted?: string;
}

export interface CardAnswers {
  readonly played: Float32Array<ArrayBuffer>;
  readonly tones: ToneReadings;
  readonly sweep: ImpedanceCurves;
  readonly spectrum: SpectrumAnswer;
}
export type CardQuestion = PlayedQuestion | TonesQuestion | SweepQuestion | SpectrumQuestion;

async function spectrum({ set, station, pickup, recording, fullScale }: SpectrumQuestion): Promise<SpectrumAnswer> {
  const { sampleRate, samples } = recording instanceof Uint8Array ? await ofWav(recording) : recording;
  const recorded = audioSpectrum(samples, sampleRate);
  if (recorded.bands.length === 0) return { faults: recorded.faults };
  try {
    const predicted = predictedAudio(set, station, pickup);
    return { faults: recorded.faults, beside: besidePredicted(recorded, predicted, fullScale) };
  } catch (error) {
    return { faults: recorded.faults, whyNotPredicted: errorText(error) };
  }
}

async function ofWav(bytes: Uint8Array<ArrayBuffer>) {
  const { rate, channels } = await readWav(bytes);
  return { sampleRate: rate, samples: channels[0] };
}

function answer(question: CardQuestion): CardAnswers[keyof CardAnswers] | Promise<SpectrumAnswer> {
  switch (question.about) {
    case 'played':
      return Float32Array.from(playedSamples(tonePlan(), question.sampleRate, question.amplitude));
    case 'tones':
      return toneReadings(tonePlan(), question.recording, question.delay);
    case 'spectrum':
      return spectrum(question);
    case 'sweep': {
      const { set, resistor, resistorError, states } = question;
      const { open, known, device } = states;
      const measured = impedanceSweep(
        { open: open.readings, known: known.readings, device: device.readings },
        resistor,
        resistorError,
      );
      return {
        measured,
        calculated: calculatedImpedance(
          set,
          tonePlan().tones.map(({ frequency }) => frequency),
        ),
      };
    }
  }
}

answerMessages<CardQuestion, CardAnswers[keyof CardAnswers]>(answer);
