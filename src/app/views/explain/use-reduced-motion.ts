import { useEffect, useMemo, useState } from 'preact/hooks';

/** Whether the person asked their device for less movement. */
export function useReducedMotion(): boolean {
  const query = useMemo(() => matchMedia('(prefers-reduced-motion: reduce)'), []);
  const [reduced, setReduced] = useState(query.matches);
  useEffect(() => {
    const change = () => setReduced(query.matches);
    query.addEventListener('change', change);
    return () => query.removeEventListener('change', change);
  }, [query]);
  return reduced;
}
