/** The engine for other programs, for the page and for the command line: pure functions, SI in and out. */

// Quantities

export { fourierTransform } from './numerics/fourier.ts';
export { firstWhole } from './numerics/roots.ts';
export { capital, formatNumber, formatQuantity, inSeries } from './units/format.ts';
export { type Gauge, gaugeDiameter, nearestGauge, readGauge } from './units/gauge.ts';
export { leadingNumber, wholeNumber } from './units/number.ts';
export { type ParsedQuantity, parseQuantity, QUANTITY_KINDS, type QuantityKind, sectionsOf } from './units/parse.ts';
export {
  type Amperes,
  type Decibels,
  type Degrees,
  type Farads,
  type Henries,
  type Hertz,
  type Kelvins,
  type Kilograms,
  LIGHT_SPEED,
  type Metres,
  type OhmMetres,
  type Ohms,
  type OhmsPerMetre,
  type Radians,
  type Ratio,
  type Seconds,
  type Siemens,
  type SiemensPerMetre,
  type Volts,
  type VoltsPerMetre,
  type Watts,
} from './units/quantities.ts';
export { givenValue } from './units/refusal.ts';
export { safeJson, safeLines, safeText } from './units/safe-text.ts';
export { count, quantity } from './units/schema.ts';
export { typedQuantity, typedTurns } from './units/typed.ts';

// Warnings

export type { Caution, CautionCode } from './facts/cautions.ts';
export { ImpossibleValues } from './facts/impossible-values.ts';
export { distinctWarnings, type Warning, warning } from './facts/warning.ts';

// Descriptions

export { isSameField } from './fields/field-ids.ts';
export { LONGEST_TEXT } from './fields/fields.ts';
export {
  bare,
  type Field,
  fieldsOf,
  isRecord,
  metadataOf,
  objectFor,
  type SchemaNode,
  variantChoices,
} from './fields/introspect.ts';
export { tooDeep } from './fields/problem.ts';
export { refusalOf, refuse } from './fields/refusal.ts';
export type { Edit, Path } from './kinds/adjustment.ts';
export { COIL_KEYS, coilNamesOf, namesCoil } from './kinds/arrangements/coil-names.ts';
export { hasHeater, hasSpots } from './kinds/detectors/detector-traits.ts';
export { isLoop } from './kinds/loops.ts';
export { assumedIn, confirmed, isAssumed, placeOf, placeText, stillAssumed } from './set/assumed.ts';
export { hasRoomForSwitch } from './set/band-checks.ts';
export type { BandDescription } from './set/band-schema.ts';
export { bandNamed, standingBand, switchBand, turnSwitch } from './set/band-switch.ts';
export { description, type SetDescription, type WrittenDescription } from './set/description.ts';
export { encodingOf } from './set/encoding.ts';
export { jsonSchema } from './set/json-schema.ts';
export { isPlace, keptPath } from './set/keep.ts';
export { isSetLink, type LinkOptions, linkOf, textOfLink, withCoarsePosition } from './set/link.ts';
export { listeningTime, type TimeOfDay } from './set/listening-time.ts';
export { MOST_STATIONS, type PlaceDescription } from './set/place.ts';
export { pathAt } from './set/pointer.ts';
export {
  LARGEST_FILE,
  type Problem,
  type ReadNote,
  type ReadResult,
  readText,
  readValue,
  tooLarge,
} from './set/read.ts';
export { STARTERS } from './set/starters.ts';
export { readStationTable, type TableQuestion, type TableReading } from './set/station-table.ts';
export { untakenName } from './set/untaken-name.ts';
export { valueAtPath, withValueAt, writeText } from './set/write.ts';
export { joinStations, readStations, type WrittenStation, writeStation } from './set/written-stations.ts';
export { refusalIn, refuseWith } from './units/refusal.ts';

// Coils and wire

export { makeCoil } from './parts/coil/coil.ts';
export { couple } from './parts/coil/coupling.ts';
export { bestWire, spreadFor, turnsFor, type Unwound } from './parts/coil/design.ts';
export { FORMERS } from './parts/coil/dielectrics.ts';
export type { CoilModel } from './parts/coil/model.ts';
export { METALS } from './parts/wire/metal.ts';
export { wireResistance } from './parts/wire/skin.ts';
export { COVERINGS, closePitch, overallDiameter, wireWeight } from './parts/wire/wire.ts';

// Capacitors

export { fitBand } from './parts/capacitor/fit.ts';
export type { VariableCapacitor } from './parts/capacitor/model.ts';
export { variableCapacitor } from './parts/capacitor/variable.ts';

// Aerials and earths

export { ferriteRod } from './parts/aerial/ferrite-rod.ts';
export { frameAerial } from './parts/aerial/frame.ts';
export { measuredImpedance } from './parts/aerial/measured.ts';
export { type WireAerialShape, wireTree } from './parts/aerial/shapes.ts';
export {
  CAPACITANCE_FACTOR,
  heightRange,
  SURROUNDINGS,
  SURROUNDINGS_LOSS_FACTOR,
  type Surroundings,
  surroundingsEffect,
} from './parts/aerial/surroundings.ts';
export { readTouchstone, type TouchstoneRead } from './parts/aerial/touchstone.ts';
export { wireAerial } from './parts/aerial/wire-aerial.ts';
export { type EarthSpec, earth } from './parts/earth/earth.ts';
export { SOIL_NAMES, soilOverGround } from './parts/earth/soil.ts';

// Detectors

export { averaged } from './parts/detector/averaged.ts';
export { type Detector, slopeResistance } from './parts/detector/detector.ts';
export { exponentialDetector } from './parts/detector/exponential.ts';
export { DETECTOR_IDS, detectorByKind } from './parts/detector/library.ts';
export { steadyDetector } from './parts/detector/steady.ts';
export {
  type CrystalSurface,
  crystalSurface,
  USUAL_CRYSTAL,
  WHISKERS,
  type Whisker,
  type WhiskerPosition,
} from './parts/detector/surface.ts';
export { tunedDetector } from './parts/detector/tuned.ts';

// Loads

export { audioLoad } from './parts/load/load.ts';
export type { Load } from './parts/load/model.ts';

// Places

export { type Coast, coastline, type LandTopology } from './place/coast.ts';
export { destination, greatCircle, MEAN_RADIUS, midpoint, type Position } from './place/geodesy.ts';
export { GROUND_KINDS, type GroundConstants, type GroundKind, sameGround } from './place/ground.ts';
export { groundField } from './place/ground-wave/ground-field.ts';
export { STANDARD_RADIUS_FACTOR } from './place/ground-wave/surface.ts';
export { ENVIRONMENT_KINDS } from './place/noise/man-made.ts';
export { noise } from './place/noise/noise.ts';
export { skyWave } from './place/sky-wave/sky-wave.ts';
export { nightHours, type SunState, subsolarPoint, sunState } from './place/sun.ts';

// Stations

export { type Arrival, type ArrivalMemory, arrivalMemory } from './place/stations/arrival.ts';
export { arrivals, groundGain } from './place/stations/arrivals.ts';
export { checkStations, type StationDoubt } from './place/stations/check.ts';
export { type ColumnGuess, FIELD_UNITS, STATION_FIELDS, type StationField } from './place/stations/columns.ts';
export { stationsToTable } from './place/stations/export.ts';
export { assignColumn } from './place/stations/import.ts';
export { pathProfile } from './place/stations/profile.ts';
export type { Station } from './place/stations/station.ts';
export { TableTooLargeError } from './place/stations/table-problems.ts';

// Circuits

export { type LoopAerial, loopOf } from './built/loop-parts.ts';
export { type SetCircuit, setCircuit } from './built/set-circuit.ts';
export type { Assembly } from './kinds/arrangements/assembly.ts';
export type { Circuit, Element } from './network/elements.ts';
export { type ElementId, type ElementRole, type Owner, owned, type PartId } from './network/ids.ts';
export { coilPart, PART } from './network/part-ids.ts';
export type { Port } from './network/port.ts';
export { detectByEnvelope, LONGEST_SIGNAL } from './solvers/envelope/tone-figures.ts';
export { type LinearSolver, linearSolver, type Solution } from './solvers/linear/solve.ts';
export { loaded } from './solvers/linear/views.ts';
export type { StationWave } from './solvers/transient/sources.ts';
export { detectByTransient, MOST_CYCLES } from './solvers/transient/waveform-figures.ts';

// Reception

export {
  type CoilQPoint,
  type CurveOptions,
  type ResonanceCurve,
  type StationCurves,
  stationCurves,
} from './reception/curves.ts';
export { type AudioLimits, audioLimits } from './reception/detection/audio-limits.ts';
export {
  type CrystalSpot,
  crystalSurvey,
  type HeardThrough,
  heardAtTouch,
} from './reception/detection/crystal-survey.ts';
export { HEATER_WATCHED, type HeaterRun, heaterRuns } from './reception/detection/heater.ts';
export type { Verdict } from './reception/hearing/types.ts';
export { arrivalOptions, type FieldOptions, fieldsAtSite } from './reception/path/field.ts';
export { receive } from './reception/path/receive.ts';
export { type BandReceived, type BandsReceived, receiveBands } from './reception/path/receive-bands.ts';
export { effectiveHeight, type Receiver, receiver, receiveStation } from './reception/path/receive-station.ts';
export type {
  Dial,
  DialPlace,
  DialPoint,
  Disturbance,
  OutOfRange,
  PartFigures,
  Reception,
  Stage,
  StageId,
  StationReception,
} from './reception/path/types.ts';
export { isHeard } from './reception/verdict.ts';

// Improvements

export { type AddedBand, addBand, type BandCoil, canShareCoil } from './vary/add-band.ts';
export { BANDS, type BandName } from './vary/bands.ts';
export { compareDetectorsOn, type DetectorOnStation } from './vary/compare.ts';
export {
  type ComparedSet,
  type ComparedSets,
  compareSets,
  type Exchange,
  type ExchangedPart,
  type SetDifference,
} from './vary/compare-sets.ts';
export { comparedCurves } from './vary/compared-curves.ts';
export { type CompletionNames, completeDescription } from './vary/complete.ts';
export { type Aim, type Choice, combinations, combinationsOf, readWith, varyGrid } from './vary/grid.ts';
export { heardAfter } from './vary/heard-after.ts';
export { type Match, matching } from './vary/match.ts';
export { type FrequencyRange, type Move, moveBand, type Rewound, rewindFor, SameBandError } from './vary/move-band.ts';
export { optimise } from './vary/optimise.ts';
export type { Answer, Change, Figures, Guard, Objective, Question, Setting } from './vary/question.ts';
export { type Suggestion, suggest } from './vary/suggest.ts';
export { suggestForWants, type WantEffect, type WantSuggestion } from './vary/suggest-for-wants.ts';
export { type Trials, trialsOf } from './vary/trial.ts';
export { type TwoCircuits, twoCircuitsEdits, twoCircuitsFor } from './vary/two-circuits.ts';
export { type WantValue, wantValues } from './vary/want-values.ts';
export { wantValuesOnBands } from './vary/want-values-on-bands.ts';
export { type TrapEffect, type TrapOffer, trapEffects, trapFor } from './vary/wave-traps.ts';

// Boxes of parts

export {
  ARRANGEMENTS_FOUND,
  type BoxDescription,
  boxDescription,
  type WrittenBox,
} from './find/box-schema.ts';
export { type Lack, lacksOf, type NoArrangement, noArrangement } from './find/choices.ts';
export { type FindAnswer, type FindProgress, type FindRun, type FoundSet, findSets } from './find/find.ts';
export { type KeepRefusal, keepableParts, keepRefusal, withKept } from './find/kept-parts.ts';
export { type BoxRead, readBox, readBoxValue } from './find/read-box.ts';
export { type FindQuestion, type FindTask, findWorker, type TaskAnswer } from './find/tasks.ts';
export { type Use, usesOf } from './find/uses.ts';
export { hasTrait, type LeftOut } from './find/why-left-out.ts';

// Waves at a point

export { type NodeWaves, type NodeWavesOptions, nodeWaves } from './waves/node-waves.ts';
export { usualPlaces, type WavePlace, wavePlaces } from './waves/wave-places.ts';

// What was heard

export {
  LIGHTS,
  type Light,
  type LogAgainstPrediction,
  type LoggedLight,
  type LoggedStation,
  logAgainstPrediction,
  type PlacedEntry,
} from './log/against-prediction.ts';
export { HEARD, type HeardAs, type LogCells, type LogEntry, type LogProblem } from './log/entry.ts';
export { type CalendarEntry, type ListeningCalendar, listeningCalendar } from './log/listening-calendar.ts';
export { type ReadLog, readLog, withinLogSize } from './log/read-log.ts';
export { writeLog } from './log/write-log.ts';

// Measurements

export { fitDecay } from './measure/decay-fit.ts';
export { fitDetector } from './measure/detector-fit.ts';
export { fitDial } from './measure/dial-fit.ts';
export {
  type ExplainingSize,
  type ExplainingSizeId,
  type MeasuredFigure,
  measuredFigures,
} from './measure/explaining-sizes.ts';
export { type FitAxis, type FitPlot, fitPlotOf } from './measure/fit-plot.ts';
export type { Fitted } from './measure/fitted.ts';
export { isReadingsText, wholeFileField } from './measure/instrument-text.ts';
export { isMeasured, type MeasurableFigure, measurableFigures } from './measure/measurable.ts';
export { type Narrowing, type NextMeasurement, nextMeasurements } from './measure/measure-next.ts';
export type { Equipment, Measured, MeasuredProperty, Measurement, Yield } from './measure/measurement.ts';
export { MEASUREMENTS, type MeasurementKind } from './measure/measurements.ts';
export {
  INSTRUMENTS,
  type Instrument,
  type MeasuredPart,
  measuringCautions,
  methodCautions,
  type OfferedMeasurement,
  offeredMeasurements,
} from './measure/offered.ts';
export { type PropertyId, propertyOf } from './measure/properties.ts';
export { type Fields, fieldEntries, type ReadingField, type ScalarField } from './measure/reading-fields.ts';
export { type ReadingsProblem, type ReadingsRead, readMeasurements, readReadings } from './measure/readings.ts';
export { readingsTable } from './measure/readings-table.ts';
export { type Recording, readRecord, ringingOf } from './measure/record.ts';
export { fitResonance } from './measure/resonance-fit.ts';
export {
  type AudioSpectrum,
  audioSpectrum,
  besidePredicted,
  type SpectrumBeside,
} from './measure/sound-card/audio-spectrum.ts';
export { calculatedImpedance } from './measure/sound-card/calculated-impedance.ts';
export { impedanceSweep, type ThreeStates } from './measure/sound-card/impedance-sweep.ts';
export { type AudioPickup, predictedAudio } from './measure/sound-card/predicted-audio.ts';
export { playedSamples, tonePlan } from './measure/sound-card/tone-plan.ts';
export {
  type CardRecording,
  type ToneReading,
  type ToneReadings,
  toneReadings,
} from './measure/sound-card/tone-readings.ts';
export { type SuspectPlace, suspectPlaces } from './measure/suspect-station.ts';
export {
  type FigureResult,
  type ReadingsResult,
  resultsOf,
  type UsedValue,
  usedValues,
} from './measure/taken-results.ts';
export { UnfitReadings } from './measure/unfit.ts';
export { predictedForReadings, type WithReadings, withoutMeasuredValue, withReadings } from './measure/use-readings.ts';
export { fitWidth } from './measure/width-fit.ts';

// Faults

export { type BuiltSet, builtSet } from './built/built-set.ts';
export type { Answered } from './faults/answered.ts';
export { type Check, DIAL_AS, HEARD_AS, type PossibleCheck, WIDTH_AS } from './faults/checks.ts';
export {
  type Contradiction,
  contradictionsAmong,
  type Diagnosis,
  diagnose,
  type NextCheck,
  type RankedCause,
} from './faults/diagnose.ts';
export type { FaultCaution, FaultCode, PartFault, RemedyCode, SignCode } from './faults/fault.ts';
export { type FaultModel, type FaultModelOptions, faultModel } from './faults/fault-model.ts';
export {
  answersTo,
  NOT_POSSIBLE,
  OBSERVED_FORMAT,
  type ObservedAnswer,
  type ObservedRead,
  readAnswer,
  readObserved,
  stationsObserved,
  writtenCheck,
} from './faults/observed.ts';
export type { OhmPlace } from './faults/ohmmeter.ts';
export type { RankedPair } from './faults/pairs.ts';
export { type TouchPoints, touchOf } from './faults/touch.ts';

// Uncertainty

export { LOOP_FACTORS } from './uncertainty/coil-spreads.ts';
export { detectorRanges, type FigureWithRange } from './uncertainty/detector-ranges.ts';
export { type DrawnInput, drawnInputs } from './uncertainty/drawn-inputs.ts';
export type { Drawn } from './uncertainty/draws.ts';
export {
  groundFieldRange,
  noisePartRange,
  noiseRange,
  rangeOfDecibels,
  skyFieldRange,
} from './uncertainty/place-ranges.ts';
export { productRange, type RangedFactor } from './uncertainty/product-range.ts';
export { type DialUncertainty, dialUncertaintyOf } from './uncertainty/ranged-dial.ts';
export { type RangedArrival, rangedArrivals } from './uncertainty/ranged-field.ts';
export {
  hasRanges,
  type RangedFigure,
  type RangedReception,
  type RangedStation,
  rangedReception,
  rangedStation,
} from './uncertainty/ranged-reception.ts';
export { type ReceivedOnBestBands, receiveOnBestBands } from './uncertainty/receive-on-best-bands.ts';
export { receiveRanged, stationsWithRanges } from './uncertainty/receive-ranged.ts';
export { type StationUncertainty, uncertaintyOf } from './uncertainty/uncertainty.ts';
