export { jointOnPin, sheetOnBoard, terminalMounted, wireUnderScrew } from './board-pictures.ts';
export {
  bookFromSide,
  cardPushedIn,
  foilLayers,
  foilOnBase,
  innerTubeWrapped,
  leavesOpened,
  tabClamped,
  tubeLayers,
  tubesInCradle,
  vaneMidway,
  vanesStacked,
} from './capacitor-pictures.ts';
export {
  blockDrilled,
  crystalDetector,
  crystalInCup,
  heaterLeads,
  holderFromBelow,
  leadsBent,
  pliersOnLead,
  whiskerWound,
} from './detector-pictures.ts';
