import { useEffect, useRef, useState } from 'preact/hooks';

/** The width of an element as it is, in whole pixels, kept up to date. */
export function useWidth() {
  const [width, setWidth] = useState(0);
  const holder = useRef<HTMLElement & HTMLDivElement>(null);
  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => setWidth(Math.floor(entry.contentRect.width)));
    observer.observe(holder.current!);
    return () => observer.disconnect();
  }, []);
  return [width, holder] as const;
}
