import type { TimeOfDay } from '../../engine/index.ts';

export type When = TimeOfDay;

/** "21:40" in UTC. */
const clock = (date: Date): string => date.toISOString().slice(11, 16);

/** The same moment of another day. */
export function onDay(when: Date, day: string): Date {
  const date = new Date(`${day}T${clock(when)}Z`);
  return Number.isNaN(date.getTime()) ? when : date;
}

export const dayOf = (date: Date): string => date.toISOString().slice(0, 10);
