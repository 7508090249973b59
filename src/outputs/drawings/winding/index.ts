export { basketWeave, ringWound, spiderWeave, spiralOutward } from './flat.ts';
export { lathsCrossed, oneTurnClamped, turnsOnHoop, wiresInNotches } from './frame.ts';
export { cheeksOn, layers, pileEnd, pileStart, pileTap } from './pile.ts';
export { rodInPlace, rodStart, sleeveOnRod } from './rod.ts';
export { banks, bareEnd, endHoles, startHoles, tapMade, windingOn } from './tube.ts';
