import { soundCardWords as texts } from '../../../../outputs/words/index.ts';
import type { CardDoing } from './use-card-sound.ts';

interface Props {
  readonly doing: CardDoing;
  readonly problem: string;
  readonly done?: string;
  readonly onStop: () => void;
}

/** What the sound card is doing, what went wrong, or what came of it. */
export function CardStatus({ doing, problem, done, onStop }: Props) {
  const isRecording = doing !== undefined && doing !== 'working';
  return (
    <div role="status" class="card-status">
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
