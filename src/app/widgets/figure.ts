/** "27 mV peak audio" as figure, unit and what it is of, so that the figure can be large and the last give way. */
export function figureAndUnit(text: string): { readonly figure: string; readonly unit: string; readonly of: string } {
  const match = /^(\S+?)\s*(\s.*|[°%].*)?$/.exec(text);
  const [, unit, of] = /^(dB SPL|\S*)\s*(.*)$/.exec((match?.[2] ?? '').trim())!;
  return { figure: match?.[1] ?? text, unit, of };
}
