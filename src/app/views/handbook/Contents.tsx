import { handbookWords as texts } from '../../../outputs/words/index.ts';
import { handbookAt, LICENCES } from '../../state/handbook.ts';
import type { Chapter, HandbookPart } from './handbook-text.ts';

const PARTS: readonly HandbookPart[] = ['sets', 'page', 'script', 'physics', 'proof'];

/** All chapters, in parts. */
export function Contents({ chapters }: { readonly chapters: readonly Chapter[] }) {
  const at = handbookAt.value?.chapter ?? chapters[0].id;
  return (
    <>
      {PARTS.map((part) => (
        <section key={part}>
          <h2>{texts.parts[part]}</h2>
          <ul>
            {chapters
              .filter((chapter) => chapter.part === part)
              .map(({ id, title }) => (
                <Entry key={id} id={id} title={title} isChosen={id === at} />
              ))}
            {part === 'proof' && <Entry id={LICENCES} title={texts.licences} isChosen={at === LICENCES} />}
          </ul>
        </section>
      ))}
    </>
  );
}

function Entry({ id, title, isChosen }: { readonly id: string; readonly title: string; readonly isChosen: boolean }) {
  return (
    <li>
      <button
        type="button"
        class="link"
        aria-current={isChosen ? 'page' : undefined}
        onClick={() => (handbookAt.value = { chapter: id })}
      >
        {title}
      </button>
    </li>
  );
}
