/** English. Another language exports the same names; the type `Words` is what it must have. */

export { bandFitSentence } from './band-fit.ts';
export { cautionTexts } from './cautions.ts';
export * from './cli/index.ts';
export { crystalSpots } from './crystal-spots.ts';
export { audioLimitSentences } from './detection/audio-limits.ts';
export { comparedDetector, detectorMeritSentence } from './detection/compared.ts';
export { detectorFactSentences } from './detection/facts.ts';
export { heaterSentences } from './detection/heater.ts';
export { detectionLawWords } from './detection/law.ts';
export { touchText } from './detection/touch.ts';
export { detectorName, detectorShortNames, nameOfDetector } from './detectors.ts';
export { diagramText, nodeText, type SymbolLabel, symbolLabels, symbolNames } from './diagram.ts';
export { aerialDrawing, aerialText, earthDrawing, earthText, loopDrawing } from './drawings/aerial.ts';
export { type BenchName, benchDiagramWords } from './drawings/bench.ts';
export { capacitorDrawing } from './drawings/capacitor.ts';
export { coilDrawing } from './drawings/coil.ts';
export { drawingText } from './drawings/common.ts';
export { detectorDrawing, detectorText } from './drawings/detector.ts';
export { loadDrawing, loadText } from './drawings/load.ts';
export { boardPictureWords, capacitorPictureWords, detectorPictureWords } from './drawings/making.ts';
export { windingPictureWords } from './drawings/winding.ts';
export * from './explain/index.ts';
export {
  answerHelp,
  answersText,
  answerText,
  checkName,
  checkText,
  faultAnswer,
  faultCautionTexts,
  faultText,
  faultTouchWords,
  ohmPlaceText,
  remedyTexts,
} from './faults/index.ts';
export { errorText } from './fields/impossible.ts';
export {
  boxSchemaTexts,
  columnName,
  expectedText,
  fieldHelp,
  fieldLabel,
  givenText,
  hintText,
  kindLabels,
  kindName,
  type NameOf,
  namedOptions,
  optionName,
  type PartWithKinds,
  type ProblemText,
  problemMessage,
  problemSentence,
  problemText,
  readNote,
  rowProblem,
  schemaTexts,
  stationDoubt,
  tableTooLarge,
  touchstoneProblem,
} from './fields/index.ts';
export {
  type BoxList,
  boxItemName,
  findAnswer,
  foundChance,
  foundNames,
  foundUse,
  keepRefusalText,
  lackText,
  whyFound,
  whyLeftOut,
  whyNoArrangement,
} from './find.ts';
export {
  type GlossaryEntry,
  type GlossaryId,
  glossary,
  glossaryInOrder,
  glossaryWords,
} from './glossary.ts';
export { paragraph } from './grammar.ts';
export { listeningTexts } from './listening.ts';
export { dielectricNames } from './materials.ts';
export { benchCard, benchCardWords } from './measure/bench-cards.ts';
export { besideCalculatedWords, fitPlotWords } from './measure/fit-plot.ts';
export { readingFieldName } from './measure/reading-fields.ts';
export {
  agreementText,
  causesText,
  differenceText,
  equipmentNames,
  figureName,
  fittedText,
  measureAnswer,
  measuredName,
  measurementName,
  methodText,
  narrowingText,
  nextMeasurementText,
  propertyNames,
} from './measure/results.ts';
export { unfitText } from './measure/unfit.ts';
export { groundWaveMethods, selfCapacitanceMethods } from './methods.ts';
export * from './page/index.ts';
export { partName, partTitle, partWords, terminalWords } from './parts.ts';
export {
  axisNames,
  bandPlotWords,
  coveragePlotWords,
  detectorPlotWords,
  heaterPlotWords,
  profileWords,
  qWords,
  resonanceWords,
  setsPlotWords,
} from './plots.ts';
export {
  besideWords,
  budgetSentence,
  chanceCell,
  chanceSentence,
  coverageSentences,
  interferenceSentence,
  interferenceWords,
  moreDisturbancesSentence,
  outOfRangeWords,
  receptionHeadline,
  receptionSummary,
  stageFigure,
  stageLevel,
  stageSentence,
  stageTitle,
  stationSentence,
  uncertaintyHeading,
  verdictWords,
} from './reception/index.ts';
export { bandSwitchSheetWords } from './sheets/band-switch.ts';
export {
  type BoardWarning,
  boardSheetWords,
  boardWarning,
  setViewWords,
  type WireUse,
  wiringSheetWords,
} from './sheets/board.ts';
export { boardBuilding } from './sheets/board-building.ts';
export { bringUpSheetWords, type SheetTerm, terms } from './sheets/bring-up.ts';
export {
  type Across,
  type AssumedSpot,
  type BringUpCode,
  type BringUpFact,
  bringUpStep,
  type Contact,
  type Plates,
  type WindingResistance,
} from './sheets/bring-up-steps.ts';
export {
  bookCapacitorSteps,
  type CapacitorPart,
  capacitorChecks,
  capacitorMaterial,
  capacitorParts,
  capacitorSheetWords,
  capacitorTemplate,
  foilCapacitorSteps,
  tubeCapacitorSteps,
  vaneCapacitorSteps,
} from './sheets/capacitor.ts';
export { cautionsSheetWords } from './sheets/cautions.ts';
export { circuitSheetWords, outputNames } from './sheets/circuit.ts';
export {
  coilChecks,
  coilFigures,
  coilSheetWords,
  formerText,
  type MeteredWinding,
  measuredCoilWords,
  type OpenSide,
  type TapName,
  tallyText,
  tapLabel,
  tapNames,
  turnsText,
  windingText,
} from './sheets/coil.ts';
export { comparisonSheetWords } from './sheets/comparison.ts';
export { detectorChecks, detectorMaking, detectorSheetWords } from './sheets/detector.ts';
export { dialFace, dialMounting, dialSheetWords, type Mover, type ScaleStart } from './sheets/dial.ts';
export { faultSheetWords } from './sheets/fault-sheet.ts';
export { type Cause, faultRow, type Symptom } from './sheets/faults.ts';
export { glanceSheetWords } from './sheets/glance.ts';
export { type Depth, handoutSheetWords, type PowerSource, type Smoothing } from './sheets/handout.ts';
export { frameStepWords, frameText, type Lath, loopSheetWords, rodStepWords, rodText } from './sheets/loop.ts';
export { paper, sheetNames, sheetsView, textSheetWords } from './sheets/paper.ts';
export { forTheWork, type HomeMadeKind, type PartRow, partRows } from './sheets/parts-list.ts';
export {
  basketSteps,
  coilTemplate,
  coreSteps,
  type Insulation,
  pileSteps,
  sliderSteps,
  spiderSteps,
  spiralSteps,
  tubeSteps,
  windingSteps,
} from './sheets/winding-steps.ts';
export { enamelledInstead, frameWire, wireText, wireToCutText, wireWithNotes } from './sheets/wire.ts';
export { type SoundFileProblem, type SoundFileWarning, soundFileProblem, soundFileWarning } from './sound-files.ts';
export * from './tables/index.ts';
export { termPictureWords } from './term-pictures.ts';
export { coverageWords, MATCHED_NAMES, matchWords } from './vary/matches.ts';
export { moveWords, rewindWords } from './vary/moves.ts';
export { exchangeName, setsComparedText } from './vary/sets-compared.ts';
export { settingsWords } from './vary/settings.ts';
export { suggestionEffect, suggestionEffects, suggestionWords } from './vary/suggestions.ts';
export { trapEffectWords, trapTexts } from './vary/traps.ts';
export { twoCircuitsTexts, twoCircuitsWords } from './vary/two-circuits.ts';
export {
  wantEffects,
  wantFigure,
  wantMetWords,
  wantName,
  wantState,
  wantSuggestionWords,
  wantTexts,
} from './vary/wants.ts';
export { warningSentence, warningSentences, warningWords } from './warnings/index.ts';
export { wavePointInSentence, wavePointText } from './wave-points.ts';
export { writeUpText } from './write-up.ts';
