/** Every sentence and label that a person sees or hears comes from here: facts in, sentences out. */
export * from './en/index.ts';
