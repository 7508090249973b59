import type { HTMLAttributes } from 'preact';
import { useMemo } from 'preact/hooks';
import { drawnMarkup } from '../state/trusted.ts';

interface Props extends HTMLAttributes<HTMLDivElement> {
  /** Drawn by this program; its texts are escaped. */
  readonly svg: string;
}

/** A drawing in the page; it stays the same element until it is drawn otherwise, so that what is in it keeps the focus. */
export function DrawnSvg({ svg, ...others }: Props) {
  const markup = useMemo(() => ({ __html: drawnMarkup(svg) }), [svg]);
  return <div {...others} dangerouslySetInnerHTML={markup} />;
}
