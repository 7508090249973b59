import type { InputHTMLAttributes } from 'preact';
import { useTyped } from './use-typed.ts';

type Props = InputHTMLAttributes<HTMLInputElement> & {
  readonly text: string;
  readonly take: (text: string) => void;
};

/** A field of one line, taken as a whole when it is left. */
export function TypedLine({ text, take, ...rest }: Props) {
  return <input type="text" {...rest} {...useTyped(text, take)} />;
}
