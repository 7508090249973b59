import type { Ref } from 'preact';
import { useEffect, useImperativeHandle, useLayoutEffect, useRef } from 'preact/hooks';
import {
  Columns,
  drawingOf,
  filled,
  lettersFor,
  limited,
  moved,
  PICTURES,
  type Prepared,
  paintStage,
  paintStagePlayhead,
  type StoryScene,
  stagePlot,
  type View,
  viewAt,
  viewBetween,
  zoomed,
} from '../../../outputs/explain/index.ts';
import type { Palette } from '../../../outputs/scene/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import { faceReady } from '../../style/face.ts';
import { canvasPen } from './canvas-pen.ts';
import { pagePalette, paletteFor, type SceneBackground } from './colours.ts';

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
  background: SceneBackground;
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
  /** The moment that is heard now, s. */
  playhead(): number | undefined;
  handle: Ref<StageHandle>;
}

/** Everything that moves on the stage, kept outside of drawing the page. */
interface Live {
  view: View;
  /** Where the view is going. */
  target: View;
  /** Of the moving picture and of the slow zoom, s. */
  seconds: number;
  zoomSeconds: number;
  /** Where the pointer is, as a share of the width. */
  pointer: number;
  dirty: boolean;
  readonly columns: Columns;
  palette: Palette | undefined;
  playhead: number | undefined;
  /** The span last told of. */
  shownSpan: number;
}

const liveFor = (scene: StoryScene): Live => ({
  view: limited(scene),
  target: limited(scene),
  seconds: 0,
  zoomSeconds: 0,
  pointer: 0.5,
  dirty: true,
  columns: new Columns(),
  palette: undefined,
  playhead: undefined,
  shownSpan: 0,
});

export function StageView(props: Props) {
  const { scene, presented = false } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const now = useRef(props);
  now.current = props;
  const live = useRef<Live>(undefined as unknown as Live);
  live.current ??= liveFor(scene);

  // Another scene begins at its own view; a change of the same scene's settings leaves the view alone. Before the next
  // frame, or a slow zoom asked for while the scene was made would run first and be undone.
  useLayoutEffect(() => {
    const { still, prepared } = now.current;
    const seconds = still && scene.picture ? PICTURES[scene.picture].still(prepared.facts) : 0;
    const view = limited(scene);
    Object.assign(live.current, { view, target: view, seconds, zoomSeconds: 0, shownSpan: 0 });
  }, [scene.title, scene.from, scene.span, scene.picture]);
  useLayoutEffect(() => {
    live.current.dirty = true;
    live.current.palette = undefined;
  });
  useLayoutEffect(() => {
    live.current.zoomSeconds = 0;
  }, [props.zooming]);

  /** Glides to a view, or goes there at once. */
  const go = (view: View, atOnce = now.current.still) => {
    const l = live.current;
    l.target = view;
    if (atOnce) l.view = view;
    l.dirty = true;
  };
  const taken = (view: View, atOnce?: boolean) => {
    go(view, atOnce);
    now.current.onTaken();
  };
  useImperativeHandle(props.handle, () => {
    return {
      view: () => live.current.view,
      seconds: () => live.current.seconds,
      show: (view) => go(limited(view)),
      zoom: (factor) => go(zoomed(live.current.target, factor, live.current.pointer)),
    };
  }, []);
  useEffect(() => animated(canvas.current!, live.current, () => now.current), []);

  const share = (clientX: number): number => {
    const box = canvas.current!.getBoundingClientRect();
    const { scene: shown, presented: large = false } = now.current;
    const letters = lettersFor(box.width, box.height, large);
    const plot = stagePlot({ width: box.width, show: shown.show ?? {}, letters });
    return Math.min(1, Math.max(0, (clientX - box.left - plot.x) / plot.width));
  };
  useEffect(() => {
    // Preact listens to the wheel passively; this one must keep the page from scrolling.
    const element = canvas.current!;
    const wheel = (event: WheelEvent) => {
      if (now.current.scene.rows.length === 0) return;
      event.preventDefault();
      live.current.pointer = share(event.clientX);
      taken(wheeled(event, live.current, element.clientWidth));
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, []);
  const fingers = useFingers(live.current, share, (view) => taken(view, true));

  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || scene.rows.length === 0) return;
    const view = viewByKey(event.key, live.current, scene, presented);
    if (!view) return;
    event.preventDefault();
    event.stopPropagation();
    taken(view);
  };

  return (
    <section
      class="explain-stage"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the wave window is zoomed from the keyboard
      tabIndex={0}
      aria-label={explainTexts.stage.canvas(filled(scene.title, props.prepared.figures))}
      onKeyDown={keys}
    >
      <canvas
        ref={canvas}
        onPointerDown={(event) => scene.rows.length > 0 && fingers.down(event)}
        onPointerMove={fingers.move}
        onPointerUp={fingers.up}
        onPointerCancel={fingers.up}
      />
    </section>
  );
}

/** Draws the stage frame by frame for as long as something changes. @returns what ends it. */
function animated(element: HTMLCanvasElement, l: Live, propsNow: () => Props): () => void {
  const ctx = element.getContext('2d')!;
  let size = { width: 0, height: 0 };
  const fit = () => {
    size = element.getBoundingClientRect();
    const density = Math.min(devicePixelRatio || 1, 2);
    const [w, h] = [Math.max(1, Math.round(size.width * density)), Math.max(1, Math.round(size.height * density))];
    if (element.width !== w || element.height !== h) {
      element.width = w;
      element.height = h;
    }
    l.dirty = true;
  };
  const observer = new ResizeObserver(fit);
  observer.observe(element);
  fit();
  const unwatch = watchTheme(() => {
    l.palette = undefined;
    l.dirty = true;
  });
  const pen = canvasPen(ctx, () => l.palette!);
  // While sound plays only its mark moves, over the picture as it was drawn.
  const kept = new OffscreenCanvas(1, 1);
  let isKept = false;
  const keep = () => {
    kept.width = element.width;
    kept.height = element.height;
    kept.getContext('2d')!.drawImage(element, 0, 0);
  };
  faceReady().then(() => {
    l.dirty = true;
  });
  let frame = 0;
  let last = 0;
  const draw = (at: number) => {
    frame = requestAnimationFrame(draw);
    const dt = Math.min(0.1, last === 0 ? 0 : (at - last) / 1000);
    last = at;
    const p = propsNow();
    step(l, p, dt);
    const playhead = p.playhead();
    const isMarkMoved = playhead !== l.playhead;
    l.playhead = playhead;
    if (l.shownSpan !== l.view.span) {
      l.shownSpan = l.view.span;
      p.onView(l.view);
    }
    if ((!l.dirty && !isMarkMoved) || size.width === 0) return;
    l.palette ??= paletteFor(p.background, pagePalette(element));
    const density = element.width / size.width;
    const stage = { ...drawingOf(p, l.view, l.seconds, size.width, size.height, density), playhead };
    if (l.dirty || !isKept) {
      clear(ctx, element, p.background === 'transparent' ? undefined : l.palette.paper);
      ctx.setTransform(density, 0, 0, density, 0, 0);
      paintStage(pen, { ...stage, playhead: undefined }, l.columns);
      isKept = !l.dirty;
      if (isKept) keep();
    } else {
      clear(ctx, element, undefined);
      ctx.drawImage(kept, 0, 0);
      ctx.setTransform(density, 0, 0, density, 0, 0);
    }
    l.dirty = false;
    paintStagePlayhead(pen, stage);
  };
  frame = requestAnimationFrame(draw);
  return () => {
    cancelAnimationFrame(frame);
    observer.disconnect();
    unwatch();
  };
}

function clear(ctx: CanvasRenderingContext2D, { width, height }: HTMLCanvasElement, paper: string | undefined): void {
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  if (paper === undefined) {
    ctx.clearRect(0, 0, width, height);
    return;
  }
  ctx.fillStyle = paper;
  ctx.fillRect(0, 0, width, height);
}

/** Calls back when the page's colours change. @returns what ends it. */
function watchTheme(changed: () => void): () => void {
  const dark = matchMedia('(prefers-color-scheme: dark)');
  dark.addEventListener('change', changed);
  const themed = new MutationObserver(changed);
  themed.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  return () => {
    themed.disconnect();
    dark.removeEventListener('change', changed);
  };
}

/** Where the wheel leads: along, or closer about the pointer. */
function wheeled(event: WheelEvent, { target, pointer }: Live, width: number): View {
  const lines = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1;
  if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) return moved(target, (event.deltaX * lines) / width);
  // A pinch on a touch pad comes as a wheel with the control key, in smaller steps.
  return zoomed(target, Math.exp(event.deltaY * lines * (event.ctrlKey ? 0.012 : 0.0022)), pointer);
}

/** Where a key leads. Presented, left and right are for the next scene. */
function viewByKey(key: string, { target, pointer }: Live, scene: StoryScene, presented: boolean): View | undefined {
  switch (key) {
    case '+':
    case '=':
    case 'ArrowUp':
      return zoomed(target, 1 / 1.5, pointer);
    case '-':
    case 'ArrowDown':
      return zoomed(target, 1.5, pointer);
    case 'ArrowLeft':
      return presented ? undefined : moved(target, -0.15);
    case 'ArrowRight':
      return presented ? undefined : moved(target, 0.15);
    case 'Home':
      return presented ? undefined : limited(scene);
    default:
      return undefined;
  }
}

/** Dragging with one finger or the mouse, zooming with two fingers. */
function useFingers(l: Live, share: (clientX: number) => number, onView: (view: View) => void) {
  const held = useRef(new Map<number, number>()).current;
  const pinch = useRef(0);
  return {
    down(event: PointerEvent) {
      held.set(event.pointerId, event.clientX);
      if (event.pointerType !== 'mouse' || event.button === 0)
        (event.currentTarget as HTMLCanvasElement).setPointerCapture(event.pointerId);
      pinch.current = spread(held);
    },
    move(event: PointerEvent) {
      const before = held.get(event.pointerId);
      if (before === undefined) {
        l.pointer = share(event.clientX);
        return;
      }
      held.set(event.pointerId, event.clientX);
      if (held.size === 1) {
        const wide = (event.currentTarget as HTMLCanvasElement).clientWidth;
        onView(moved(l.target, (before - event.clientX) / wide));
      } else if (held.size === 2) {
        const apart = spread(held);
        const middle = [...held.values()].reduce((a, b) => a + b) / 2;
        if (pinch.current > 8 && apart > 8) onView(zoomed(l.target, pinch.current / apart, share(middle)));
        pinch.current = apart;
      }
    },
    up: (event: PointerEvent) => void held.delete(event.pointerId),
  };
}

/** How fast the picture follows the wheel: most of the way in so many seconds. */
const FOLLOW = 0.07;

const spread = (held: ReadonlyMap<number, number>): number => {
  const xs = [...held.values()];
  return xs.length === 2 ? Math.abs(xs[0] - xs[1]) : 0;
};

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
  l.view = share === 1 ? target : viewBetween(view, target, share);
  l.dirty = true;
}
