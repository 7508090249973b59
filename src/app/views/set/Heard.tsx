import type { Verdict } from '../../../engine/index.ts';

const BARS: Readonly<Record<Verdict, number>> = {
  loud: 4,
  comfortable: 3,
  quiet: 2,
  faint: 1,
  'not heard': 0,
  masked: 0,
  'out of range': 0,
};

/** How prominent a station is, 0 to 4; the same steps on the list, the table and the dial. */
export const barsOf = (verdict: Verdict): number => BARS[verdict];

/** Four bars that fill as the station is heard better; always beside the word, so hidden from readers. */
export function HeardBars({ verdict }: { verdict: Verdict }) {
  const full = barsOf(verdict);
  return (
    <svg class="bars" viewBox="0 0 17 12" width="17" height="12" aria-hidden="true">
      {[0, 1, 2, 3].map((i) => (
        <rect
          key={i}
          x={i * 4.5 + 0.5}
          y={8.5 - i * 2.7}
          width="3"
          height={3 + i * 2.7}
          rx="0.6"
          class={i < full ? 'bar-full' : 'bar-empty'}
        />
      ))}
    </svg>
  );
}
