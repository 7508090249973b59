import type { Pen } from '../../../outputs/explain/index.ts';
import { FACE, type Palette } from '../../../outputs/scene/index.ts';

export type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** A pen on a canvas. @param ctx scaled so that one unit is one px of the drawing. */
export function canvasPen(ctx: Context, colours: () => Palette): Pen {
  ctx.lineCap = 'round';
  ctx.lineJoin = 'round';
  const through = (xs: ArrayLike<number>, ys: ArrayLike<number>, n: number) => {
    ctx.beginPath();
    ctx.moveTo(xs[0], ys[0]);
    for (let i = 1; i < n; i++) ctx.lineTo(xs[i], ys[i]);
  };
  return {
    rect(x, y, w, h, fill, opacity = 1, radius = 0) {
      ctx.globalAlpha = opacity;
      ctx.fillStyle = colours()[fill];
      if (radius > 0) {
        ctx.beginPath();
        ctx.roundRect(x, y, Math.max(0, w), Math.max(0, h), radius);
        ctx.fill();
      } else ctx.fillRect(x, y, w, h);
      ctx.globalAlpha = 1;
    },
    line(x1, y1, x2, y2, stroke, width = 1, opacity = 1) {
      ctx.globalAlpha = opacity;
      ctx.strokeStyle = colours()[stroke];
      ctx.lineWidth = width;
      ctx.beginPath();
      ctx.moveTo(x1, y1);
      ctx.lineTo(x2, y2);
      ctx.stroke();
      ctx.globalAlpha = 1;
    },
    polyline(xs, ys, n, stroke, width = 1, opacity = 1) {
      if (n < 2) return;
      ctx.globalAlpha = opacity;
      ctx.strokeStyle = colours()[stroke];
      ctx.lineWidth = width;
      through(xs, ys, n);
      ctx.stroke();
      ctx.globalAlpha = 1;
    },
    polygon(xs, ys, n, fill, opacity = 1) {
      ctx.globalAlpha = opacity;
      ctx.fillStyle = colours()[fill];
      through(xs, ys, n);
      ctx.fill();
      ctx.globalAlpha = 1;
    },
    circle(x, y, radius, { fill, stroke, width = 1, opacity = 1 }) {
      ctx.globalAlpha = opacity;
      ctx.beginPath();
      ctx.arc(x, y, radius, 0, 2 * Math.PI);
      if (fill) {
        ctx.fillStyle = colours()[fill];
        ctx.fill();
      }
      if (stroke) {
        ctx.strokeStyle = colours()[stroke];
        ctx.lineWidth = width;
        ctx.stroke();
      }
      ctx.globalAlpha = 1;
    },
    band(x, dx, top, bottom, n, fill, opacity = 1) {
      ctx.globalAlpha = opacity;
      ctx.fillStyle = colours()[fill];
      if (isDense(top, n)) {
        // Cycles a few columns wide: an outline of thousands of spikes takes a browser ten times as long as bars.
        for (let i = 0; i < n; i++) ctx.fillRect(x + (i - 0.5) * dx, top[i], dx, bottom[i] - top[i]);
        ctx.globalAlpha = 1;
        return;
      }
      ctx.beginPath();
      ctx.moveTo(x, top[0]);
      for (let i = 1; i < n; i++) ctx.lineTo(x + i * dx, top[i]);
      for (let i = n - 1; i >= 0; i--) ctx.lineTo(x + i * dx, bottom[i]);
      ctx.fill();
      ctx.globalAlpha = 1;
    },
    text(x, y, words, size, { role = 'ink', anchor = 'start', bold, italic, rim, opacity = 1 } = {}) {
      ctx.globalAlpha = opacity;
      ctx.font = `${italic ? 'italic ' : ''}${bold ? '600 ' : ''}${size}px ${FACE}`;
      ctx.textAlign = anchor === 'middle' ? 'center' : anchor;
      if (rim) {
        ctx.strokeStyle = colours().paper;
        ctx.lineWidth = size / 4;
        ctx.strokeText(words, x, y);
      }
      ctx.fillStyle = colours()[role];
      ctx.fillText(words, x, y);
      ctx.globalAlpha = 1;
    },
    clip(x, y, w, h) {
      ctx.save();
      ctx.beginPath();
      ctx.rect(x, y, w, h);
      ctx.clip();
    },
    unclip() {
      ctx.restore();
    },
  };
}

/** An outline is all spikes where crests follow closer than this many columns, and are higher than a px or so. */
const CLOSE = 12;
const HIGH = 1.2;

function isDense(top: Float64Array, n: number): boolean {
  let way = 0;
  let turns = 0;
  let before = 0;
  for (let i = 1; i < n; i++) {
    const jump = top[i] - top[i - 1];
    way += Math.abs(jump);
    if (jump * before < 0) turns++;
    if (jump !== 0) before = jump;
  }
  return way > HIGH * n && turns * CLOSE > 2 * n;
}
