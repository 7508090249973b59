import { signal } from '@preact/signals';

/** The chapter of what is shipped of others. */
export const LICENCES = 'licences';

/** What the handbook shows: a chapter, at a heading where one is given; none at its contents. */
export const handbookAt = signal<{ readonly chapter: string; readonly heading?: string } | undefined>(undefined);
