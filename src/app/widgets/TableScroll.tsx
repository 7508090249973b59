import type { ComponentChildren } from 'preact';

/** The place of a table that may be larger than it: it scrolls, from the keyboard too. */
export function TableScroll({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it must scroll from the keyboard
    <section class="table-scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
