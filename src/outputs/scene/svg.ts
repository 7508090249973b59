import { textHash } from '../../engine/numerics/text-hash.ts';
import { safeLines } from '../../engine/units/safe-text.ts';
import { baseShift } from './boxes.ts';
import { FACE } from './face.ts';
import { DAY, type Palette, PRINT, variables } from './palette.ts';
import type { Item, Look, Meaning, PathSegment, Role, Scene } from './scene.ts';
import { sharesAddress } from './shares-png.ts';

/** Colours and size of an SVG. */
export interface SvgOptions {
  /** "page": CSS variables with the day's colours behind them (default); "day" and "print": plain colours. */
  readonly colours?: 'page' | 'day' | 'print' | Palette;
  /**
   * "scaled" (default): fills the width it is given. "true": width and height in the scene's unit, for printing at full
   * size.
   */
  readonly size?: 'scaled' | 'true';
  /** Parts become buttons that the keyboard reaches; the whole is then a group rather than an image. */
  readonly interactive?: boolean;
  /** Prefix of ids inside; by default made from the content, so that two scenes on a page do not clash. */
  readonly id?: string;
  /** Part to show as chosen. */
  readonly chosen?: string;
  /** Paint the paper; default only for "day" and "print". */
  readonly paper?: boolean;
  /** What a part's button is called; default its title. */
  readonly label?: (part: string, title: string | undefined) => string;
}

/**
 * A scene as an SVG string. Text is escaped, ids do not clash, title and description come from the scene.
 * @param scene any drawing or plot
 * @param options colours; default those of the page
 * @returns SVG text
 */
export function sceneToSvg(scene: Scene, options: SvgOptions = {}): string {
  const { colours = 'page', size = 'scaled', interactive = false } = options;
  const palette = colours === 'page' ? variables() : colours === 'day' ? DAY : colours === 'print' ? PRINT : colours;
  const id = options.id ?? `s${hash(`${scene.title} ${scene.description} ${scene.width} ${scene.items.length}`)}`;
  const dpr =
    size === 'true' ? ` width="${num(scene.width)}${scene.unit}" height="${num(scene.height)}${scene.unit}"` : '';
  const writer = new Writer(palette, id, interactive, options);
  const body = scene.items.map((item) => writer.item(item)).join('');
  const paper =
    (options.paper ?? colours !== 'page')
      ? `<rect width="${num(scene.width)}" height="${num(scene.height)}" fill="${palette.paper}"/>`
      : '';
  const font = colours === 'page' ? `var(--font, ${FACE})` : FACE;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${num(scene.width)} ${num(scene.height)}"${dpr}` +
    ` role="${interactive ? 'group' : 'img'}" aria-labelledby="${id}-t" aria-describedby="${id}-d"` +
    ` font-family="${escaped(font)}" stroke-linecap="round" stroke-linejoin="round" fill="none">` +
    `<title id="${id}-t">${escaped(scene.title)}</title><desc id="${id}-d">${escaped(scene.description)}</desc>` +
    `${writer.defs()}${paper}${body}</svg>`
  );
}

class Writer {
  private readonly clips: string[] = [];
  private readonly palette: Palette;
  private readonly id: string;
  private readonly interactive: boolean;
  private readonly options: SvgOptions;
  constructor(palette: Palette, id: string, interactive: boolean, options: SvgOptions) {
    this.palette = palette;
    this.id = id;
    this.interactive = interactive;
    this.options = options;
  }

  defs(): string {
    return this.clips.length > 0 ? `<defs>${this.clips.join('')}</defs>` : '';
  }

  item(item: Item): string {
    switch (item.kind) {
      case 'line':
        return this.shape(
          item,
          `<line x1="${num(item.from[0])}" y1="${num(item.from[1])}" x2="${num(item.to[0])}" y2="${num(item.to[1])}"`,
        );
      case 'polyline': {
        const tag = item.closed ? 'polygon' : 'polyline';
        return this.shape(item, `<${tag} points="${item.points.map(([x, y]) => `${num(x)},${num(y)}`).join(' ')}"`);
      }
      case 'path':
        return this.shape(item, `<path d="${pathData(item.segments)}"`);
      case 'circle':
        return this.shape(
          item,
          `<circle cx="${num(item.centre[0])}" cy="${num(item.centre[1])}" r="${num(item.radius)}"`,
        );
      case 'rect':
        return this.shape(
          item,
          `<rect x="${num(item.x)}" y="${num(item.y)}" width="${num(Math.max(0, item.w))}" height="${num(Math.max(0, item.h))}"${item.radius ? ` rx="${num(item.radius)}"` : ''}`,
        );
      case 'text': {
        const [x, y] = item.at;
        const shift = baseShift(item.sits) * item.size;
        const anchor = item.anchor && item.anchor !== 'start' ? ` text-anchor="${item.anchor}"` : '';
        const turn = item.turn ? ` transform="rotate(${num(item.turn)} ${num(x)} ${num(y)})"` : '';
        const rim = item.rim
          ? ` stroke="${this.palette.paper}" stroke-width="${num(item.size / 4)}" paint-order="stroke"`
          : '';
        const style = `${item.bold ? ' font-weight="600"' : ''}${item.italic ? ' font-style="italic"' : ''}`;
        return this.meant(
          item,
          `<text x="${num(x)}" y="${num(y + shift)}" font-size="${num(item.size)}" fill="${this.colour(item.role ?? 'ink')}"${anchor}${turn}${rim}${style}>${escaped(item.text)}</text>`,
        );
      }
      case 'shares': {
        const { x, y, w, h, opacity } = item;
        return `<image x="${num(x)}" y="${num(y)}" width="${num(w)}" height="${num(h)}" image-rendering="optimizeSpeed" preserveAspectRatio="none"${opacity === undefined || opacity === 1 ? '' : ` opacity="${num(opacity)}"`} href="${sharesAddress(item, this.colour(item.fill))}"/>`;
      }
      case 'group': {
        const move = item.move ? `translate(${num(item.move[0])} ${num(item.move[1])})` : '';
        const turn = item.turn ? `rotate(${num(item.turn)})` : '';
        const scale = item.scale !== undefined && item.scale !== 1 ? `scale(${num(item.scale, 6)})` : '';
        const transform = [move, turn, scale].filter(Boolean).join(' ');
        const inner = item.items.map((child) => this.item(child)).join('');
        const clipped = item.clip ? `<g clip-path="url(#${this.clip(item.clip)})">${inner}</g>` : inner;
        const opacity = item.opacity !== undefined ? ` opacity="${num(item.opacity)}"` : '';
        return this.meant(item, `<g${transform ? ` transform="${transform}"` : ''}${opacity}>${clipped}</g>`);
      }
    }
  }

  private clip(box: { x: number; y: number; w: number; h: number }): string {
    const id = `${this.id}-c${this.clips.length}`;
    this.clips.push(
      `<clipPath id="${id}"><rect x="${num(box.x)}" y="${num(box.y)}" width="${num(box.w)}" height="${num(box.h)}"/></clipPath>`,
    );
    return id;
  }

  private colour(role: Role): string {
    return this.palette[role];
  }

  private shape(item: Item & Look, open: string): string {
    const fill = item.fill && item.fill !== 'none' ? ` fill="${this.colour(item.fill)}"` : '';
    const stroke =
      item.stroke && item.stroke !== 'none'
        ? ` stroke="${this.colour(item.stroke)}"${item.width === undefined || item.width === 1 ? '' : ` stroke-width="${num(item.width)}"`}`
        : '';
    const dash = item.dash ? ` stroke-dasharray="${item.dash.map((d) => num(d)).join(' ')}"` : '';
    const cap = item.cap === 'butt' ? ' stroke-linecap="butt"' : '';
    const opacity = item.opacity !== undefined ? ` opacity="${num(item.opacity)}"` : '';
    return this.meant(item, `${open}${fill}${stroke}${dash}${cap}${opacity}/>`);
  }

  private meant({ part, title }: Meaning, drawn: string): string {
    if (part === undefined && title === undefined) return drawn;
    const inner = `${title === undefined ? '' : `<title>${escaped(title)}</title>`}${drawn}`;
    if (part === undefined) return `<g>${inner}</g>`;
    const chosen = this.options.chosen === part;
    const name = this.options.label?.(part, title) ?? title ?? part;
    const button = this.interactive ? ` role="button" tabindex="0" aria-label="${escaped(name)}"` : '';
    return `<g class="part${chosen ? ' chosen' : ''}" data-part="${escaped(part)}"${button}>${inner}</g>`;
  }
}

const pathData = (segments: readonly PathSegment[]): string =>
  segments
    .map((s) => {
      switch (s[0]) {
        case 'A':
          return `A${num(s[1])} ${num(s[1])} 0 ${s[2] ? 1 : 0} ${s[3] ? 1 : 0} ${num(s[4])} ${num(s[5])}`;
        case 'Z':
          return 'Z';
        default:
          return `${s[0]}${(s.slice(1) as number[]).map((x) => num(x)).join(' ')}`;
      }
    })
    .join('');

const num = (x: number, digits = 3): string => {
  if (!Number.isFinite(x)) throw new RangeError(`a drawing may not contain ${x}`);
  const text = x.toFixed(digits);
  return text.includes('.') ? text.replace(/\.?0+$/, '').replace(/^-0$/, '0') : text;
};

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what XML forbids
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;
/** Half of a pair that stands for one letter, without its other half. */
const LONE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text for XML: marks escaped, what XML forbids taken out. */
const escaped = (words: string): string =>
  safeLines(words)
    .replace(FORBIDDEN, '')
    .replace(LONE, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');

/** For ids that follow from the content. */
const hash = (words: string): string => textHash(words).toString(36);
