import type { CautionCode } from '../../../engine/facts/cautions.ts';

/** A sentence, or a few, for each caution. */
export const cautionTexts: Readonly<Record<CautionCode, string>> = {
  'aerial.power-lines':
    'Never put an aerial or its ropes near, over or under power lines, nor where either could fall on the other.',
  'aerial.thunder':
    'In a thunderstorm, or when one may come, stop listening: disconnect the aerial and connect it to earth outside. Fit a lightning arrester, and follow the local electrical code.',
  'aerial.ladders-and-masts':
    'Put an aerial up in still, dry weather and with a helper: stand a ladder on firm ground and do not lean out from it, and guy a mast before you let go of it.',
  'earth.mains-and-gas':
    'Never use the mains neutral, a gas pipe or an untested mains earth as the set’s earth; about the building’s own earth ask a licensed person.',
  'earth.buried-cables': 'Before you dig or drive in a rod, find out where buried cables and pipes lie.',
  'detector.lead-sulphide':
    'Galena is lead sulphide: wash your hands after handling it, do not eat or drink near it, do not grind it.',
  'detector.low-melting-metal':
    'Low-melting metal for setting a crystal contains lead, and often cadmium: melt it in boiling water rather than over a flame, in moving air, in a vessel never used for food, and do not file it.',
  'detector.hot-valve':
    'A valve gets hot: let it cool before you touch it, and switch its heater off before you change a wire.',
  'detector.heater-supply':
    'An accumulator or battery for the heater can drive a current through a short circuit that burns, melts wire and starts fires: put a fuse at its terminal, connect it last, and lay no tools or rings across it. A supply from the mains must be isolated and fused.',
  'detector.accumulator':
    'An accumulator contains acid and gives off an explosive gas on charge: charge it in moving air, away from flames and sparks, and wash splashes off at once with plenty of water.',
  'load.volume':
    'Start with the volume down, and put phones on your ears only then: a click or a strong station can be far louder than the programme before.',
  'load.mains-amplifier':
    'An amplifier run from the mains must be isolated from the set: its earth may carry mains current, and a fault in it reaches the phones and the aerial. Use a battery amplifier, or a proper isolating transformer between set and amplifier.',
  'load.clicks-on-ears':
    'Take phones or an earpiece off your ears before you touch them, or anything connected to them, with a cell or a meter on ohms: the click can be loud.',
  'load.loud':
    'This set can be loud enough to damage hearing: detune it before you put the phones on, tune in from there, and take them off when it hurts or rings.',
  'old-parts':
    'Old parts may contain asbestos, PCB oil, radium paint or selenium: leave what you do not know unopened.',
  'bench.wire-ends': 'Wear glasses when wire is cut, stretched or cleaned: ends fly.',
  'bench.solder':
    'Soldering makes fumes, and solder may contain lead: work in moving air, wash your hands before you eat, and put the iron where no cord can catch it.',
  'bench.no-mains':
    'Nothing here runs from the mains. If anything you connect to it does, phones and recorder go through a battery-powered stage or an isolating transformer that is tested for it.',
  'bench.mains-isolated':
    'Nothing here is connected to the mains without isolation. If anything you connect to it runs from the mains, phones and recorder go through a battery-powered stage or an isolating transformer that is tested for it.',
  'bench.licensed-person':
    'Whatever is connected to the mains follows the local electrical code; have it made or checked by a licensed person.',
};
