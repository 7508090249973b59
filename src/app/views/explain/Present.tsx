import type { ComponentChildren, RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { explainTexts } from '../../../outputs/words/index.ts';
import { BACKGROUNDS, type SceneBackground } from './colours.ts';

interface Props {
  background: SceneBackground;
  onBackground(background: SceneBackground): void;
  note: string;
  place: string;
  frozen: boolean;
  onFreeze(frozen: boolean): void;
  onNext(): void;
  onBack(): void;
  onZoomKey(): void;
  onZoom(factor: number): void;
  onEnd(): void;
  children: ComponentChildren;
}

/** Controls hide when the pointer has rested so long. */
const REST_MS = 2500;

/** Controls hide when the pointer has rested. */
function useResting() {
  const [resting, setResting] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const stir = () => {
    setResting(false);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => setResting(true), REST_MS);
  };
  useEffect(() => () => clearTimeout(timer.current), []);
  return { resting, stir };
}

/** Within so long of opening a window a browser has left the whole screen, if it does. */
const LEAVING_MS = 2000;

/**
 * Takes the whole screen and the keys while it is there, and gives both back.
 * @returns to be called before a window is opened: a browser then leaves the whole screen, and that ends nothing.
 */
function useWholeScreen(room: RefObject<HTMLDivElement | null>, onLeft: () => void): () => void {
  const left = useRef(onLeft);
  const openedAt = useRef(Number.NEGATIVE_INFINITY);
  left.current = onLeft;
  // Before it is seen: the first key of a clicker must not go to what lies behind.
  useLayoutEffect(() => {
    const element = room.current!;
    const before = document.activeElement as HTMLElement | null;
    element.focus();
    // Where the whole screen is refused the room still fills the window.
    void element.requestFullscreen?.().catch(() => undefined);
    const change = () => {
      if (document.fullscreenElement) return;
      const isForWindow = performance.now() - openedAt.current < LEAVING_MS;
      openedAt.current = Number.NEGATIVE_INFINITY;
      if (!isForWindow) left.current();
    };
    document.addEventListener('fullscreenchange', change);
    return () => {
      document.removeEventListener('fullscreenchange', change);
      if (document.fullscreenElement) void document.exitFullscreen().catch(() => undefined);
      before?.focus?.();
    };
  }, []);
  return () => {
    if (document.fullscreenElement) openedAt.current = performance.now();
  };
}

/**
 * The speaker's note in a window of its own, for the speaker's screen.
 * @param room gets the keys pressed there.
 * @returns what opens it; false where the browser does not let it
 */
function useNoteWindow(room: RefObject<HTMLDivElement | null>, note: string, place: string): () => boolean {
  const opened = useRef<Window | null>(null);
  const write = () => {
    const page = opened.current?.document;
    if (!page || opened.current?.closed) return;
    page.title = explainTexts.presenting.noteWindowTitle;
    const lines = [place, note].map((words) => {
      const line = page.createElement('p');
      line.textContent = words;
      return line;
    });
    page.body.replaceChildren(...lines);
    Object.assign(page.body.style, {
      margin: '1.5rem',
      fontFamily: 'sans-serif',
      fontSize: '1.5rem',
      lineHeight: '1.5',
    });
  };
  useEffect(write, [note, place]);
  useEffect(() => () => opened.current?.close(), []);
  return () => {
    const own = window.open('', 'faintwave-notes', 'popup');
    if (!own) return false;
    opened.current = own;
    own.onkeydown = (event) => {
      const { key, ctrlKey, metaKey, altKey } = event;
      const here = new KeyboardEvent('keydown', { key, ctrlKey, metaKey, altKey, bubbles: true, cancelable: true });
      if (room.current?.dispatchEvent(here) === false) event.preventDefault();
    };
    write();
    return true;
  };
}

/** A pen over the picture. */
function useInk(background: SceneBackground) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const drawing = useRef(false);
  const wipe = () => canvas.current?.getContext('2d')?.clearRect(0, 0, canvas.current.width, canvas.current.height);
  const draw = (event: PointerEvent, begin: boolean) => {
    const element = canvas.current!;
    const box = element.getBoundingClientRect();
    if (element.width !== Math.round(box.width) || element.height !== Math.round(box.height)) {
      element.width = Math.round(box.width);
      element.height = Math.round(box.height);
    }
    const ctx = element.getContext('2d')!;
    ctx.lineWidth = Math.max(4, box.width / 260);
    ctx.lineCap = 'round';
    ctx.lineJoin = 'round';
    ctx.strokeStyle = background === 'dark' || background === 'transparent' ? '#ffd166' : '#c01f1f';
    const [x, y] = [event.clientX - box.left, event.clientY - box.top];
    if (begin) {
      ctx.beginPath();
      ctx.moveTo(x, y);
    }
    ctx.lineTo(x, y);
    ctx.stroke();
  };
  const begin = (event: PointerEvent) => {
    drawing.current = true;
    canvas.current!.setPointerCapture(event.pointerId);
    draw(event, true);
  };
  const go = (event: PointerEvent) => drawing.current && draw(event, false);
  const end = () => {
    drawing.current = false;
  };
  return { canvas, wipe, begin, go, end };
}

/** The stage alone on the whole screen, for an audience or a camera. */
export function Present(props: Props) {
  const { background, children, note } = props;
  const room = useRef<HTMLDivElement>(null);
  const [spot, setSpot] = useState(false);
  const [pen, setPen] = useState(false);
  const [notes, setNotes] = useState(false);
  const [blank, setBlank] = useState(false);
  const openNotes = useNoteWindow(room, note, props.place);
  const { resting, stir } = useResting();
  const ink = useInk(background);
  const openingWindow = useWholeScreen(room, props.onEnd);
  const noteWindow = () => {
    openingWindow();
    // Refused, the note is shown here.
    if (!openNotes()) setNotes(true);
  };
  useEffect(stir, []);

  useEffect(() => {
    // Nothing behind: the page too must let through what an overlay lies on.
    document.documentElement.classList.toggle('explain-clear', background === 'transparent');
    return () => document.documentElement.classList.remove('explain-clear');
  }, [background]);

  const toggles = { spot, setSpot, pen, setPen, notes, setNotes, blank, setBlank, wipe: ink.wipe };
  return (
    <div
      ref={room}
      class={`explain-present is-${background}${resting ? ' is-resting' : ''}${spot ? ' has-spot' : ''}`}
      role="dialog"
      aria-modal="true"
      aria-label={explainTexts.presenting.title}
      tabIndex={-1}
      onKeyDown={(event) => pressed(event, props, toggles)}
      onPointerMove={(event) => {
        stir();
        const element = room.current!;
        element.style.setProperty('--spot-x', `${event.clientX}px`);
        element.style.setProperty('--spot-y', `${event.clientY}px`);
      }}
    >
      <div class="explain-room">{children}</div>
      <canvas
        ref={ink.canvas}
        class={`explain-ink${pen ? ' is-on' : ''}`}
        onPointerDown={ink.begin}
        onPointerMove={ink.go}
        onPointerUp={ink.end}
      />
      <div class="explain-spot" aria-hidden="true" />
      {notes && <p class="explain-say">{note}</p>}
      {blank && (
        <button
          type="button"
          class="explain-blank"
          aria-label={explainTexts.presenting.blank}
          onClick={() => setBlank(false)}
        />
      )}
      <Bar {...props} {...toggles} onNoteWindow={noteWindow} />
    </div>
  );
}

interface Toggles {
  readonly spot: boolean;
  setSpot(on: boolean): void;
  readonly pen: boolean;
  setPen(on: boolean): void;
  readonly notes: boolean;
  setNotes(on: boolean): void;
  /** Nothing is shown: the audience looks at the speaker. */
  readonly blank: boolean;
  setBlank(on: boolean): void;
  wipe(): void;
}

/** A key or a clicker. */
function pressed(event: KeyboardEvent, p: Props, t: Toggles): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (t.blank) {
    event.preventDefault();
    event.stopPropagation();
    t.setBlank(false);
    return;
  }
  const isButton = event.target instanceof HTMLButtonElement;
  if (isButton && (event.key === ' ' || event.key === 'Enter')) return;
  const next = () => {
    t.wipe();
    p.onNext();
  };
  const back = () => {
    t.wipe();
    p.onBack();
  };
  const acts: Record<string, () => void> = {
    ArrowRight: next,
    PageDown: next,
    Enter: next,
    ' ': next,
    ArrowLeft: back,
    PageUp: back,
    Backspace: back,
    ArrowUp: () => p.onZoom(1 / 1.5),
    ArrowDown: () => p.onZoom(1.5),
    '+': () => p.onZoom(1 / 1.5),
    '=': () => p.onZoom(1 / 1.5),
    '-': () => p.onZoom(1.5),
    Escape: () => p.onEnd(),
    z: () => p.onZoomKey(),
    f: () => p.onFreeze(!p.frozen),
    s: () => t.setSpot(!t.spot),
    d: () => t.setPen(!t.pen),
    c: t.wipe,
    b: () => t.setBlank(true),
    '.': () => t.setBlank(true),
    k: () => p.onBackground(BACKGROUNDS[(BACKGROUNDS.indexOf(p.background) + 1) % BACKGROUNDS.length]),
    n: () => t.setNotes(!t.notes),
  };
  const act = acts[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  if (!act) return;
  event.preventDefault();
  event.stopPropagation();
  act();
}

function Bar(props: Props & Toggles & { onNoteWindow(): void }) {
  const { place, frozen, spot, pen, notes } = props;
  const texts = explainTexts.presenting;
  return (
    <div class="explain-bar">
      <button type="button" onClick={() => props.onBack()}>
        {explainTexts.stage.back}
      </button>
      <span aria-live="polite">{place}</span>
      <button type="button" onClick={() => props.onNext()}>
        {explainTexts.stage.next}
      </button>
      <button type="button" onClick={() => props.onZoomKey()}>
        {explainTexts.stage.slowZoom}
      </button>
      <button type="button" aria-pressed={frozen} onClick={() => props.onFreeze(!frozen)}>
        {explainTexts.stage.freeze}
      </button>
      <button type="button" aria-pressed={spot} onClick={() => props.setSpot(!spot)}>
        {texts.spotlight}
      </button>
      <button type="button" aria-pressed={pen} onClick={() => props.setPen(!pen)}>
        {texts.pen}
      </button>
      <button type="button" onClick={props.wipe}>
        {texts.wipe}
      </button>
      <button type="button" aria-pressed={notes} onClick={() => props.setNotes(!notes)}>
        {texts.note}
      </button>
      <button type="button" onClick={props.onNoteWindow}>
        {texts.noteWindow}
      </button>
      <button type="button" onClick={props.onEnd}>
        {texts.end}
      </button>
      <details>
        <summary>{texts.keys}</summary>
        <dl>
          {texts.keyList.map(([key, action]) => (
            <div key={key}>
              <dt>{key}</dt>
              <dd>{action}</dd>
            </div>
          ))}
        </dl>
      </details>
    </div>
  );
}
