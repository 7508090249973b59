import type { SetDescription } from '../set/description.ts';

/** What can hurt in or around this set, in the order a builder meets it. Usual cautions; local codes and licensed practice come first. */
export function cautionsFor(set: SetDescription, loadCautions: readonly string[]): string[] {
  const cautions: string[] = [];
  const outdoors = set.aerial.kind !== 'frame' && set.aerial.kind !== 'ferrite rod';
  if (outdoors) {
    cautions.push(
      'Never put an aerial or its ropes near, over or under power lines, nor where either could fall on the other.',
      'In thunder, stop listening: disconnect the aerial and join it to earth outside. Fit an arrester, and follow the local electrical code.',
    );
  }
  cautions.push(
    'Never use the mains neutral, a gas pipe or an untested mains earth as the set’s earth; about the house’s own earth ask a licensed person.',
  );
  if (set.detector.kind === 'galena')
    cautions.push('Galena is lead sulphide: wash your hands after it, do not eat or drink by it, do not grind it.');
  if (set.detector.kind === 'valve')
    cautions.push(
      'A valve and its heater run hot, and heater and HT supplies can burn and kill: use an isolated, fused low-voltage supply, and never work on it live.',
    );
  if (set.load.kind === 'amplifier') cautions.push('Start with the volume down.');
  cautions.push(...loadCautions.filter((c) => !cautions.includes(c)));
  cautions.push(
    'Old parts may contain asbestos, PCB oil, radium paint or selenium: leave what you do not know unopened.',
  );
  return cautions;
}
