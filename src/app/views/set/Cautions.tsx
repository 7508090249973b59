import type { Caution } from '../../../engine/index.ts';
import { cautionTexts } from '../../../outputs/words/index.ts';
import { useOpenSet } from '../../state/set-context.ts';

/** The cautions that belong where one is working; all of them stand together at the side as well. */
export function Cautions({ about }: { about: Caution['about'] }) {
  const { reception } = useOpenSet();
  const cautions = reception.value?.cautions.filter((caution) => caution.about === about) ?? [];
  if (cautions.length === 0) return null;
  return (
    <div class="caution-here">
      {cautions.map(({ code }) => (
        <p key={code}>{cautionTexts[code]}</p>
      ))}
    </div>
  );
}
