/** What there is to see, hear or read, for other programs: pure functions of plain data. */

// Words

export {
  detectorName,
  interferenceSentence,
  problemSentence,
  receptionSummary,
  stageSentence,
  stationSentence,
  suggestionWords,
  verdictWords,
  warningSentence,
  warningSentences,
  wavePointText,
} from './words/index.ts';

// Tables

export { dialStationsTable, dialTable, pathTable, placeTable, stationRows, stationsTable } from './tables/index.ts';

// Sheets

export {
  PAPERS,
  type Page,
  type PaperName,
  type PdfOptions,
  pageSvg,
  SHEET_IDS,
  type Sheet,
  type SheetId,
  type SheetOptions,
  sheetsFor,
  sheetsPdf,
} from './sheets/index.ts';

// Drawings

export { drawAerial, drawCapacitor, drawCircuit, drawCoil, drawDetector, drawLoad } from './drawings/index.ts';

// Plots

export {
  bandResponse,
  coverage,
  detectorCurve,
  detectorsCompared,
  fieldProfile,
  heaterCurve,
  qAgainstFrequency,
  resonanceCurve,
} from './plots/index.ts';

// Scenes

export { DAY, type Item, type Palette, PRINT, type Scene, type SvgOptions, sceneToSvg } from './scene/index.ts';

// Sound

export {
  bandAt,
  type Listening,
  type ListeningOptions,
  openBandRecording,
  openListening,
  type RenderOptions,
  readWav,
  recordedProgramme,
  renderListening,
  SOUND_RATE,
  SoundFileError,
  writeWav,
} from './audio/index.ts';

// Waves at a point

export { nodeWaveScene, nodeWavesCsv, type ShownWaves, shownWaves } from './explain/node-waves/index.ts';

// A set shown to others

export {
  barePhoto,
  type Photo,
  type WriteUp,
  type WriteUpFile,
  type WriteUpOptions,
  type WriteUpPhoto,
  type WriteUpTable,
  writeUp,
  writeUpHtml,
  writeUpMarkdown,
} from './write-up/index.ts';
