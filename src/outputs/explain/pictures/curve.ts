import { pictureTexts } from '../../words/index.ts';
import type { Pen } from '../stage/pen.ts';
import type { MovingPicture, PictureBox, PictureFacts } from './facts.ts';

/** Seconds on the screen for one cycle of the carrier. */
const CYCLE = 2.4;

/** Current of the detector, or of a perfect path with the load's resistance behind it. */
const currentOf = ({ detector, waves }: PictureFacts, v: number): number =>
  detector === 'perfect' ? Math.max(v, 0) / waves.spec.load.resistance : detector.current(v);

const texts = () => pictureTexts.curve;

function factsOf(facts: PictureFacts) {
  const { waves, directVoltage } = facts;
  const V = waves.spec.atDetector;
  return {
    detector: waves.spec.detectorId,
    carrier: waves.spec.carrier,
    detectorVoltage: V,
    directVoltage,
    forwardCurrent: currentOf(facts, V - directVoltage),
    reverseCurrent: currentOf(facts, -V - directVoltage),
  };
}

export const curvePicture: MovingPicture = {
  id: 'curve',
  title: () => texts().title,
  about: (facts) => texts().about(factsOf(facts)),
  description: (facts) => texts().description(factsOf(facts)),
  speed: ({ waves }) => pictureTexts.slowMotion(CYCLE * waves.spec.carrier),
  seconds: () => CYCLE * 8,
  still: () => 2.04 * CYCLE,
  paint(pen, facts, seconds, box, letters) {
    const { waves, directVoltage } = facts;
    const V = waves.spec.atDetector;
    const reach = 1.12 * (V + Math.abs(directVoltage));
    const most = Math.max(currentOf(facts, V - directVoltage), 1e-15) * 1.15;
    const least = Math.min(currentOf(facts, -V - directVoltage) * 1.6, -0.12 * most);
    const graph: PictureBox = { x: box.x + box.w * 0.08, y: box.y + letters * 2, w: box.w * 0.46, h: box.h * 0.58 };
    const x = (v: number) => graph.x + ((v + reach) / (2 * reach)) * graph.w;
    const y = (i: number) => graph.y + ((most - i) / (most - least)) * graph.h;
    const n = 160;
    const xs: number[] = [];
    const ys: number[] = [];
    for (let k = 0; k <= n; k++) {
      const v = -reach + (2 * reach * k) / n;
      const i = currentOf(facts, v);
      if (i > most * 1.02) break;
      xs.push(x(v));
      ys.push(y(i));
    }
    pen.line(graph.x, y(0), graph.x + graph.w, y(0), 'soft', 1);
    pen.line(x(0), graph.y, x(0), graph.y + graph.h, 'soft', 1);
    pen.polyline(xs, ys, xs.length, 'copper', 3);
    const phase = seconds / CYCLE;
    const voltageAt = (cycles: number) => V * Math.cos(2 * Math.PI * cycles) - directVoltage;
    const v = voltageAt(phase);
    const i = currentOf(facts, v);
    // The voltage's own swing below, on the same scale of volts, time running down.
    const below = box.y + box.h - (graph.y + graph.h) - letters;
    const vx: number[] = [];
    const vy: number[] = [];
    for (let k = 0; k <= 100; k++) {
      vx.push(x(voltageAt(phase - (k / 100) * 2)));
      vy.push(graph.y + graph.h + letters + (below * k) / 100);
    }
    pen.polyline(vx, vy, vx.length, 'accent', 2);
    // The current to the right, time running away to the right.
    const side: PictureBox = { x: box.x + box.w * 0.58, y: graph.y, w: box.w * 0.4, h: graph.h };
    const ix: number[] = [];
    const iy: number[] = [];
    for (let k = 0; k <= 200; k++) {
      ix.push(side.x + (side.w * k) / 200);
      iy.push(y(Math.min(most, currentOf(facts, voltageAt(phase - (k / 200) * 4)))));
    }
    pen.line(side.x, y(0), side.x + side.w, y(0), 'soft', 1);
    pen.polyline(ix, iy, ix.length, 'copper', 2.5);
    pen.line(x(v), y(i), x(v), graph.y + graph.h + letters, 'accent', 1, 0.7);
    pen.line(x(v), y(i), side.x, y(i), 'copper', 1, 0.7);
    pen.circle(x(v), y(i), Math.max(6, letters * 0.55), { fill: 'warning' });
    oneWay(pen, { x: side.x, y: side.y + side.h + letters, w: side.w, h: below }, i / most, letters);
    pen.text(x(0) + letters * 0.6, graph.y - letters * 0.4, texts().current(most / 1.15), letters, {
      role: 'soft',
    });
    pen.text(graph.x, graph.y + graph.h + below * 0.55, texts().voltage, letters * 0.92, { role: 'accent' });
    pen.text(graph.x, graph.y + graph.h + below * 0.55 + letters * 1.2, texts().timeDown, letters * 0.92, {
      role: 'accent',
    });
    pen.text(side.x + side.w, side.y - letters * 0.4, texts().currentOverTime, letters, {
      role: 'copper',
      anchor: 'end',
    });
    pen.text(graph.x, y(0) - letters * 0.5, texts().lowest(reach), letters * 0.92, {
      role: 'soft',
    });
    pen.text(graph.x + graph.w, y(0) - letters * 0.5, texts().highest(reach), letters * 0.92, {
      role: 'soft',
      anchor: 'end',
    });
  },
};

/** The trade's sign for a one-way path, with dots that only go one way. */
function oneWay(pen: Pen, box: PictureBox, share: number, letters: number): void {
  const cy = box.y + box.h * 0.45;
  const cx = box.x + box.w / 2;
  const s = Math.min(box.h * 0.22, box.w * 0.08);
  pen.line(box.x, cy, cx - s, cy, 'ink', 2);
  pen.line(cx + s, cy, box.x + box.w, cy, 'ink', 2);
  pen.polygon([cx - s, cx - s, cx + s], [cy - s, cy + s, cy], 3, 'ink');
  pen.line(cx + s, cy - s, cx + s, cy + s, 'ink', 3);
  const flow = Math.max(-0.1, Math.min(1, share));
  const length = flow * box.w * 0.3;
  if (Math.abs(length) > 2) {
    const y = cy - s - letters * 0.8;
    pen.line(cx - length / 2, y, cx + length / 2, y, 'copper', 4);
    const d = Math.sign(length) * 9;
    pen.polygon([cx + length / 2 + d, cx + length / 2, cx + length / 2], [y, y - 7, y + 7], 3, 'copper');
  }
  pen.text(
    cx,
    cy + s + letters * 1.4,
    flow > 0.02 ? texts().flows : flow < -0.005 ? texts().leaks : texts().blocked,
    letters,
    {
      role: 'soft',
      anchor: 'middle',
    },
  );
}
