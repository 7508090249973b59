import { useEffect, useRef, useState } from 'preact/hooks';

/** How far outside the screen still counts as near, so that scrolling finds things drawn. */
const MARGIN = '300px';

interface Place {
  /** Whole pixels; 0 until it is known. */
  readonly width: number;
  /** On the screen or close to it, or about to be printed. */
  readonly isNear: boolean;
}

/** Where an element stands, kept up to date; what is far off need not be drawn again. */
export function useNear() {
  const [place, setPlace] = useState<Place>({ width: 0, isNear: false });
  const holder = useRef<HTMLElement & HTMLDivElement>(null);
  useEffect(() => {
    const sizes = new ResizeObserver(([entry]) => {
      const width = Math.floor(entry.contentRect.width);
      setPlace((old) => (old.width === width ? old : { ...old, width }));
    });
    const sight = new IntersectionObserver(
      ([entry]) =>
        setPlace((old) => (old.isNear === entry.isIntersecting ? old : { ...old, isNear: entry.isIntersecting })),
      { rootMargin: MARGIN },
    );
    const print = () => setPlace((old) => ({ ...old, isNear: true }));
    sizes.observe(holder.current!);
    sight.observe(holder.current!);
    addEventListener('beforeprint', print);
    return () => {
      sizes.disconnect();
      sight.disconnect();
      removeEventListener('beforeprint', print);
    };
  }, []);
  return { ...place, holder };
}

/** The newest value, but only while it is wanted, and only once the figures are on screen. */
export function useLater<T>(value: T, isWanted: boolean): T {
  const [late, setLate] = useState(value);
  useEffect(() => {
    if (!isWanted) return;
    const timer = setTimeout(() => setLate(() => value));
    return () => clearTimeout(timer);
  }, [value, isWanted]);
  return late;
}
