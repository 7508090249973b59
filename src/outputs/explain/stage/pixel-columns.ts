import { PixelCoverage } from './pixel-coverage.ts';

/** Room for one row of columns, made once and used for every frame. */
export class Columns {
  min: Float64Array = new Float64Array(0);
  max: Float64Array = new Float64Array(0);
  top: Float64Array = new Float64Array(0);
  bottom: Float64Array = new Float64Array(0);
  readonly coverage = new PixelCoverage();
  room(columns: number): void {
    if (this.min.length >= columns) return;
    this.min = new Float64Array(columns);
    this.max = new Float64Array(columns);
    this.top = new Float64Array(columns);
    this.bottom = new Float64Array(columns);
  }
}
