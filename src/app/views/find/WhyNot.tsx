import { useState } from 'preact/hooks';
import { ARRANGEMENTS_FOUND, hasTrait, type LeftOut, noArrangement } from '../../../engine/index.ts';
import {
  boxItemName,
  kindName,
  findView as texts,
  whyLeftOut,
  whyNoArrangement,
} from '../../../outputs/words/index.ts';
import type { Finding } from '../../state/finding.ts';

interface Asked {
  readonly of: LeftOut['of'];
  readonly key: string;
  readonly name: string;
}

/** Asks why a part of the box, or an arrangement, is in none of the sets. */
export function WhyNot({ finding, rest }: { readonly finding: Finding; readonly rest: NonNullable<Finding['rest']> }) {
  const { question, sets } = finding;
  const { box } = question;
  const [chosen, setChosen] = useState('');
  const things: readonly Asked[] = [
    ...box.detectors.map((_, i) => ({
      of: 'detector' as const,
      key: String(i),
      name: boxItemName(box, 'detectors', i),
    })),
    ...ARRANGEMENTS_FOUND.map((kind) => ({
      of: 'arrangement' as const,
      key: kind,
      name: kindName('arrangement', kind),
    })),
    ...box.formers.map((_, i) => ({ of: 'former' as const, key: String(i), name: boxItemName(box, 'formers', i) })),
    ...box.loads.map((_, i) => ({ of: 'load' as const, key: String(i), name: boxItemName(box, 'loads', i) })),
  ];
  const idOf = ({ of, key }: Asked): string => `${of} ${key}`;
  const asked = things.find((one) => idOf(one) === chosen);
  const answerOf = ({ of, key, name }: Asked): string => {
    const within = sets.flatMap(({ choice }, i) => (hasTrait(choice, of, key) ? [i + 1] : []));
    if (within.length > 0) return texts.isIn(name, within);
    const out = rest.leftOut.find((one) => one.of === of && one.trait === key);
    if (out) return whyLeftOut(box, out);
    const arrangement = of === 'arrangement' ? ARRANGEMENTS_FOUND.find((kind) => kind === key) : undefined;
    const why = arrangement && noArrangement(box, arrangement);
    return arrangement && why ? whyNoArrangement(arrangement, why) : texts.noneWith(name);
  };
  return (
    <section class="find-why" aria-labelledby="why-not-title">
      <h2 id="why-not-title">{texts.whyNot}</h2>
      <select
        id="why-not"
        aria-labelledby="why-not-title"
        value={chosen}
        onChange={(event) => setChosen(event.currentTarget.value)}
      >
        <option value="">{texts.whyNotChoose}</option>
        {(['detector', 'arrangement', 'former', 'load'] as const).map((of) => (
          <optgroup key={of} label={texts.groups[of]}>
            {things
              .filter((one) => one.of === of)
              .map((one) => (
                <option key={idOf(one)} value={idOf(one)}>
                  {one.name}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
      <p role="status">{asked ? answerOf(asked) : ''}</p>
    </section>
  );
}
