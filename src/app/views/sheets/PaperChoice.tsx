import type { PaperName } from '../../../outputs/sheets/index.ts';
import { sheetsView as texts } from '../../../outputs/words/index.ts';

interface Props {
  readonly paper: PaperName;
  readonly onPaper: (paper: PaperName) => void;
}

/** On which paper. */
export function PaperChoice({ paper, onPaper }: Props) {
  return (
    <label>
      {texts.paper}{' '}
      <select value={paper} onChange={(event) => onPaper(event.currentTarget.value as PaperName)}>
        <option value="a4">{texts.papers.a4}</option>
        <option value="letter">{texts.papers.letter}</option>
      </select>
    </label>
  );
}
