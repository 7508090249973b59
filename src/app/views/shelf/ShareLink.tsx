import { useEffect, useState } from 'preact/hooks';
import { linkOf, readValue, textOfLink } from '../../../engine/index.ts';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { SharedPositionChoice, useSharedPosition, withoutPosition } from './SharedPositionChoice.tsx';
import type { SharedPosition } from './write-up-question.ts';

/** A link to the set in focus; where one's home is stays out of it unless it is chosen. */
export function ShareLink() {
  const { whole } = useOpenSet();
  const [position, setPosition] = useState<SharedPosition>('coarse');
  const [link, setLink] = useState('');
  const [message, setMessage] = useState('');
  const now = whole.value;
  useEffect(() => {
    setLink('');
    setMessage('');
  }, [now, position]);
  const sharing = useSharedPosition(now);
  const copy = async () => {
    const shared = position === 'none' ? withoutPosition(now) : now;
    const read = readValue(shared);
    if (!read.ok) {
      setMessage(texts.noSetToShare);
      return;
    }
    const fragment = linkOf(read.set, shared, { exactPosition: position === 'exact' });
    // Nobody could open it.
    if ('problem' in textOfLink(fragment)) {
      setMessage(texts.linkTooLong);
      return;
    }
    const made = `${location.href.split('#', 1)[0]}#${fragment}`;
    setLink(made);
    try {
      await navigator.clipboard.writeText(made);
      setMessage(texts.linkCopied(made.length));
    } catch {
      setMessage(texts.linkNotCopied);
    }
  };
  return (
    <section class="card share-link" aria-labelledby="share-title">
      <h3 id="share-title">{texts.linkTitle}</h3>
      <p>{texts.linkAbout}</p>
      <SharedPositionChoice name="link-position" {...sharing} position={position} onPosition={setPosition} />
      <button type="button" class="primary" onClick={() => void copy()}>
        {texts.copyLink}
      </button>
      <p role="status">{message}</p>
      {link && (
        <input
          type="text"
          readOnly
          aria-label={texts.linkText}
          value={link}
          onFocus={(event) => event.currentTarget.select()}
        />
      )}
    </section>
  );
}
