import { useEffect, useMemo, useState } from 'preact/hooks';
import { linkOf, readValue, textOfLink, valueAtPath, withValueAt } from '../../../engine/index.ts';
import { shelfWords as texts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';

const POSITION = ['place', 'position'];
type Shared = keyof typeof texts.positions;

/** A link to the set in focus; where one's home is stays out of it unless it is chosen. */
export function ShareLink() {
  const { whole } = useOpenSet();
  const [position, setPosition] = useState<Shared>('coarse');
  const [link, setLink] = useState('');
  const [message, setMessage] = useState('');
  const now = whole.value;
  useEffect(() => {
    setLink('');
    setMessage('');
  }, [now, position]);
  const hasPosition = valueAtPath(now, POSITION) !== undefined;
  const canLeaveOut = useMemo(() => readValue(withValueAt(now, POSITION, undefined)).ok, [now]);
  const choices = (['none', 'coarse', 'exact'] as const).filter((one) => one !== 'none' || canLeaveOut);
  const copy = async () => {
    const shared = position === 'none' ? withValueAt(now, POSITION, undefined) : now;
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
      {hasPosition && (
        <fieldset>
          <legend>{texts.position}</legend>
          {choices.map((one) => (
            <label key={one}>
              <input type="radio" name="shared-position" checked={position === one} onChange={() => setPosition(one)} />{' '}
              {texts.positions[one]}
            </label>
          ))}
        </fieldset>
      )}
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
