import { packages } from 'virtual:handbook';
import { handbookWords as texts } from '../../../outputs/words/index.ts';

/** Packages of others in this page and its command line, each with the text of its licence. */
export function Licences() {
  return (
    <>
      <h2>{texts.licences}</h2>
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
