import { standInWords as texts } from '../../outputs/words/index.ts';
import type { StandIn } from './stand-ins.ts';

/** What the figures use in place of what stands in a field, a sentence with a space before it; '' where nothing does. */
export function standInText(standIns: readonly StandIn[], path: string): string {
  const one = standIns.find((standIn) => standIn.path === path);
  return one ? ` ${texts[one.source](written(one.value))}` : '';
}

const written = (value: unknown): string | undefined =>
  value === undefined ? undefined : typeof value === 'object' ? texts.ofThePart : String(value);
