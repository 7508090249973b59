import { circle, group, line, rect, text } from '../../scene/build.ts';
import type { Item, Scene } from '../../scene/scene.ts';
import { paper as texts } from '../../words/index.ts';
import { fold } from '../pages/words.ts';
import {
  type Block,
  BOTTOM,
  BOTTOM_FULL_SIZE,
  HEADING,
  PAGE_BODY,
  PAGE_MARGIN,
  PAGE_SMALL,
  PAPERS,
  type Page,
  type PageLayout,
  type PaperName,
  type Sheet,
  TITLE,
  TOP,
  testRuler,
  USUAL_LAYOUT,
} from './page.ts';
import type { AnySheetId } from './sheet-ids.ts';
import { tiled } from './tiles.ts';

export interface SheetHead {
  readonly id: AnySheetId;
  readonly title: string;
  /** Over the first page; default the title. */
  readonly heading?: string;
  readonly file?: string;
  /** Of the set. */
  readonly set: string;
  readonly paper: PaperName;
  readonly layout?: PageLayout;
}

export interface FlowColumn {
  readonly title: string;
  /** Share of the width. */
  readonly share: number;
  readonly anchor?: 'start' | 'end';
}

/** Steps that belong together, and what they look like. */
export interface StepGroup {
  readonly lines: readonly string[];
  readonly picture?: Scene;
}

/** A step to be ticked, with notes beside it. */
export interface CheckedStep {
  readonly act: string;
  /** Under it, soft. */
  readonly about?: string;
  readonly notes: readonly { readonly label: string; readonly words: string }[];
}

/** A page as it was laid out. */
interface DonePage extends Pick<Page, 'filled' | 'headings'> {
  readonly blocks: Block[];
  readonly fullSize: boolean;
}

/** Width of a picture beside steps, and what is left free before it. */
const STEP_PICTURE = 66;
const STEP_GUTTER = 12;
/** Between two steps. */
const STEP_SPACE = 1.1;

/** Of a step with its box and number, and of the labels of notes in the column beside it. */
const ACT_WIDTH = 92;
const ACT_INDENT = 12;
const NOTE_GUTTER = 6;
const NOTE_LABEL = 13;

/** Height of a line of text over its size. */
const LEADING = 1.36;

/** Lays words, tables and drawings down a page and on to the next. All lengths mm. */
export class Flow {
  readonly width: number;
  readonly left = PAGE_MARGIN;
  y = TOP;
  private readonly head: SheetHead;
  private readonly paper: { readonly width: number; readonly height: number };
  private blocks: Block[] = [];
  private readonly done: DonePage[] = [];
  readonly layout: PageLayout;
  /** Headings of sections on this page, and on those before it. */
  private headings = 0;
  private headingsBefore = 0;
  /** Whether something on this page is at full size: it then has the test ruler at its foot. */
  private fullSize = false;

  constructor(head: SheetHead) {
    this.head = head;
    this.layout = head.layout ?? USUAL_LAYOUT;
    this.paper = PAPERS[head.paper];
    this.width = this.paper.width - 2 * PAGE_MARGIN;
    this.title(head.heading ?? head.title);
  }

  get bottom(): number {
    return this.paper.height - (this.fullSize ? BOTTOM_FULL_SIZE : BOTTOM);
  }
  /** Where the matter of a page ends that has something at full size. */
  private get fullSizeBottom(): number {
    return this.paper.height - BOTTOM_FULL_SIZE;
  }
  /** Height of a page with something at full size. */
  private get fullSizeHeight(): number {
    return this.fullSizeBottom - TOP;
  }
  /** What `heading` and `need` keep free so that something of this height, at full size, stays on the page. */
  fullSizeNeed(height: number): number {
    return height + this.bottom - this.fullSizeBottom;
  }
  /**
   * The same for a template and what stands over it, so that they do not part where both fit a page.
   * @param template its height. @param over kept free above it.
   */
  templateNeed(template: number, over: number): number {
    return this.fullSizeNeed(template < this.fullSizeHeight - 16 ? template + over : 40);
  }
  private get fullSizeRoom(): number {
    return this.fullSizeBottom - this.y;
  }
  /** Height left on this page. */
  get room(): number {
    return this.bottom - this.y;
  }

  /** Begin a new page unless so much is left. */
  need(height: number): this {
    if (this.room < height && this.blocks.length > 0) this.turn();
    return this;
  }

  turn(): this {
    const { blocks, headings, fullSize } = this;
    this.done.push({ blocks, headings, fullSize, filled: (this.y - TOP) / (this.bottom - TOP) });
    this.headingsBefore += headings;
    this.headings = 0;
    this.fullSize = false;
    this.blocks = [];
    this.y = TOP;
    return this;
  }

  add(tag: Block['tag'], items: readonly Item[], alt?: string): this {
    this.blocks.push({ tag, items, alt });
    return this;
  }

  space(height: number): this {
    this.y += height;
    return this;
  }

  private lines(words: string, size: number, x: number, room: number, more: { bold?: boolean; role?: 'soft' } = {}) {
    const rows = fold(words, size, room, more.bold);
    const items = rows.map((row, i) => text([x, this.y + size * (1 + LEADING * i)], row, size, more));
    return { items, height: rows.length * size * LEADING };
  }

  private title(words: string): void {
    const { items, height } = this.lines(words, TITLE, this.left, this.width, { bold: true });
    this.add('H1', items).space(height + 2);
  }

  heading(words: string, keep = 24): this {
    if (this.layout.newPageAt === this.headingsBefore + this.headings && this.blocks.length > 0) this.turn();
    this.need(HEADING * 2 + keep);
    this.headings++;
    this.y += 2.4 * this.layout.tight;
    const { items, height } = this.lines(words, HEADING, this.left, this.width, { bold: true });
    return this.add('H2', items).space(height + 0.8);
  }

  para(
    words: string,
    options: { small?: boolean; bold?: boolean; soft?: boolean; indent?: number; width?: number } = {},
  ): this {
    const size = options.small ? PAGE_SMALL : PAGE_BODY;
    const x = this.left + (options.indent ?? 0);
    const room = (options.width ?? this.width) - (options.indent ?? 0);
    const rows = fold(words, size, room, options.bold);
    let from = 0;
    while (from < rows.length) {
      this.need(size * LEADING + 1);
      const fit = Math.max(1, Math.floor(this.room / (size * LEADING)));
      const part = rows.slice(from, from + fit);
      this.add(
        'P',
        part.map((row, i) =>
          text([x, this.y + size * (1 + LEADING * i)], row, size, {
            bold: options.bold,
            role: options.soft ? 'soft' : undefined,
          }),
        ),
      );
      this.y += part.length * size * LEADING;
      from += fit;
    }
    return this.space(0.9);
  }

  /** A list with a mark before each line: a box to tick, a number, or a dot. */
  list(entries: readonly string[], mark: 'box' | 'number' | 'dot' = 'dot', size = PAGE_BODY): this {
    const indent = mark === 'dot' ? 4 : 8;
    entries.forEach((entry, k) => {
      const rows = fold(entry, size, this.width - indent - (mark === 'box' ? 1 : 0));
      this.need(Math.min(rows.length * size * LEADING, 60) + 1);
      const y = this.y + size;
      const items: Item[] = [];
      if (mark === 'dot') items.push(circle([this.left + 1.2, y - size * 0.32], 0.6, { fill: 'ink' }));
      if (mark === 'number') items.push(text([this.left + 5.5, y], `${k + 1}`, size, { anchor: 'end', bold: true }));
      if (mark === 'box') items.push(tickBox(this.left + 0.5, y - size * 0.92));
      items.push(...rows.map((row, i) => text([this.left + indent, y + i * size * LEADING], row, size)));
      this.add('P', items);
      this.y += rows.length * size * LEADING + 1.1 * this.layout.tight;
    });
    return this.space(0.8);
  }

  /** Height that the first of several steps takes: what their heading must keep below it. */
  firstStepHeight(groups: readonly StepGroup[]): number {
    const [first] = groups;
    if (!first) return 0;
    const lineHeight = PAGE_BODY * LEADING;
    const room = this.stepWidth(groups);
    const high = first.lines.reduce(
      (sum, entry) => sum + fold(entry, PAGE_BODY, room).length * lineHeight + STEP_SPACE,
      0,
    );
    return Math.max(high, first.picture?.height ?? 0) + 1;
  }

  private stepWidth(groups: readonly StepGroup[]): number {
    return this.width - (groups.some(({ picture }) => picture) ? STEP_PICTURE + STEP_GUTTER : 0) - 8;
  }

  /**
   * Steps in numbered lines, counted through. Pictures stand in a column beside them, each with the numbers of
   * the steps that it shows and not above the first of them.
   */
  steps(groups: readonly StepGroup[]): this {
    const lineHeight = PAGE_BODY * LEADING;
    const isPictured = groups.some(({ picture }) => picture);
    const room = this.stepWidth(groups);
    const between = STEP_SPACE * this.layout.tight;
    let number = 0;
    let below = this.y;
    // On the line of the heading.
    if (isPictured)
      this.add('P', [
        text([this.left + this.width, this.y - 2], scaleNote(groups), PAGE_SMALL, { anchor: 'end', role: 'soft' }),
      ]);
    for (const { lines, picture } of groups) {
      const folded = lines.map((entry) => fold(entry, PAGE_BODY, room));
      const high = folded.reduce((sum, rows) => sum + rows.length * lineHeight + between, 0);
      const pictureAt = Math.max(this.y, below);
      if (this.room < high || (picture && pictureAt + picture.height > this.bottom)) {
        this.turn();
        below = this.y;
      }
      if (picture) {
        const y = Math.max(this.y, below);
        this.stepPicture(picture, y, texts.steps(number + 1, number + lines.length));
        below = y + picture.height + 2;
      }
      for (const rows of folded) {
        const y = this.y + PAGE_BODY;
        number++;
        this.add('P', [
          text([this.left + 5.5, y], `${number}`, PAGE_BODY, { anchor: 'end', bold: true }),
          ...rows.map((row, i) => text([this.left + 8, y + i * lineHeight], row, PAGE_BODY)),
        ]);
        this.y += rows.length * lineHeight + between;
      }
    }
    this.y = Math.max(this.y, below);
    return this.space(0.8);
  }

  /** A line over the whole width. */
  private rule(width: number, y = this.y): Item {
    return line([this.left, y], [this.left + this.width, y], { stroke: 'soft', width });
  }

  /** Numbered steps with boxes to tick, counted through; what each is to show stands in a column beside it. */
  checkedSteps(steps: readonly CheckedStep[]): this {
    const { size } = this.layout;
    const lineHeight = size * LEADING;
    const between = 2.4 * this.layout.tight;
    const notesAt = this.left + ACT_WIDTH + NOTE_GUTTER;
    const notesWidth = this.width - ACT_WIDTH - NOTE_GUTTER - NOTE_LABEL;
    steps.forEach(({ act, about = '', notes }, k) => {
      const acts = fold(act, size, ACT_WIDTH - ACT_INDENT);
      const abouts = about === '' ? [] : fold(about, size, ACT_WIDTH - ACT_INDENT);
      const beside = notes.flatMap(({ label, words }) =>
        fold(words, size, notesWidth).map((row, i) => ({ label: i === 0 ? label : '', row })),
      );
      const height = Math.max(acts.length + abouts.length, beside.length) * lineHeight + between;
      this.need(height);
      const y = this.y + size;
      if (k > 0) this.add('Artifact', [this.rule(0.12, this.y - between / 2)]);
      this.add('P', [
        tickBox(this.left + 0.5, this.y + 0.2),
        text([this.left + ACT_INDENT - 2, y], `${k + 1}`, size, { anchor: 'end', bold: true }),
        ...[...acts, ...abouts].map((row, i) =>
          text([this.left + ACT_INDENT, y + i * lineHeight], row, size, i < acts.length ? {} : { role: 'soft' }),
        ),
      ]);
      this.add(
        'P',
        beside.flatMap(({ label, row }, i) => [
          ...(label === '' ? [] : [text([notesAt, y + i * lineHeight], label, size, { bold: true })]),
          text([notesAt + NOTE_LABEL, y + i * lineHeight], row, size),
        ]),
      );
      this.y += height;
    });
    return this.space(0.8);
  }

  private stepPicture(picture: Scene, y: number, numbers: string): void {
    const x = this.left + this.width - STEP_PICTURE;
    this.add(
      'Figure',
      [
        text([x - 1.5, y + PAGE_BODY], numbers, PAGE_BODY, { anchor: 'end', bold: true }),
        ...(picture.drawnAt === undefined
          ? []
          : [text([x - 1.5, y + 2.4 * PAGE_BODY], texts.scale(picture.drawnAt), PAGE_SMALL, { anchor: 'end' })]),
        group(picture.items, { move: [x, y] }),
      ],
      texts.figure(picture),
    );
  }

  /** A table whose head is repeated on every page; a column titled "✓" has boxes to tick. */
  table(
    columns: readonly FlowColumn[],
    rows: readonly (readonly string[])[],
    options: { size?: number; gap?: number } = {},
  ): this {
    const size = options.size ?? this.layout.size;
    /** Between rows. */
    const between = (options.gap ?? 2) * this.layout.tight;
    const shares = columns.reduce((sum, c) => sum + c.share, 0);
    const widths = columns.map((c) => (c.share / shares) * this.width);
    const at = widths.map((_, i) => this.left + widths.slice(0, i).reduce((a, b) => a + b, 0));
    const gap = 3;
    const put = (cells: readonly string[], bold: boolean): { items: Item[]; height: number } => {
      const items: Item[] = [];
      let most = 1;
      cells.forEach((cell, i) => {
        const { anchor = 'start', title } = columns[i];
        if (title === '✓') {
          if (!bold) items.push(tickBox(at[i] + 0.5, this.y + 1.1));
          return;
        }
        const lines = fold(cell, size, widths[i] - gap, bold);
        most = Math.max(most, lines.length);
        const x = anchor === 'end' ? at[i] + widths[i] - gap : at[i];
        lines.forEach((row, k) => {
          if (row)
            items.push(text([x, this.y + 0.6 * between + size * (1 + LEADING * k)], row, size, { anchor, bold }));
        });
      });
      return { items, height: most * size * LEADING + between };
    };
    const head = (): void => {
      const { items, height } = put(
        columns.map((c) => c.title),
        true,
      );
      this.add('P', items);
      this.y += height;
      this.add('Artifact', [this.rule(0.3)]);
    };
    this.need(20);
    head();
    for (const cells of rows) {
      const { height } = put(cells, false);
      if (this.room < height) {
        this.turn();
        head();
      }
      this.add('P', put(cells, false).items);
      this.y += height;
      this.add('Artifact', [this.rule(0.12)]);
    }
    return this.space(2.5);
  }

  /** A drawing made smaller or larger to the room there is; drawings in mm are left at their size where they fit. */
  figure(scene: Scene, options: { height?: number; width?: number; scale?: number } = {}): this {
    const most = options.width ?? this.width;
    const high = options.height ?? 120;
    const fit = Math.min(most / scene.width, high / scene.height);
    const scale = options.scale ?? (scene.unit === 'mm' ? Math.min(1, fit) : fit);
    this.need(scene.height * scale + 2);
    const x = this.left + (this.width - scene.width * scale) / 2;
    this.add('Figure', [group(scene.items, { move: [x, this.y], scale })], texts.figure(scene));
    return this.space(scene.height * scale + 2);
  }

  /** Drawings beside each other, each as wide as the other. */
  figures(scenes: readonly Scene[], gap = 6): this {
    const width = (this.width - gap * (scenes.length - 1)) / scenes.length;
    const height = Math.max(...scenes.map((scene) => (scene.height * width) / scene.width));
    this.need(height + 2);
    for (const [i, scene] of scenes.entries()) {
      const move = [this.left + i * (width + gap), this.y] as const;
      this.add('Figure', [group(scene.items, { move, scale: width / scene.width })], texts.figure(scene));
    }
    return this.space(height + 2);
  }

  /** A drawing at full size, over as many pages as it takes. */
  template(items: readonly Item[], size: { w: number; h: number }, alt: string): this {
    const page = { w: this.width, h: this.fullSizeHeight - 9 };
    // What fits a page whole is not cut, but put on the next.
    if (size.h > this.fullSizeRoom && size.h <= page.h + 9 && size.w <= page.w) this.turn();
    const whole = size.w <= page.w && size.h <= Math.max(this.fullSizeRoom, page.h);
    const tiles = tiled(items, size, whole ? { w: page.w, h: Infinity } : page);
    tiles.forEach((tile, k) => {
      if (tiles.length > 1) {
        if (this.fullSizeRoom < tile.h + 8) this.turn();
        const [row, column] = [tile.row + 1, tile.column + 1];
        this.para(texts.tile({ tile: k + 1, tiles: tiles.length, row, column }), { small: true, bold: true });
      }
      this.fullSize = true;
      const x = this.left + (this.width - tile.w) / 2;
      this.add(
        'Figure',
        [group(tile.items, { move: [x, this.y] })],
        tiles.length > 1 ? texts.tileAlt({ alt, tile: k + 1 }) : alt,
      );
      this.space(tile.h + 3);
    });
    return this;
  }

  finish(description?: string): Sheet {
    if (this.blocks.length > 0) this.turn();
    const { title, set, id, file = id } = this.head;
    const total = this.done.length;
    const pages = this.done.map(({ blocks, fullSize, filled, headings }, k): Page => {
      const all = [...this.furniture(k, total), ...blocks, ...(fullSize ? testRuler(this.paper) : [])];
      const items = all.flatMap((b) => b.items);
      return {
        blocks: all,
        filled,
        headings,
        scene: {
          unit: 'mm',
          width: this.paper.width,
          height: this.paper.height,
          title: total > 1 ? texts.pageOf({ set, title, page: k + 1, pages: total }) : texts.pageTitle({ set, title }),
          description: description ?? texts.description({ set, title }),
          items,
          drawnAt: fullSize ? 1 : undefined,
        },
      };
    });
    return { id, title, file, fullSize: this.done.some((page) => page.fullSize), pages };
  }

  private furniture(k: number, total: number): Block[] {
    const { set, title } = this.head;
    const y = TOP - 7;
    const name = fold(set, PAGE_SMALL, this.width * 0.55)[0];
    const right = fold(title, PAGE_SMALL, this.width * 0.4)[0];
    const foot = this.paper.height - 9;
    return [
      {
        tag: 'Artifact',
        items: [
          text([this.left, y], name, PAGE_SMALL, { role: 'soft' }),
          text([this.left + this.width, y], right, PAGE_SMALL, { role: 'soft', anchor: 'end' }),
          line([this.left, y + 1.6], [this.left + this.width, y + 1.6], { stroke: 'soft', width: 0.2 }),
          text([this.left, foot], 'Faintwave', PAGE_SMALL, { role: 'soft' }),
          text([this.left + this.width, foot], total > 1 ? texts.pageNumber(k + 1, total) : '', PAGE_SMALL, {
            role: 'soft',
            anchor: 'end',
          }),
        ].filter((i) => i.kind !== 'text' || i.text !== ''),
      },
    ];
  }
}

/** Over the pictures of steps: which of them are to scale. */
const scaleNote = (groups: readonly StepGroup[]): string =>
  groups.some(({ picture }) => picture?.drawnAt !== undefined) ? texts.scaleWhereGiven : texts.notToScale;

export const tickBox = (x: number, y: number, side = 3): Item => rect(x, y, side, side, { stroke: 'ink', width: 0.25 });
