/** "27 mV peak audio" as figure, unit and what it is of, so that the figure can be large and the last give way. */
export function figureAndUnit(text: string): { readonly figure: string; readonly unit: string; readonly of: string } {
  const match = /^(\S+?)\s*(\s.*|[°%].*)?$/.exec(text);
  const [, unit, of] = /^(dB SPL|\S*)\s*(.*)$/.exec((match?.[2] ?? '').trim())!;
  return { figure: match?.[1] ?? text, unit, of };
}

/** A change as a builder reads it: "+3.2 dB", "−12 dB". */
export const decibelText = (x: number): string => {
  if (!Number.isFinite(x)) return '—';
  if (Math.abs(x) < 0.05) return '0 dB';
  const size = Math.abs(x) >= 10 ? Math.abs(Math.round(x)).toString() : Math.abs(x).toFixed(1);
  return `${x >= 0 ? '+' : '−'}${size} dB`;
};

/** Stations are named by their kilohertz, whole where they are whole: "603 kHz", "1458 kHz". */
export const kilohertz = (frequency: number): string => `${Number((frequency / 1e3).toFixed(1))} kHz`;
