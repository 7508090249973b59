import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { BACKGROUNDS, type Background } from './colours.ts';

interface Props {
  background: Background;
  onBackground(background: Background): void;
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

const HELP: readonly (readonly [string, string])[] = [
  ['→ ← or a clicker', 'next, back'],
  ['Z', 'slow zoom'],
  ['+ −', 'zoom by hand'],
  ['F', 'freeze'],
  ['S', 'spotlight'],
  ['D', 'draw, C wipes'],
  ['B', 'background'],
  ['N', 'what to say'],
  ['Esc', 'end'],
];

/** The stage alone on the whole screen, for an audience or a camera. */
export function Present(props: Props) {
  const { background, children, note, place } = props;
  const room = useRef<HTMLDivElement>(null);
  const ink = useRef<HTMLCanvasElement>(null);
  const [spot, setSpot] = useState(false);
  const [pen, setPen] = useState(false);
  const [notes, setNotes] = useState(false);
  const [resting, setResting] = useState(false);
  const now = useRef(props);
  now.current = props;
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const wipe = () => {
    const canvas = ink.current;
    canvas?.getContext('2d')?.clearRect(0, 0, canvas.width, canvas.height);
  };
  const stir = () => {
    setResting(false);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => setResting(true), REST_MS);
  };

  // Before it is seen: the first key of a clicker must not go to what lies behind.
  useLayoutEffect(() => {
    const element = room.current!;
    const before = document.activeElement as HTMLElement | null;
    element.focus();
    // Where the whole screen is refused the room still fills the window.
    void element.requestFullscreen?.().catch(() => undefined);
    const left = () => {
      if (!document.fullscreenElement) now.current.onEnd();
    };
    document.addEventListener('fullscreenchange', left);
    stir();
    return () => {
      clearTimeout(timer.current);
      document.removeEventListener('fullscreenchange', left);
      if (document.fullscreenElement) void document.exitFullscreen().catch(() => undefined);
      before?.focus?.();
    };
  }, []);

  useEffect(() => {
    // Nothing behind: the page too must let through what an overlay lies on.
    document.documentElement.classList.toggle('explain-clear', background === 'transparent');
    return () => document.documentElement.classList.remove('explain-clear');
  }, [background]);

  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const isButton = event.target instanceof HTMLButtonElement;
    if (isButton && (event.key === ' ' || event.key === 'Enter')) return;
    const p = now.current;
    const next = () => {
      wipe();
      p.onNext();
    };
    const back = () => {
      wipe();
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
      s: () => setSpot((on) => !on),
      d: () => setPen((on) => !on),
      c: wipe,
      b: () => p.onBackground(BACKGROUNDS[(BACKGROUNDS.indexOf(p.background) + 1) % BACKGROUNDS.length]),
      n: () => setNotes((on) => !on),
    };
    const act = acts[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };

  const drawing = useRef(false);
  const draw = (event: PointerEvent, begin: boolean) => {
    const canvas = ink.current!;
    const box = canvas.getBoundingClientRect();
    if (canvas.width !== Math.round(box.width) || canvas.height !== Math.round(box.height)) {
      canvas.width = Math.round(box.width);
      canvas.height = Math.round(box.height);
    }
    const ctx = canvas.getContext('2d')!;
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

  return (
    <div
      ref={room}
      class={`explain-present is-${background}${resting ? ' is-resting' : ''}${spot ? ' has-spot' : ''}`}
      role="dialog"
      aria-modal="true"
      aria-label="Presenting"
      tabIndex={-1}
      onKeyDown={keys}
      onPointerMove={(event) => {
        stir();
        const element = room.current!;
        element.style.setProperty('--spot-x', `${event.clientX}px`);
        element.style.setProperty('--spot-y', `${event.clientY}px`);
      }}
    >
      <div class="explain-room">{children}</div>
      <canvas
        ref={ink}
        class={`explain-ink${pen ? ' is-on' : ''}`}
        onPointerDown={(event) => {
          drawing.current = true;
          event.currentTarget.setPointerCapture(event.pointerId);
          draw(event, true);
        }}
        onPointerMove={(event) => drawing.current && draw(event, false)}
        onPointerUp={() => {
          drawing.current = false;
        }}
      />
      <div class="explain-spot" aria-hidden="true" />
      {notes && <p class="explain-say">{note}</p>}
      <div class="explain-bar">
        <button type="button" onClick={() => now.current.onBack()}>
          Back
        </button>
        <span aria-live="polite">{place}</span>
        <button type="button" onClick={() => now.current.onNext()}>
          Next
        </button>
        <button type="button" onClick={() => now.current.onZoomKey()}>
          Zoom slowly
        </button>
        <button type="button" aria-pressed={props.frozen} onClick={() => props.onFreeze(!props.frozen)}>
          Freeze
        </button>
        <button type="button" aria-pressed={spot} onClick={() => setSpot(!spot)}>
          Spotlight
        </button>
        <button type="button" aria-pressed={pen} onClick={() => setPen(!pen)}>
          Pen
        </button>
        <button type="button" onClick={wipe}>
          Wipe
        </button>
        <button type="button" aria-pressed={notes} onClick={() => setNotes(!notes)}>
          What to say
        </button>
        <button type="button" onClick={props.onEnd}>
          End
        </button>
        <details>
          <summary>Keys</summary>
          <dl>
            {HELP.map(([key, what]) => (
              <div key={key}>
                <dt>{key}</dt>
                <dd>{what}</dd>
              </div>
            ))}
          </dl>
        </details>
      </div>
    </div>
  );
}
