import { useState } from 'preact/hooks';

interface Typing {
  readonly currentTarget: { readonly value: string };
}

/**
 * What is typed stands until the field is left, whatever else is drawn again meanwhile.
 * @param text as it stands
 * @param take is given what was typed when the field is left, or at Enter
 */
export function useTyped(text: string, take: (text: string) => void) {
  const [typed, setTyped] = useState<string | undefined>(undefined);
  return {
    value: typed ?? text,
    onInput: (event: Typing) => setTyped(event.currentTarget.value),
    onChange: (event: Typing) => {
      setTyped(undefined);
      take(event.currentTarget.value);
    },
  };
}
