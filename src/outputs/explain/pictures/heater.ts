import { cold, heatCathode } from '../../../engine/parts/detector/thermionic/heater.ts';
import { heaterTimes } from '../../../engine/parts/detector/thermionic/heater-times.ts';
import { emission } from '../../../engine/parts/detector/thermionic/thermionic.ts';
import { pictureTexts } from '../../words/index.ts';
import type { MovingPicture, PictureFacts } from './facts.ts';

const ON = 30;
const OFF = 30;
const STEP = 0.25;

const texts = () => pictureTexts.heater;

const histories = new Map<string, { temperature: number[]; emission: number[] }>();

/** Temperature and emission over switching on and off, worked out once for a heater and its voltage. */
export function heaterHistory({ heater, heaterVoltage }: Pick<PictureFacts, 'heater' | 'heaterVoltage'>) {
  const key = JSON.stringify([heater, heaterVoltage]);
  let found = histories.get(key);
  if (!found) {
    let state = cold(heater);
    const temperature = [state.cathode];
    for (let k = 1; k <= (ON + OFF) / STEP; k++) {
      state = heatCathode(state, k * STEP <= ON ? heaterVoltage : 0, STEP, heater);
      temperature.push(state.cathode);
    }
    histories.set(key, (found = { temperature, emission: temperature.map((T) => emission(T)) }));
  }
  return found;
}

function factsOf(facts: PictureFacts) {
  const { temperature, emission: I } = heaterHistory(facts);
  return {
    heaterVoltage: facts.heaterVoltage,
    on: ON,
    off: OFF,
    hottest: Math.max(...temperature),
    mostEmission: Math.max(...I),
    times: heaterTimes(facts.heaterVoltage, facts.heater),
  };
}

export const heaterPicture: MovingPicture = {
  id: 'heater',
  title: () => texts().title,
  about: (facts) => texts().about(factsOf(facts)),
  description: (facts) => texts().description(factsOf(facts)),
  speed: () => pictureTexts.realTime,
  seconds: () => ON + OFF,
  still: () => 0.55 * ON,
  paint(pen, facts, seconds, box, letters) {
    const { temperature, emission: I } = heaterHistory(facts);
    const t = seconds % (ON + OFF);
    const k = Math.min(temperature.length - 1, Math.round(t / STEP));
    const T = temperature[k];
    const rated = facts.heater.ratedTemperature;
    const glow = Math.max(0, Math.min(1, (T - 700) / (rated - 700)));
    const warm = Math.max(0, Math.min(1, (T - 300) / (rated - 300)));
    const cx = box.x + box.w * 0.2;
    const cy = box.y + box.h * 0.45;
    const r = Math.min(box.w * 0.15, box.h * 0.32);
    pen.circle(cx, cy, r, { stroke: 'ink', width: 2 });
    pen.circle(cx, cy, r * 0.9, { fill: 'warning', opacity: 0.28 * glow });
    pen.line(cx - r * 0.5, cy - r * 0.45, cx + r * 0.5, cy - r * 0.45, 'metal', 6);
    pen.line(cx, cy - r * 0.45, cx, cy - r * 1.35, 'ink', 2);
    pen.line(cx - r * 0.4, cy + r * 0.2, cx + r * 0.4, cy + r * 0.2, 'ink', 5);
    pen.line(cx - r * 0.4, cy + r * 0.2, cx + r * 0.4, cy + r * 0.2, 'warning', 5, warm);
    pen.line(cx - r * 0.4, cy + r * 0.2, cx - r * 0.4, cy + r * 1.35, 'ink', 2);
    const fx = [-0.25, -0.12, 0, 0.12, 0.25].map((d) => cx + d * r);
    const fy = [0.9, 0.45, 0.75, 0.45, 0.9].map((d) => cy + d * r);
    pen.polyline(fx, fy, 5, 'ink', 3);
    pen.polyline(fx, fy, 5, 'warning', 3, t < ON ? 1 : warm * 0.6);
    // Electrons crossing: as many as the emission allows.
    const share = I[k] / Math.max(...I);
    const crossing = Math.round(14 * share);
    for (let j = 0; j < crossing; j++) {
      const way = (seconds * 0.7 + j * 0.618) % 1;
      pen.circle(cx + r * 0.36 * (2 * ((j * 0.382) % 1) - 1), cy + r * (0.15 - 0.55 * way), 3, { fill: 'accent' });
    }
    pen.text(cx, cy + r * 1.35 + letters * 2, t < ON ? texts().isOn : texts().isOff, letters * 1.15, {
      anchor: 'middle',
      bold: true,
    });
    pen.text(cx, cy + r * 1.35 + letters * 3.6, texts().temperature(T), letters * 1.15, { anchor: 'middle' });
    const left = box.x + box.w * 0.42;
    const wide = box.w * 0.55;
    const curveBox = (
      top: number,
      tall: number,
      values: readonly number[],
      most: number,
      words: string,
      role: 'warning' | 'accent',
    ) => {
      const floor = top + tall;
      const xs = values.map((_, j) => left + (wide * j * STEP) / (ON + OFF));
      const ys = values.map((v) => floor - (tall - letters * 1.6) * (v / most));
      pen.line(left, floor, left + wide, floor, 'soft', 1);
      pen.polyline(xs, ys, xs.length, role, 2.5);
      pen.circle(xs[k], ys[k], letters * 0.45, { fill: role });
      pen.text(left, top + letters * 0.5, words, letters, { role: 'soft' });
    };
    const tall = box.h * 0.38;
    curveBox(
      box.y + letters,
      tall,
      temperature,
      rated * 1.1,
      texts().temperatureCurve(Math.max(...temperature)),
      'warning',
    );
    curveBox(box.y + box.h * 0.5, tall, I, Math.max(...I) * 1.05, texts().emissionCurve(Math.max(...I)), 'accent');
    const off = left + (wide * ON) / (ON + OFF);
    pen.line(off, box.y + letters, off, box.y + box.h * 0.5 + tall, 'soft', 1, 0.6);
    const y = box.y + box.h * 0.5 + tall + letters * 1.5;
    pen.text(left, y, texts().switchedOn, letters, { role: 'soft' });
    pen.text(off, y, texts().switchedOff, letters, { role: 'soft', anchor: 'middle' });
    pen.text(left + wide, y, texts().end(ON + OFF), letters, { role: 'soft', anchor: 'end' });
  },
};
