import { packages } from 'virtual:handbook';
import { useEffect, useRef } from 'preact/hooks';
import { handbookWords as texts } from '../../../outputs/words/index.ts';
import type { handbookAt } from '../../state/handbook.ts';

/** Packages of others in this page and its command line, each with the text of its licence. */
export function Licences({ at }: { readonly at: typeof handbookAt.value }) {
  const title = useRef<HTMLHeadingElement>(null);
  // Asked for again they come into view again.
  useEffect(() => {
    title.current?.scrollIntoView({ block: 'start' });
    title.current?.focus({ preventScroll: true });
  }, [at]);
  return (
    <>
      <h2 ref={title} tabIndex={-1}>
        {texts.licences}
      </h2>
      <p>{texts.licencesOf(packages.length)}</p>
      {packages.map(({ name, version, licence, text }) => (
        <details key={`${name} ${version}`}>
          <summary>{texts.packageLicence(name, version, licence)}</summary>
          <pre>{text === '' ? texts.noLicenceText : text}</pre>
        </details>
      ))}
    </>
  );
}
