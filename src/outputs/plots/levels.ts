import { scaleLinear } from 'd3-scale';
import { inSeries } from '../../engine/units/format.ts';
import { line, rect, text } from '../scene/build.ts';
import type { Item, Scene } from '../scene/scene.ts';
import { shorten, textWidth } from '../scene/text-width.ts';
import { frameOf, LETTERS, type PlotSize, plotScene, SMALL } from './frame.ts';
import { db, drawable } from './words.ts';

/** One level on the path; what `Stage` of the reception gives. */
export interface LevelStage {
  readonly title: string;
  /** "3.2 mV/m". */
  readonly text: string;
  /** Gain (+) or loss (−) from the stage before, dB. */
  readonly change?: number;
  readonly changeOf?: string;
  readonly id?: string;
}

const signed = (x: number): string => (x > 0 ? `+${db(x)}` : db(x));

export function pathLevelsText(stages: readonly LevelStage[], station = ''): string {
  const said = stages.map(
    (s) => `${s.title.toLowerCase()} ${s.text}${s.change === undefined ? '' : ` (${signed(s.change)})`}`,
  );
  return `${station ? `${station}: ` : ''}${inSeries(said)}.`;
}

const ROW = 40;

/** What is won and lost at each stage from the field to the ear, each bar beginning where the last one ended. */
export function pathLevels(
  data: { readonly stages: readonly LevelStage[]; readonly station?: string; readonly chosen?: string },
  size: PlotSize = {},
): Scene {
  const { stages, chosen } = data;
  const top = 8;
  const height = top + stages.length * ROW + 26;
  const frame = frameOf({ ...size, height }, { left: 12, right: 12, top, bottom: 26 });
  const { box } = frame;
  const wide = frame.width >= 560;
  const left = wide ? 178 : box.x;
  const valueWidth = Math.max(...stages.map((s) => textWidth(s.text, LETTERS, true))) + 12;
  const right = box.x + box.w - (wide ? valueWidth : 0);
  const levels = [0];
  for (const s of stages.slice(1)) levels.push(drawable(levels[levels.length - 1] + (s.change ?? 0)));
  const low = Math.min(-10, ...levels);
  const high = Math.max(0, ...levels);
  // Room for the figures beside the bars at either end.
  const x = scaleLinear([low, high], [left + 52, right - 52]);
  const items: Item[] = [];
  const floor = top + stages.length * ROW;
  for (const t of x.ticks(Math.max(2, Math.floor((right - left) / 90)))) {
    items.push(
      line([x(t), top], [x(t), floor], { stroke: 'faint', width: 0.75 }),
      text([x(t), floor + 6], db(t), SMALL, { anchor: 'middle', sits: 'top', role: 'soft' }),
    );
  }
  stages.forEach((s, i) => {
    const y = top + i * ROW;
    const bar = wide ? y + 12 : y + 22;
    const [a, b] = [x(levels[Math.max(0, i - 1)]), x(levels[i])];
    const change = i === 0 ? undefined : s.change;
    const role = s.id !== undefined && s.id === chosen ? 'accent' : 'ink';
    const title = `${s.title}: ${s.text}${change === undefined ? '' : `, ${signed(change)}${s.changeOf ? ` ${s.changeOf}` : ''}`}`;
    if (wide) {
      items.push(
        text([box.x, bar + 7], shorten(s.title, LETTERS, left - box.x - 4), LETTERS, { sits: 'middle', role }),
        text([box.x + box.w, bar + 7], s.text, LETTERS, { sits: 'middle', anchor: 'end', bold: true, role }),
      );
    } else {
      items.push(
        text([box.x, y + 13], shorten(s.title, LETTERS, box.w - valueWidth - 4), LETTERS, { role, rim: true }),
        text([box.x + box.w, y + 13], s.text, LETTERS, { anchor: 'end', bold: true, role, rim: true }),
      );
    }
    if (i + 1 < stages.length)
      items.push(line([b, bar], [b, bar + ROW + 14], { stroke: 'soft', width: 0.75, dash: [2, 2] }));
    if (change === undefined) {
      items.push(line([b, bar], [b, bar + 14], { stroke: 'ink', width: 3, title }));
      return;
    }
    const gain = change >= 0;
    items.push(
      rect(Math.min(a, b), bar, Math.max(1.5, Math.abs(b - a)), 14, {
        fill: gain ? 'accent' : 'copper',
        title,
        radius: 1,
      }),
      text([gain ? b + 6 : b - 6, bar + 7], signed(change), LETTERS, {
        sits: 'middle',
        anchor: gain ? 'start' : 'end',
        role: gain ? 'accent' : 'copper',
        bold: true,
        rim: true,
      }),
    );
  });
  return plotScene(
    frame,
    `Levels from the field to the ear${data.station ? `: ${data.station}` : ''}`,
    pathLevelsText(stages, data.station),
    items,
  );
}
