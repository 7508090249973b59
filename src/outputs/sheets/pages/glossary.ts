/** Words of the trade that the sheets cannot do without, each with what shows that it is used. */
const WORDS: readonly { readonly word: string; readonly used: RegExp; readonly means: string }[] = [
  {
    word: 'dB',
    used: /\bdB\b(?! SPL)/,
    means: 'decibels, for more and less: 10 dB more is ten times the power, and sounds about twice as loud.',
  },
  {
    word: 'dB SPL',
    used: /dB SPL/,
    means: 'how loud at the ear, over the faintest sound there is: about 30 is a whisper, 60 is talk across a table.',
  },
  { word: 'Direct', used: /\bdirect\b/i, means: 'of voltage or current: steady, as a cell gives it.' },
  { word: 'Lead-in', used: /lead-in/i, means: 'the wire from the aerial into the house.' },
  {
    word: 'Meshed',
    used: /meshed/i,
    means: 'moving vanes right in between the fixed ones: most capacitance, lowest frequency.',
  },
  { word: 'Peak', used: /\bpeak\b/i, means: 'the top of a swing, measured from the middle.' },
  {
    word: 'Q',
    used: /\bQ\b/,
    means:
      'how well a coil or tuned circuit rings: the higher, the narrower the band that it lets in. Loaded: with all that is joined to it.',
  },
  {
    word: 'Strays',
    used: /\bstrays?\b/i,
    means: 'capacitance that nobody fitted: between wires, terminals and turns.',
  },
  { word: 'Tap', used: /\btaps?\b/i, means: 'a wire brought out from a turn between a coil’s two ends.' },
];

/** "Q: how well …", a line for each word that these texts use. */
export function glossary(texts: readonly string[]): string[] {
  const all = texts.join('\n');
  return WORDS.filter(({ used }) => used.test(all)).map(({ word, means }) => `${word}: ${means}`);
}
