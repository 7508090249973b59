import { scaleLinear } from 'd3-scale';
import type { HeaterPoint, HeaterRun } from '../../engine/reception/detection/heater.ts';
import { formatQuantity } from '../../engine/units/format.ts';
import { line, polyline, text } from '../scene/build.ts';
import { type Label, placeLabels } from '../scene/labels.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { axisNames, heaterPlotWords } from '../words/index.ts';
import { frameOf, PLOT_LETTERS, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

export interface HeaterCurves {
  readonly full: HeaterRun;
  readonly less: HeaterRun;
  /** Each watched for so long after switching on, and after switching off. */
  readonly watched: number;
  /** What they mean, for who cannot see them. */
  readonly words: readonly string[];
}

/** How far under the loudest is drawn, dB. */
const DEPTH = 45;

/**
 * Loudness and the valve's current against time: switched on at 0, off where the line stands.
 * @param data times (s), levels (dB SPL) and currents (A)
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function heaterCurve(data: HeaterCurves, size: PlotSize = {}): Scene {
  const { full, less, watched } = data;
  const width = size.width ?? 640;
  const tall = width < 480 ? 150 : 170;
  const frame = frameOf({ ...size, height: 2 * tall + 34 }, { left: 48, top: 30 });
  const { box } = frame;
  const upper = { ...frame, box: { ...box, h: tall - 46 } };
  const lower = { ...frame, box: { ...box, y: tall + 26, h: box.y + box.h - tall - 26 } };
  const x = scaleLinear([0, 2 * watched], [box.x, box.x + box.w]);
  const runs = [
    { run: full, role: 'copper' as const },
    { run: less, role: 'accent' as const },
  ];
  const points = ({ on, off }: HeaterRun) => [
    ...on.map((p) => ({ ...p, at: p.time })),
    ...off.map((p) => ({ ...p, at: watched + p.time })),
  ];
  const loudest = Math.max(...runs.flatMap(({ run }) => points(run).map((p) => p.soundPressureLevel)));
  const most = Math.max(...runs.flatMap(({ run }) => points(run).map((p) => p.current)), 1e-12);
  const loud = scaleLinear([loudest - DEPTH, loudest + 3], [upper.box.y + upper.box.h, upper.box.y]);
  const flow = scaleLinear([0, most * 1.08], [lower.box.y + lower.box.h, lower.box.y]);
  const [factor, unit] = most >= 1e-6 ? [1e6, 'µA'] : [1e9, 'nA'];
  const curve = (run: HeaterRun, y: (p: HeaterPoint) => number): Point[] =>
    points(run).map((p): Point => [x(p.at), y(p)]);
  const level = (p: HeaterPoint): number => loud(Math.max(loudest - DEPTH, p.soundPressureLevel));
  const seconds = (v: number): string => `${v > watched ? v - watched : v}`;
  const ticks = Array.from({ length: 2 * Math.floor(watched / 20) + 1 }, (_, k) => 20 * k).filter(
    (t) => t !== watched || watched % 20 !== 0 || t === 0,
  );
  const off = x(watched);
  const items: Item[] = [
    ...xAxis(upper, x, { unit: '', format: () => '', ticks: [] }),
    ...yAxis(upper, loud, { name: axisNames.loudness, unit: 'dB SPL', format: (v) => `${Math.round(v)}` }),
    ...xAxis(lower, x, { unit: 's', name: axisNames.sinceSwitched, format: seconds, ticks }),
    ...yAxis(lower, flow, { name: axisNames.current, unit, format: (v) => `${+(v * factor).toFixed(2)}` }),
    line([off, box.y - 4], [off, box.y + box.h], { stroke: 'soft', width: 1, dash: [4, 3] }),
    text([off - 6, box.y - 14], heaterPlotWords.on, PLOT_LETTERS, { anchor: 'end', role: 'soft' }),
    text([off + 6, box.y - 14], heaterPlotWords.off, PLOT_LETTERS, { role: 'soft' }),
  ];
  const labels: Label[] = runs.map(({ run, role }, i) => ({
    item: {
      text: formatQuantity(run.voltage, 'voltage', 2),
      size: PLOT_LETTERS,
      role,
      bold: true,
      sits: 'middle',
      rim: true,
    },
    places: [0.75, 0.6, 0.45].map((t) => {
      const p = run.on[Math.round(t * (run.on.length - 1))];
      return { at: [x(p.time), flow(p.current) + (i === 0 ? -9 : 11)] as Point, anchor: 'middle' as const };
    }),
    must: true,
  }));
  for (const { run, role } of [...runs].reverse()) {
    items.push(polyline(curve(run, level), { stroke: role, width: 2 }));
    items.push(
      polyline(
        curve(run, (p) => flow(p.current)),
        { stroke: role, width: 2 },
      ),
    );
  }
  const placed = placeLabels(labels, lower.box, [], 1);
  return plotScene(frame, heaterPlotWords.title, data.words.join(' '), [...items, ...placed.items]);
}
