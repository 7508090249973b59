import type { CoverageMap, Pen } from '../../../outputs/explain/index.ts';
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
  const tinted = tinter();
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
      ctx.beginPath();
      ctx.moveTo(x, top[0]);
      for (let i = 1; i < n; i++) ctx.lineTo(x + i * dx, top[i]);
      for (let i = n - 1; i >= 0; i--) ctx.lineTo(x + i * dx, bottom[i]);
      ctx.fill();
      ctx.globalAlpha = 1;
    },
    coverage(x, y, map, density, fill, opacity) {
      const { columns, rows } = map;
      if (columns === 0 || rows === 0) return;
      ctx.fillStyle = colours()[fill];
      ctx.globalAlpha = opacity;
      ctx.drawImage(tinted(map, ctx.fillStyle), 0, 0, columns, rows, x, y, columns / density, rows / density);
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

/** Makes shares of pixels into a picture of one colour; its canvas is kept for the next. */
function tinter() {
  let canvas: OffscreenCanvas | undefined;
  let context: OffscreenCanvasRenderingContext2D | undefined;
  let image: ImageData | undefined;
  return ({ columns, rows, shares }: CoverageMap, colour: string): OffscreenCanvas => {
    if (!canvas || !context || canvas.width < columns || canvas.height < rows) {
      canvas = new OffscreenCanvas(Math.max(columns, canvas?.width ?? 0), Math.max(rows, canvas?.height ?? 0));
      context = canvas.getContext('2d', { willReadFrequently: true })!;
    }
    if (image?.width !== columns || image.height !== rows) image = new ImageData(columns, rows);
    const { data } = image;
    const value = Number.parseInt(colour.slice(1), 16);
    // Canvas gives colours back as #rrggbb; written as whole pixels, alpha first in memory order of little ends.
    const rgb = ((value & 255) << 16) | (value & 0xff00) | (value >> 16);
    const pixels = new Uint32Array(data.buffer);
    for (let i = 0; i < shares.length; i++) pixels[i] = rgb | (shares[i] << 24);
    context.putImageData(image, 0, 0);
    return canvas;
  };
}
