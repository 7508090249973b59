import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

interface Props {
  label: string;
  children: ComponentChildren;
}

/** A button that unfolds a short list of buttons; Escape or a click elsewhere folds it. */
export function Menu({ label, children }: Props) {
  const [open, setOpen] = useState(false);
  const place = useRef<HTMLDivElement>(null);
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
  const fold = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !open) return;
    setOpen(false);
    place.current?.querySelector('button')?.focus();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape folds the list from anywhere inside it
    <div class="menu" ref={place} onKeyDown={fold}>
      <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {label} <span aria-hidden="true">▾</span>
      </button>
      {open && (
        // biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside are what is pressed; this only folds
        // biome-ignore lint/a11y/useKeyWithClickEvents: a button pressed by key sends a click as well
        <div class="menu-list" onClick={() => setOpen(false)}>
          {children}
        </div>
      )}
    </div>
  );
}
