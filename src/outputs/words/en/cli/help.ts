/** The help of the command line around what each command says of itself. */
export const helpTexts = {
  tagline: 'Plan, build, hear and explain hand-made AM receivers.',
  usage: (call: string): string => `usage: faintwave ${call}`,
  /** Under the first form of a call. */
  usageMore: (call: string): string => `       faintwave ${call}`,
  generalCall: 'COMMAND [options]',
  start: 'Start here:',
  more: '"faintwave COMMAND --help" lists its options. A SET is a description file or a link that holds one; "-" reads standard input.',
  examples: 'Examples',
  calculations: 'WHAT is one of',
} as const;
