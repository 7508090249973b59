import type { Ref } from 'preact';
import { useEffect, useImperativeHandle, useRef } from 'preact/hooks';
import {
  between,
  Columns,
  filled,
  limited,
  moved,
  PICTURES,
  type Prepared,
  paintStage,
  type StoryScene,
  stagePlot,
  type View,
  viewAt,
  zoomed,
} from '../../../outputs/explain/index.ts';
import type { Palette } from '../../../outputs/scene/index.ts';
import { canvasPen } from './canvas-pen.ts';
import { type Background, pagePalette, paletteFor } from './colours.ts';
import { drawingOf, lettersFor } from './drawing.ts';

/** What others may ask of the stage. */
export interface StageHandle {
  view(): View;
  /** Of the moving picture, s. */
  seconds(): number;
  show(view: View): void;
  zoom(factor: number): void;
}

interface Props {
  scene: StoryScene;
  prepared: Prepared;
  background: Background;
  /** Title and caption are part of the picture, and letters are large. */
  presented?: boolean;
  /** The slow zoom runs. */
  zooming: boolean;
  /** Moving pictures and the slow zoom stand still. */
  frozen: boolean;
  /** The person asked for less movement: no gliding. */
  still: boolean;
  onZoomed(): void;
  /** The person took the zoom in hand. */
  onTaken(): void;
  onView(view: View): void;
  handle: Ref<StageHandle>;
}

/** How fast the picture follows the wheel: most of the way in so many seconds. */
const FOLLOW = 0.07;

export function Stage(props: Props) {
  const { scene, presented = false } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const now = useRef(props);
  now.current = props;
  const live = useRef({
    view: limited(scene),
    target: limited(scene),
    seconds: 0,
    zoomSeconds: 0,
    pointer: 0.5,
    dirty: true,
    columns: new Columns(),
    palette: undefined as Palette | undefined,
    /** The span last told of. */
    told: 0,
  });

  // Another scene begins at its own view; a change of the same scene's settings leaves the view alone.
  useEffect(() => {
    const { still, prepared } = now.current;
    const seconds = still && scene.picture ? PICTURES[scene.picture].still(prepared.facts) : 0;
    Object.assign(live.current, { view: limited(scene), target: limited(scene), seconds, zoomSeconds: 0 });
    live.current.told = 0;
  }, [scene.title, scene.from, scene.span, scene.picture]);
  useEffect(() => {
    live.current.dirty = true;
    live.current.palette = undefined;
  });
  useEffect(() => {
    live.current.zoomSeconds = 0;
  }, [props.zooming]);

  useImperativeHandle(props.handle, () => {
    const go = (view: View) => {
      const l = live.current;
      l.target = limited(view);
      if (now.current.still) l.view = l.target;
      l.dirty = true;
    };
    return {
      view: () => live.current.view,
      seconds: () => live.current.seconds,
      show: go,
      zoom: (factor) => go(zoomed(live.current.target, factor, live.current.pointer)),
    };
  }, []);

  useEffect(() => {
    const element = canvas.current!;
    const ctx = element.getContext('2d')!;
    const l = live.current;
    let cssWidth = 0;
    let cssHeight = 0;
    const fit = () => {
      const box = element.getBoundingClientRect();
      cssWidth = box.width;
      cssHeight = box.height;
      const density = Math.min(devicePixelRatio || 1, 2);
      const [w, h] = [Math.max(1, Math.round(cssWidth * density)), Math.max(1, Math.round(cssHeight * density))];
      if (element.width !== w || element.height !== h) {
        element.width = w;
        element.height = h;
      }
      l.dirty = true;
    };
    const observer = new ResizeObserver(fit);
    observer.observe(element);
    fit();
    const restyle = () => {
      l.palette = undefined;
      l.dirty = true;
    };
    const dark = matchMedia('(prefers-color-scheme: dark)');
    dark.addEventListener('change', restyle);
    const themed = new MutationObserver(restyle);
    themed.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });

    const pen = canvasPen(ctx, () => l.palette!);
    let frame = 0;
    let last = 0;
    const draw = (at: number) => {
      frame = requestAnimationFrame(draw);
      const dt = Math.min(0.1, last === 0 ? 0 : (at - last) / 1000);
      last = at;
      const p = now.current;
      step(l, p, dt);
      if (l.told !== l.view.span) {
        l.told = l.view.span;
        p.onView(l.view);
      }
      if (!l.dirty || cssWidth === 0) return;
      l.dirty = false;
      l.palette ??= paletteFor(p.background, pagePalette(element));
      const density = element.width / cssWidth;
      ctx.setTransform(1, 0, 0, 1, 0, 0);
      if (p.background === 'transparent') ctx.clearRect(0, 0, element.width, element.height);
      else {
        ctx.fillStyle = l.palette.paper;
        ctx.fillRect(0, 0, element.width, element.height);
      }
      ctx.setTransform(density, 0, 0, density, 0, 0);
      paintStage(pen, drawingOf(p, l.view, l.seconds, cssWidth, cssHeight, density), l.columns);
    };
    frame = requestAnimationFrame(draw);
    return () => {
      cancelAnimationFrame(frame);
      observer.disconnect();
      themed.disconnect();
      dark.removeEventListener('change', restyle);
    };
  }, []);

  const share = (clientX: number): number => {
    const box = canvas.current!.getBoundingClientRect();
    const plot = stagePlot({
      width: box.width,
      show: scene.show ?? {},
      letters: lettersFor(box.width, box.height, presented),
    });
    return Math.min(1, Math.max(0, (clientX - box.left - plot.x) / plot.width));
  };
  const go = (view: View) => {
    const l = live.current;
    l.target = view;
    if (now.current.still) l.view = view;
    l.dirty = true;
    now.current.onTaken();
  };
  const fingers = useRef(new Map<number, number>());
  const pinch = useRef(0);

  useEffect(() => {
    // Preact listens to the wheel passively; this one must keep the page from scrolling.
    const element = canvas.current!;
    const wheel = (event: WheelEvent) => {
      if (now.current.scene.rows.length === 0) return;
      event.preventDefault();
      const lines = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1;
      const l = live.current;
      l.pointer = share(event.clientX);
      if (Math.abs(event.deltaX) > Math.abs(event.deltaY))
        go(moved(l.target, (event.deltaX * lines) / element.clientWidth));
      // A pinch on a touch pad comes as a wheel with the control key, in smaller steps.
      else go(zoomed(l.target, Math.exp(event.deltaY * lines * (event.ctrlKey ? 0.012 : 0.0022)), l.pointer));
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, []);

  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || scene.rows.length === 0) return;
    const l = live.current;
    const done: Record<string, () => void> = {
      '+': () => go(zoomed(l.target, 1 / 1.5, l.pointer)),
      '=': () => go(zoomed(l.target, 1 / 1.5, l.pointer)),
      '-': () => go(zoomed(l.target, 1.5, l.pointer)),
      ArrowUp: () => go(zoomed(l.target, 1 / 1.5, l.pointer)),
      ArrowDown: () => go(zoomed(l.target, 1.5, l.pointer)),
      ...(presented
        ? {}
        : {
            ArrowLeft: () => go(moved(l.target, -0.15)),
            ArrowRight: () => go(moved(l.target, 0.15)),
            Home: () => go(limited(scene)),
          }),
    };
    const act = done[event.key];
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };

  return (
    <section
      class="explain-stage"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the wave window is zoomed from the keyboard
      tabIndex={0}
      aria-label={`${filled(scene.title, {})}. Up and down arrows zoom, left and right move along.`}
      onKeyDown={keys}
    >
      <canvas
        ref={canvas}
        onPointerDown={(event) => {
          if (scene.rows.length === 0) return;
          fingers.current.set(event.pointerId, event.clientX);
          if (event.pointerType !== 'mouse' || event.button === 0)
            event.currentTarget.setPointerCapture(event.pointerId);
          pinch.current = spread(fingers.current);
        }}
        onPointerMove={(event) => {
          const l = live.current;
          const held = fingers.current;
          const before = held.get(event.pointerId);
          if (before === undefined) {
            l.pointer = share(event.clientX);
            return;
          }
          held.set(event.pointerId, event.clientX);
          if (held.size === 1) {
            const wide = event.currentTarget.clientWidth;
            const view = moved(l.target, (before - event.clientX) / wide);
            l.view = view;
            go(view);
          } else if (held.size === 2) {
            const apart = spread(held);
            const middle = [...held.values()].reduce((a, b) => a + b) / 2;
            if (pinch.current > 8 && apart > 8) {
              const view = zoomed(l.target, pinch.current / apart, share(middle));
              l.view = view;
              go(view);
            }
            pinch.current = apart;
          }
        }}
        onPointerUp={(event) => fingers.current.delete(event.pointerId)}
        onPointerCancel={(event) => fingers.current.delete(event.pointerId)}
      />
    </section>
  );
}

const spread = (held: ReadonlyMap<number, number>): number => {
  const xs = [...held.values()];
  return xs.length === 2 ? Math.abs(xs[0] - xs[1]) : 0;
};

interface Live {
  view: View;
  target: View;
  seconds: number;
  zoomSeconds: number;
  dirty: boolean;
}

/** One frame's time goes by. */
function step(l: Live, p: Props, dt: number): void {
  if (!p.frozen && p.scene.picture) {
    l.seconds += dt;
    l.dirty = true;
  }
  if (p.zooming && p.scene.to && (!p.frozen || p.still)) {
    l.zoomSeconds += dt;
    const view = viewAt(p.scene, p.still ? 1e9 : l.zoomSeconds);
    l.view = view;
    l.target = view;
    l.dirty = true;
    if (p.still || l.zoomSeconds > p.scene.to.seconds + 3) p.onZoomed();
    return;
  }
  const { view, target } = l;
  const apart = Math.abs(Math.log(view.span / target.span)) + Math.abs(view.from - target.from) / target.span;
  if (apart === 0) return;
  const share = p.still || apart < 2e-3 ? 1 : 1 - Math.exp(-dt / FOLLOW);
  l.view = share === 1 ? target : between(view, target, share);
  l.dirty = true;
}
