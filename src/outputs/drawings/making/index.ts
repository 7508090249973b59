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
} from './capacitor.ts';
