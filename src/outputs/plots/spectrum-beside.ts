import { scaleLinear, scaleLog } from 'd3-scale';
import type { AudioPickup, SpectrumBeside } from '../../engine/index.ts';
import { circle, polyline } from '../scene/build.ts';
import type { Item, Point, Scene } from '../scene/scene.ts';
import { audioSpectrumPlot } from '../words/index.ts';
import { frameOf, type PlotSize, plotScene, xAxis, yAxis } from './frame.ts';

/** A recording beside the prediction, and where it was recorded. */
interface AudioSpectra {
  readonly beside: SpectrumBeside;
  readonly pickup: AudioPickup;
}

const TICKS = [100, 200, 500, 1000, 2000, 5000];
const ENDS: [number, number] = [90, 9000];
/** Below the loudest nothing is heard of it. */
const DEPTH = 60;
const STEP = 10;

/**
 * Levels of third octaves: the prediction as a line, the recording as points.
 * @param data dB
 * @param size px; default as the page has it
 * @returns a scene, px
 */
export function audioSpectrumCurve({ beside, pickup }: AudioSpectra, size: PlotSize = {}): Scene {
  const { measured, predicted } = beside;
  const frame = frameOf(size, { left: 56 });
  const { box } = frame;
  const top = STEP * Math.ceil(Math.max(...[...measured, ...predicted].map(({ level }) => level)) / STEP);
  const x = scaleLog(ENDS, [box.x, box.x + box.w]);
  const y = scaleLinear([top - DEPTH, top], [box.y + box.h, box.y]).clamp(true);
  const items: Item[] = [
    ...xAxis(frame, x, {
      unit: 'Hz',
      format: audioSpectrumPlot.frequency,
      ticks: frame.narrow ? TICKS.filter((_, i) => i % 2 === 0) : TICKS,
    }),
    ...yAxis(frame, y, {
      unit: audioSpectrumPlot.unit(pickup),
      format: audioSpectrumPlot.level,
      ticks: Array.from({ length: DEPTH / STEP + 1 }, (_, k) => top - k * STEP),
    }),
    polyline(
      predicted.map(({ frequency, level }): Point => [x(frequency), y(level)]),
      { stroke: 'copper', width: 2, title: audioSpectrumPlot.predicted },
    ),
    ...measured
      .filter(({ level }) => level > top - DEPTH)
      .map((band) =>
        circle([x(band.frequency), y(band.level)], 3.5, {
          stroke: 'accent',
          fill: 'accent',
          title: audioSpectrumPlot.at(band, pickup),
        }),
      ),
  ];
  return plotScene(frame, audioSpectrumPlot.title, audioSpectrumPlot.text(beside), items);
}
