import {
  type CardRecording,
  calculatedImpedance,
  impedanceSweep,
  playedSamples,
  type SetDescription,
  type ThreeStates,
  type ToneReadings,
  tonePlan,
  toneReadings,
} from '../../../../engine/index.ts';
import type { ImpedanceCurves } from '../../../../outputs/plots/index.ts';
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

export interface CardAnswers {
  readonly played: Float32Array<ArrayBuffer>;
  readonly tones: ToneReadings;
  readonly sweep: ImpedanceCurves;
}
export type CardQuestion = PlayedQuestion | TonesQuestion | SweepQuestion;

function answer(question: CardQuestion): CardAnswers[keyof CardAnswers] {
  switch (question.about) {
    case 'played':
      return playedSamples(tonePlan(), question.sampleRate, question.amplitude);
    case 'tones':
      return toneReadings(tonePlan(), question.recording, question.delay);
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
