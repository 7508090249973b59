/** Where the bar is full: losses beyond it are as bad as can be, dB. */
const FULL = 20;

/** The power lost at a stage, on one scale for all stages: the longest bar is where to work. Empty where nothing is lost. */
export function LossBar({ loss }: { readonly loss: number | undefined }) {
  const share = loss === undefined ? undefined : Math.min(1, Math.max(0, loss / FULL));
  return (
    <svg class="level" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      {share !== undefined && <rect class="level-ground" x="0" y="2" width="100" height="2" />}
      {share !== undefined && <rect class="level-full" x="0" y="1" width={share * 100} height="4" />}
    </svg>
  );
}
