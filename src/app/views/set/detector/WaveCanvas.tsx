import type { Ref } from 'preact';
import { useEffect, useImperativeHandle, useRef } from 'preact/hooks';
import type { View } from '../../../../outputs/explain/index.ts';
import {
  Columns,
  closer,
  paintNodeWaves,
  type ShownWaves,
  viewWithin,
} from '../../../../outputs/explain/node-waves/index.ts';
import type { Palette } from '../../../../outputs/scene/index.ts';
import { canvasPen } from '../../explain/canvas-pen.ts';
import { pagePalette } from '../../explain/colours.ts';

export interface WaveCanvasHandle {
  readonly element: HTMLCanvasElement;
}

interface Props {
  readonly waves: ShownWaves;
  readonly view: View;
  readonly label: string;
  readonly onView: (view: View) => void;
  readonly handle: Ref<WaveCanvasHandle>;
}

const ROW = 118;
const AXIS = 36;
const CLOSER = 1 / 1.6;

/** The waves under one another; keys, wheel, dragging and two fingers move along and zoom. */
export function WaveCanvas(props: Props) {
  const { waves, view, label, onView } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const now = useRef(props);
  now.current = props;
  const repaint = useRef(() => {});
  const fingers = useRef(new Map<number, number>());
  useImperativeHandle(props.handle, () => ({ element: canvas.current! }), []);

  useEffect(() => {
    const element = canvas.current!;
    const context = element.getContext('2d')!;
    const columns = new Columns();
    let palette: Palette | undefined;
    let frame = 0;
    const pen = canvasPen(context, () => palette!);
    const paint = () => {
      frame = 0;
      const { width, height } = element.getBoundingClientRect();
      if (width === 0) return;
      const density = Math.min(devicePixelRatio || 1, 2);
      const [w, h] = [Math.round(width * density), Math.round(height * density)];
      if (element.width !== w || element.height !== h) [element.width, element.height] = [w, h];
      palette ??= pagePalette(element);
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.fillStyle = palette.paper;
      context.fillRect(0, 0, w, h);
      context.setTransform(density, 0, 0, density, 0, 0);
      paintNodeWaves(pen, now.current.waves, { width, height, view: now.current.view, density }, columns);
    };
    const soon = () => {
      if (frame === 0) frame = requestAnimationFrame(paint);
    };
    repaint.current = soon;
    const restyle = () => {
      palette = undefined;
      soon();
    };
    const size = new ResizeObserver(soon);
    size.observe(element);
    const dark = matchMedia('(prefers-color-scheme: dark)');
    dark.addEventListener('change', restyle);
    const themed = new MutationObserver(restyle);
    themed.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    // Preact listens to the wheel passively; this one keeps the page still while it zooms.
    const wheel = (event: WheelEvent) => {
      // Merely scrolling past must not catch: only once clicked into, or with Ctrl.
      if (document.activeElement !== element.parentElement && !event.ctrlKey) return;
      event.preventDefault();
      const lines = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1;
      const { view: v, waves: w, onView: show } = now.current;
      if (Math.abs(event.deltaX) > Math.abs(event.deltaY))
        show(viewWithin({ ...v, from: v.from + (v.span * event.deltaX * lines) / element.clientWidth }, w));
      else show(closer(v, Math.exp(event.deltaY * lines * (event.ctrlKey ? 0.012 : 0.0022)), share(event.clientX), w));
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => {
      cancelAnimationFrame(frame);
      size.disconnect();
      themed.disconnect();
      dark.removeEventListener('change', restyle);
      element.removeEventListener('wheel', wheel);
    };
  }, []);
  useEffect(() => repaint.current());

  const share = (clientX: number): number => {
    const box = canvas.current!.getBoundingClientRect();
    return Math.min(1, Math.max(0, (clientX - box.left) / box.width));
  };
  const key = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const along = (by: number) => viewWithin({ ...view, from: view.from + by * view.span }, waves);
    const next: Record<string, () => View> = {
      '+': () => closer(view, CLOSER, 0.5, waves),
      '=': () => closer(view, CLOSER, 0.5, waves),
      '-': () => closer(view, 1 / CLOSER, 0.5, waves),
      ArrowUp: () => closer(view, CLOSER, 0.5, waves),
      ArrowDown: () => closer(view, 1 / CLOSER, 0.5, waves),
      ArrowLeft: () => along(-0.2),
      ArrowRight: () => along(0.2),
      Home: () => ({ from: 0, span: waves.duration }),
    };
    const go = next[event.key];
    if (!go) return;
    event.preventDefault();
    event.stopPropagation();
    onView(go());
  };

  return (
    <section
      class="node-waves-window"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: zoomed and moved along from the keyboard
      tabIndex={0}
      aria-label={label}
      onKeyDown={key}
    >
      <canvas
        ref={canvas}
        style={{ height: `${AXIS + ROW * Math.max(1, waves.waves.length)}px` }}
        onPointerDown={(event) => {
          fingers.current.set(event.pointerId, event.clientX);
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={(event) => {
          const held = fingers.current;
          const before = held.get(event.pointerId);
          if (before === undefined) return;
          const apart = spread(held);
          held.set(event.pointerId, event.clientX);
          if (held.size === 1) {
            const by = ((before - event.clientX) / event.currentTarget.clientWidth) * view.span;
            onView(viewWithin({ ...view, from: view.from + by }, waves));
          } else if (held.size === 2 && apart > 8 && spread(held) > 8) {
            const middle = [...held.values()].reduce((a, b) => a + b) / 2;
            onView(closer(view, apart / spread(held), share(middle), waves));
          }
        }}
        onPointerUp={(event) => fingers.current.delete(event.pointerId)}
        onPointerCancel={(event) => fingers.current.delete(event.pointerId)}
      />
    </section>
  );
}

const spread = (held: ReadonlyMap<number, number>): number => {
  const [a, b] = [...held.values()];
  return b === undefined ? 0 : Math.abs(a - b);
};
