import { signal } from '@preact/signals';
import type { GlossaryId } from '../../outputs/words/index.ts';

/** The glossary is open, at a term or at its beginning. */
export const glossaryAt = signal<GlossaryId | 'beginning' | undefined>(undefined);
