import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

interface Actions {
  readonly move: (dx: number, dy: number) => void;
  /** Below 1: nearer. `at` in pixels of the picture. */
  readonly zoom: (factor: number, at: [number, number]) => void;
}

/** Movement below this is a click, px. */
const SLACK = 4;

/**
 * One finger or the mouse moves, two fingers zoom. The wheel zooms while the picture has the focus or Ctrl is held, so that
 * scrolling the page is not caught by it.
 */
export function useDrag(picture: RefObject<HTMLDivElement | null>, actions: Actions) {
  const latest = useRef(actions);
  latest.current = actions;
  const fingers = useRef(new Map<number, [number, number]>());
  const begun = useRef<[number, number] | undefined>(undefined);
  const isDragging = useRef(false);

  const placeOf = (event: MouseEvent): [number, number] => {
    const box = picture.current!.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };

  useEffect(() => {
    const frame = picture.current;
    if (!frame) return;
    const wheel = (event: WheelEvent) => {
      if (!event.ctrlKey && document.activeElement !== frame) return;
      event.preventDefault();
      const lines = event.deltaMode === 1 ? event.deltaY * 16 : event.deltaY;
      latest.current.zoom(1.0016 ** Math.max(-400, Math.min(400, lines)), placeOf(event));
    };
    // The framework's listeners cannot say that they prevent scrolling.
    frame.addEventListener('wheel', wheel, { passive: false });
    return () => frame.removeEventListener('wheel', wheel);
  }, []);

  return {
    onPointerDown(event: PointerEvent) {
      if (event.pointerType === 'mouse' && event.button !== 0) return;
      fingers.current.set(event.pointerId, placeOf(event));
      begun.current = placeOf(event);
      isDragging.current = false;
    },
    onPointerMove(event: PointerEvent) {
      const before = fingers.current.get(event.pointerId);
      if (!before || !begun.current) return;
      const now = placeOf(event);
      if (!isDragging.current) {
        if (Math.hypot(now[0] - begun.current[0], now[1] - begun.current[1]) < SLACK) return;
        isDragging.current = true;
        // Only now: a captured pointer would keep the click from the station under it.
        picture.current?.setPointerCapture(event.pointerId);
      }
      const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
      fingers.current.set(event.pointerId, now);
      if (!other) {
        latest.current.move(now[0] - before[0], now[1] - before[1]);
        return;
      }
      const apart = (a: [number, number]) => Math.max(10, Math.hypot(a[0] - other[0], a[1] - other[1]));
      latest.current.zoom(apart(before) / apart(now), [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]);
    },
    onPointerUp: (event: PointerEvent) => void fingers.current.delete(event.pointerId),
    onPointerCancel: (event: PointerEvent) => void fingers.current.delete(event.pointerId),
    onPointerLeave: (event: PointerEvent) => {
      if (!isDragging.current) fingers.current.delete(event.pointerId);
    },
  };
}
