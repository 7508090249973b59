import { useEffect, useMemo } from 'preact/hooks';
import type { OfferedMeasurement, SetDescription } from '../../../engine/index.ts';
import { measureView as texts } from '../../../outputs/words/index.ts';
import { cardOf, launchedReadings } from '../../state/launched-readings.ts';
import { instruments } from '../../state/measuring.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { useAnswer } from '../../workers/use-worker.ts';
import { BenchCardPanel } from './BenchCardPanel.tsx';
import { MeasureChoice } from './MeasureChoice.tsx';
import { MeasureResult } from './MeasureResult.tsx';
import type { OfferAnswer, OfferQuestion } from './measure.worker.ts';
import { newMeasureWorker, useFit } from './measure-answers.ts';
import { AudioBesidePredicted } from './sound-card/AudioBesidePredicted.tsx';
import { cardKey, draftKey } from './written-readings.ts';
import './measure.css';

/** What can be measured with what is at hand, how each is done, and what the readings say of the set. */
export function Measure({ set }: { readonly set: SetDescription }) {
  const { chosen, openCard, wantedPart } = useOpenSet();
  const station = chosen.value;
  const has = instruments.value;
  const question = useMemo((): OfferQuestion => ({ about: 'offer', set, station, has }), [set, station, has]);
  const { answer, error, isCurrent } = useAnswer<OfferQuestion, OfferAnswer>(newMeasureWorker, question);
  // An answer may be of the set before, which had more coils.
  const coils = Math.max(1, set.coils.length);
  const all = useMemo(
    () => (answer?.offered ?? []).filter(({ coil }) => coil === undefined || coil < coils),
    [answer, coils],
  );
  const wanted = (wantedPart.value?.coil ?? 0) < coils ? wantedPart.value : undefined;
  const offered = useMemo(() => ofPart(all, wanted), [all, wanted]);
  const card = offered.find((one) => cardKey(one) === openCard.value);
  // The card that helps most is open until another is chosen.
  useEffect(() => {
    if (!card && offered.length > 0) openCard.value = cardKey(offered[0]);
  }, [card, offered, openCard]);
  // What the page was opened with has its card, when all is known that can be measured with its instrument.
  const file = launchedReadings.value;
  const fileCard = file && isCurrent ? cardOf(file, all, card) : undefined;
  useEffect(() => {
    if (!fileCard) return;
    wantedPart.value = undefined;
    openCard.value = cardKey(fileCard);
  }, [fileCard, openCard, wantedPart]);
  const fit = useFit(set, card, station);
  return (
    <section class="measure" aria-label={texts.label}>
      <MeasureChoice set={set} offered={answer && offered} error={error} station={station?.name} open={card} />
      {card ? (
        <BenchCardPanel
          key={draftKey(card, station?.name)}
          card={card}
          offered={all}
          set={set}
          figures={answer?.figures ?? []}
          fit={fit}
          launched={card === fileCard ? file : undefined}
        />
      ) : (
        <p class="quiet">{texts.pickOne}</p>
      )}
      <MeasureResult card={card} set={set} measured={answer?.measured ?? []} fit={fit} />
      {has.includes('sound card') && <AudioBesidePredicted set={set} station={station} />}
    </section>
  );
}

const ofPart = (
  offered: readonly OfferedMeasurement[],
  wanted: { readonly part: OfferedMeasurement['part']; readonly coil?: number } | undefined,
): readonly OfferedMeasurement[] =>
  wanted
    ? offered.filter(
        ({ part, coil, properties }) =>
          (part === wanted.part && coil === wanted.coil) ||
          (part !== wanted.part &&
            properties.some((one) => one.startsWith(`${wanted.part}.`)) &&
            wanted.coil === undefined),
      )
    : offered;
