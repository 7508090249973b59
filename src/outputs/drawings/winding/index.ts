export { basketWeave, ringWound, spiderWeave, spiralOutward } from './flat.ts';
export { cheeksOn, layers, pileEnd, pileStart, pileTap } from './pile.ts';
export { banks, bareEnd, endHoles, startHoles, tapMade, windingOn } from './tube.ts';
