import { isLoop } from '../../kinds/loops.ts';
import type { SetDescription } from '../../set/description.ts';

/** A usual caution and the part it is about. */
export interface Caution {
  readonly about: 'aerial' | 'earth' | 'detector' | 'load' | 'old parts';
  readonly text: string;
}

/** What can hurt in or around this set, in the order a builder meets it. Usual cautions; local codes and licensed practice come first. */
export function cautionsFor(set: SetDescription, loadCautions: readonly string[]): Caution[] {
  const cautions: Caution[] = [];
  const say = (about: Caution['about'], ...texts: readonly string[]): void => {
    for (const text of texts) if (!cautions.some((c) => c.text === text)) cautions.push({ about, text });
  };
  if (!isLoop(set.aerial)) {
    say(
      'aerial',
      'Never put an aerial or its ropes near, over or under power lines, nor where either could fall on the other.',
      'In thunder, stop listening: disconnect the aerial and join it to earth outside. Fit an arrester, and follow the local electrical code.',
    );
    say(
      'earth',
      'Never use the mains neutral, a gas pipe or an untested mains earth as the set’s earth; about the house’s own earth ask a licensed person.',
    );
  }
  if (set.detector.kind === 'galena')
    say('detector', 'Galena is lead sulphide: wash your hands after it, do not eat or drink by it, do not grind it.');
  if (set.detector.kind === 'valve')
    say(
      'detector',
      'A valve runs hot: let it cool before you touch it, and switch its heater off before you change a wire.',
      'An accumulator or battery for the heater can drive a current through a short circuit that burns, melts wire and starts fires: put a fuse at its terminal, join it last, and lay no tools or rings across it. A supply from the mains must be isolated and fused.',
      'An accumulator holds acid and gives off an explosive gas on charge: charge it in moving air, away from flame and spark, and wash splashes off with plenty of water at once.',
    );
  if (set.load.kind === 'amplifier')
    say('load', 'Start with the volume down: a click or a near station can be far louder than the programme before.');
  say('load', ...loadCautions);
  say(
    'old parts',
    'Old parts may contain asbestos, PCB oil, radium paint or selenium: leave what you do not know unopened.',
  );
  return cautions;
}
