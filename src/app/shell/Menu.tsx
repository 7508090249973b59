import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';

interface Props {
  label: string;
  /** A sign in place of the label, which is then only read out. */
  icon?: string;
  children: ComponentChildren;
}

/** Least distance of an unfolded list from the edge of the window, px. */
const EDGE = 8;

/** A button that unfolds a short list of buttons; Escape or a click elsewhere folds it. */
export function Menu({ label, icon, children }: Props) {
  const [open, setOpen] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const outside = (event: Event) => {
      if (!place.current?.contains(event.target as Node)) setOpen(false);
    };
    document.addEventListener('pointerdown', outside);
    document.addEventListener('focusin', outside);
    return () => {
      document.removeEventListener('pointerdown', outside);
      document.removeEventListener('focusin', outside);
    };
  }, [open]);
  // It hangs from the right end of its button; where that would leave the window at the left it moves in.
  useLayoutEffect(() => {
    const unfolded = list.current;
    const outside = unfolded ? EDGE - unfolded.getBoundingClientRect().left : 0;
    if (unfolded && outside > 0) unfolded.style.right = `${-outside}px`;
  }, [open]);
  /** What is chosen may take the focus; else it goes on from the menu's own button. */
  const close = () => {
    setOpen(false);
    place.current?.querySelector('button')?.focus();
  };
  const fold = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && open) close();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape folds the list from anywhere inside it
    <div class="menu" ref={place} onKeyDown={fold}>
      <button
        type="button"
        class={icon && 'icon'}
        aria-expanded={open}
        onClick={() => setOpen(!open)}
        title={icon && label}
      >
        {icon ? <span class="visually-hidden">{label}</span> : label} <span aria-hidden="true">{icon ?? '▾'}</span>
      </button>
      {open && (
        // biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside are what is pressed; this only folds
        // biome-ignore lint/a11y/useKeyWithClickEvents: a button pressed by key sends a click as well
        <div class="menu-list" ref={list} onClick={close}>
          {children}
        </div>
      )}
    </div>
  );
}
