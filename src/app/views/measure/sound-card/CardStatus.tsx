import { useEffect, useRef } from 'preact/hooks';
import { soundCardWords as texts } from '../../../../outputs/words/index.ts';
import { focusIfLost } from '../../../widgets/focus-if-lost.ts';
import type { CardDoing } from './use-card-sound.ts';

interface Props {
  readonly doing: CardDoing;
  readonly problem: string;
  readonly done?: string;
  readonly onStop: () => void;
}

/** What the sound card is doing, what went wrong, or what came of it. */
export function CardStatus({ doing, problem, done, onStop }: Props) {
  const isRecording = typeof doing === 'object';
  const status = useRef<HTMLDivElement>(null);
  // The button that stops goes with the recording.
  useEffect(() => (isRecording ? () => focusIfLost(() => status.current) : undefined), [isRecording]);
  return (
    <div role="status" class="card-status" ref={status} tabIndex={-1}>
      {doing === 'opening' && <p>{texts.opening}</p>}
      {isRecording && <p>{texts.recording(doing.recording)}</p>}
      {doing === 'working' && <p>{texts.working}</p>}
      {isRecording && (
        <button type="button" onClick={onStop}>
          {texts.stop}
        </button>
      )}
      {problem !== '' && <p class="problem">{problem}</p>}
      {!doing && problem === '' && done !== undefined && <p>{done}</p>}
    </div>
  );
}
