import { bandSwitchWords as texts } from '../../../outputs/words/index.ts';
import { bandNames } from '../../description/on-band.ts';
import { useOpenSet } from '../../state/set-context.ts';

/** The switch of a set with several bands: everything on the page is of the band it stands on. */
export function BandSwitch() {
  const { written, band, turnTo, bandsReceived } = useOpenSet();
  const names = bandNames(written.value);
  if (names.length === 0) return null;
  const received = bandsReceived.value?.bands;
  return (
    <fieldset class="band-switch">
      <legend>{texts.legend}</legend>
      {names.map((name, i) => {
        const range = received?.length === names.length ? received[i] : undefined;
        return (
          <button key={i} type="button" class="chip" aria-pressed={i === band.value} onClick={() => turnTo(i)}>
            {texts.name(name, i)}
            {range && <span class="band-covers"> {texts.range(range.lowest, range.highest)}</span>}
          </button>
        );
      })}
    </fieldset>
  );
}
