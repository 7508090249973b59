/** The little of pdfkit that the sheets use; its own types would bring those of Node along. */
declare module 'pdfkit' {
  type Points = readonly [number, number];
  interface Structure {
    add(child: Structure | (() => void)): Structure;
    end(): void;
  }
  interface Outline {
    addItem(title: string, options?: { expanded?: boolean }): Outline;
  }
  export default class PDFDocument {
    constructor(options: Record<string, unknown>);
    readonly outline: Outline;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    registerFont(name: string, source: Uint8Array): this;
    addPage(options: Record<string, unknown>): this;
    save(): this;
    restore(): this;
    scale(factor: number): this;
    translate(x: number, y: number): this;
    rotate(degrees: number, options?: { origin?: Points | number[] }): this;
    opacity(value: number): this;
    lineWidth(mm: number): this;
    lineCap(cap: 'butt' | 'round'): this;
    lineJoin(join: 'round' | 'miter'): this;
    dash(length: number | number[], options?: { space?: number; phase?: number }): this;
    undash(): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    path(data: string): this;
    circle(x: number, y: number, radius: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    roundedRect(x: number, y: number, width: number, height: number, radius: number): this;
    closePath(): this;
    clip(): this;
    fill(colour: string): this;
    stroke(colour: string): this;
    fillAndStroke(fill: string, stroke: string): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    image(address: string, x: number, y: number, size: { width: number; height: number }): this;
    font(name: string): this;
    fontSize(size: number): this;
    widthOfString(text: string): number;
    text(text: string, x: number, y: number, options: Record<string, unknown>): this;
    struct(
      tag: string,
      options?: Record<string, unknown> | (() => void),
      children?: (() => void) | Structure[],
    ): Structure;
    addStructure(structure: Structure): this;
    markContent(tag: string, options?: Record<string, unknown>): this;
    endMarkedContent(): this;
    end(): void;
  }
}
