import { baseShift } from '../../scene/boxes.ts';
import { type Palette, PRINT } from '../../scene/palette.ts';
import type { Item, Look, PathItem, TextItem } from '../../scene/scene.ts';
import { sharesAddress } from '../../scene/shares-png.ts';
import { paper as texts } from '../../words/index.ts';
import { printable } from '../pages/words.ts';
import type { Block, Page, Sheet } from './page.ts';

/** Title and fonts of a PDF. */
export interface PdfOptions {
  /** Of the whole file. */
  readonly title: string;
  /** An open font as a TTF file's bytes, and its bold. */
  readonly fonts: { readonly regular: Uint8Array; readonly bold: Uint8Array };
}

type Document = InstanceType<typeof import('pdfkit')['default']>;

/** Points in a millimetre; everything else here is in mm. */
const POINTS = 72 / 25.4;

/**
 * Sheets as one PDF at true size: fonts embedded, a bookmark for each sheet, text and figures tagged. The same sheets
 * give the same bytes.
 * @param sheets as `sheetsFor` has them
 * @param options title of the file, and its fonts
 * @returns bytes of the file
 */
export async function sheetsPdf(sheets: readonly Sheet[], options: PdfOptions): Promise<Uint8Array> {
  const { default: PDFDocument } = await import('pdfkit');
  const doc = new PDFDocument({
    autoFirstPage: false,
    font: null,
    tagged: true,
    displayTitle: true,
    lang: texts.language,
    pdfVersion: '1.7',
    info: { Title: options.title, Creator: 'Faintwave', CreationDate: new Date(0) },
  });
  const chunks: Uint8Array[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    doc.on('data', (chunk) => chunks.push(chunk));
    doc.on('end', () => resolve());
    doc.on('error', reject);
  });
  doc.registerFont('regular', options.fonts.regular);
  doc.registerFont('bold', options.fonts.bold);
  const root = doc.struct('Document');
  doc.addStructure(root);
  for (const sheet of sheets) {
    const section = doc.struct('Sect', { title: sheet.title });
    root.add(section);
    sheet.pages.forEach((page, k) => {
      addPage(doc, page);
      if (k === 0) doc.outline.addItem(sheet.title);
      for (const block of page.blocks) addBlock(doc, section, block);
      doc.restore();
    });
    section.end();
  }
  root.end();
  doc.end();
  await ended;
  return joined(chunks);
}

function addPage(doc: Document, { scene }: Page): void {
  doc.addPage({ size: [scene.width * POINTS, scene.height * POINTS], margin: 0 });
  doc.save();
  doc.scale(POINTS);
  doc.lineJoin('round');
}

function addBlock(doc: Document, section: ReturnType<Document['struct']>, block: Block): void {
  const draw = (): void => {
    for (const item of block.items) drawItem(doc, item, PRINT);
  };
  if (block.tag === 'Artifact') {
    doc.markContent('Artifact', { type: 'Layout' });
    draw();
    doc.endMarkedContent();
  } else section.add(doc.struct(block.tag, block.alt ? { alt: block.alt } : {}, draw));
}

const joined = (chunks: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(chunks.reduce((sum, c) => sum + c.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
};

/** One item of the display list. */
function drawItem(doc: Document, item: Item, palette: Palette): void {
  switch (item.kind) {
    case 'line':
      doc.moveTo(...item.from).lineTo(...item.to);
      paint(doc, item, palette);
      return;
    case 'polyline':
      if (item.points.length === 0) return;
      doc.moveTo(...item.points[0]);
      for (const p of item.points.slice(1)) doc.lineTo(...p);
      if (item.closed) doc.closePath();
      paint(doc, item, palette);
      return;
    case 'path':
      doc.path(pathData(item.segments));
      paint(doc, item, palette);
      return;
    case 'circle':
      doc.circle(...item.centre, item.radius);
      paint(doc, item, palette);
      return;
    case 'rect':
      if (item.radius) doc.roundedRect(item.x, item.y, Math.max(0, item.w), Math.max(0, item.h), item.radius);
      else doc.rect(item.x, item.y, Math.max(0, item.w), Math.max(0, item.h));
      paint(doc, item, palette);
      return;
    case 'text':
      drawText(doc, item, palette);
      return;
    case 'shares': {
      const { x, y, w, h, opacity } = item;
      doc.save();
      if (opacity !== undefined) doc.opacity(opacity);
      doc.image(sharesAddress(item, palette[item.fill]), x, y, { width: w, height: h });
      doc.restore();
      return;
    }
    case 'group':
      doc.save();
      if (item.move) doc.translate(...item.move);
      if (item.turn) doc.rotate(item.turn);
      if (item.scale !== undefined && item.scale !== 1) doc.scale(item.scale);
      if (item.clip) doc.rect(item.clip.x, item.clip.y, item.clip.w, item.clip.h).clip();
      if (item.opacity !== undefined) doc.opacity(item.opacity);
      for (const child of item.items) drawItem(doc, child, palette);
      doc.restore();
  }
}

const pathData = (segments: PathItem['segments']): string =>
  segments
    .map((s) => (s[0] === 'A' ? `A${s[1]} ${s[1]} 0 ${s[2] ? 1 : 0} ${s[3] ? 1 : 0} ${s[4]} ${s[5]}` : s.join(' ')))
    .join(' ');

function paint(doc: Document, look: Look, palette: Palette): void {
  const { stroke = 'none', fill = 'none', width = 1, dash, cap = 'round', opacity } = look;
  doc.save();
  if (opacity !== undefined) doc.opacity(opacity);
  doc.lineWidth(width).lineCap(cap);
  if (dash) doc.dash([...dash]);
  const nothing = fill === 'none' && stroke === 'none';
  if (nothing) doc.opacity(0).fill(palette.paper);
  else if (fill !== 'none' && stroke !== 'none') doc.fillAndStroke(palette[fill], palette[stroke]);
  else if (fill !== 'none') doc.fill(palette[fill]);
  else doc.stroke(palette[stroke]);
  doc.restore();
}

function drawText(doc: Document, item: TextItem, palette: Palette): void {
  const words = printable(item.text);
  if (words === '') return;
  doc.save();
  doc.font(item.bold ? 'bold' : 'regular').fontSize(item.size);
  const [x, y] = item.at;
  if (item.turn) doc.rotate(item.turn, { origin: [x, y] });
  const wide = item.anchor && item.anchor !== 'start' ? doc.widthOfString(words) : 0;
  const left = x - (item.anchor === 'middle' ? wide / 2 : wide);
  const base = y + baseShift(item.sits) * item.size;
  const options = { lineBreak: false, baseline: 'alphabetic', oblique: item.italic ?? false };
  if (item.rim) {
    doc.lineWidth(item.size / 4).strokeColor(palette.paper);
    doc.text(words, left, base, { ...options, stroke: true, fill: false });
  }
  doc.fillColor(palette[item.role ?? 'ink']);
  doc.text(words, left, base, options);
  doc.restore();
}
