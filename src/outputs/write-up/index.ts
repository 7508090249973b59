export { bestSound } from './best-sound.ts';
export { writeUpHtml } from './html.ts';
export { type WriteUpFile, writeUpMarkdown } from './markdown.ts';
export { barePhoto, type Photo } from './photo.ts';
export { type WriteUp, type WriteUpOptions, type WriteUpPhoto, type WriteUpTable, writeUp } from './write-up.ts';
