import type { Disturbance, Reception, Stage, StationReception } from '../../engine/reception/path/types.ts';
import { hasRanges } from '../../engine/uncertainty/ranged-reception.ts';
import {
  budgetSentence,
  cautionTexts,
  chanceSentence,
  coverageSentences,
  detectorFactSentences,
  detectorName,
  interferenceSentence,
  interferenceWords,
  outOfRangeWords,
  receptionSummary,
  stageLevel,
  stageSentence,
  stageTitle,
  stationSentence,
} from './en/index.ts';

const writtenStage = (stage: Stage) => ({
  ...stage,
  title: stageTitle(stage),
  text: stageLevel(stage),
  sentence: stageSentence(stage),
});

const writtenDisturbance = (disturbance: Disturbance) => ({
  ...disturbance,
  word: interferenceWords[disturbance.effect],
  sentence: interferenceSentence(disturbance),
});

const writtenStation = (station: StationReception) => ({
  ...station,
  path: station.path.map(writtenStage),
  outOfReach: station.outOfRange && outOfRangeWords(station.outOfRange),
  sentence: stationSentence(station),
  ...(hasRanges(station) && {
    chanceSentence: chanceSentence(station),
    budget: station.budget.map((item) => ({ ...item, sentence: budgetSentence(item) })),
  }),
  disturbance: station.disturbance && writtenDisturbance(station.disturbance),
  disturbances: station.disturbances.map(writtenDisturbance),
});

const writtenDetector = ({ id, ...rest }: Reception['parts']['detector']) => ({
  label: detectorName(id),
  ...rest,
  facts: detectorFactSentences(rest.facts),
});

/** The dial of a reception for other programs, with the sentences of what it covers. */
export const writtenDial = ({ dial, stations }: Reception) => ({
  ...dial,
  sentences: coverageSentences(dial, stations),
});

/** A reception for other programs: its facts, and the sentences that people read. */
export const writtenReception = (reception: Reception) => ({
  ...reception,
  parts: {
    ...reception.parts,
    detector: writtenDetector(reception.parts.detector),
  },
  stations: reception.stations.map(writtenStation),
  dial: writtenDial(reception),
  cautions: reception.cautions.map((caution) => ({ ...caution, text: cautionTexts[caution.code] })),
  summary: receptionSummary(reception),
});
