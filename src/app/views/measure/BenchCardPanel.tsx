import { useEffect, useMemo, useState } from 'preact/hooks';
import {
  formatQuantity,
  type MeasurableFigure,
  type OfferedMeasurement,
  type SetDescription,
} from '../../../engine/index.ts';
import { benchConnection } from '../../../outputs/drawings/index.ts';
import {
  benchCard,
  benchCardWords,
  cautionTexts,
  equipmentNames,
  measurementName,
  measureView as texts,
} from '../../../outputs/words/index.ts';
import { launchedReadings } from '../../state/launched-readings.ts';
import type { ReadingsDraft } from '../../state/measuring.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { SceneView } from '../../widgets/Plot.tsx';
import { useNear } from '../../widgets/use-near.ts';
import type { CardFit } from './measure-answers.ts';
import { ReadingsFile } from './ReadingsFile.tsx';
import { ReadingsForm } from './ReadingsForm.tsx';
import { RingingCapture } from './sound-card/RingingCapture.tsx';
import { SoundCardImpedance } from './sound-card/SoundCardImpedance.tsx';
import { cardKey, draftKey, draftOf, EMPTY_DRAFT } from './written-readings.ts';

interface Props {
  readonly card: OfferedMeasurement;
  /** All that the set allows. */
  readonly offered: readonly OfferedMeasurement[];
  readonly set: SetDescription;
  readonly figures: readonly MeasurableFigure[];
  readonly fit: CardFit;
  /** A file that the page was opened with, and that this card is for. */
  readonly launched: File | undefined;
}

/** What the set itself says of what is asked: the ends of its capacitor, its law. */
function startOf(
  { kind }: OfferedMeasurement,
  { tuning }: SetDescription,
  figures: readonly MeasurableFigure[],
): ReadingsDraft {
  const law = tuning.kind === 'variable' || tuning.kind === 'vanes' ? tuning.law : undefined;
  // What has no law is left blank: its own scale counts.
  if (kind === 'dial' && law === undefined) return EMPTY_DRAFT;
  const ends = Object.fromEntries(
    (['minimum', 'maximum'] as const).flatMap((end) => {
      const figure = figures.find(({ property }) => property === `tuning.${end}`);
      const value = figure?.measured ?? figure?.calculated;
      return value ? [[`capacitor.${end}`, formatQuantity(value.value, 'capacitance', 4)]] : [];
    }),
  );
  return kind === 'dial' || kind === 'aerial-substitution'
    ? { ...EMPTY_DRAFT, fields: { 'capacitor.law': law ?? 'semicircular', ...ends } }
    : EMPTY_DRAFT;
}

/** How a measurement is made, and the place for its readings. */
export function BenchCardPanel({ card, offered, set, figures, fit, launched }: Props) {
  const { drafts, openCard, wantedPart, chosen } = useOpenSet();
  const station = chosen.value?.name;
  const key = draftKey(card, station);
  const draft = drafts.value[key] ?? startOf(card, set, figures);
  const put = (next: ReadingsDraft, at = key) => {
    drafts.value = { ...drafts.peek(), [at]: next };
  };
  const { kind } = card;
  const { about, steps, writeDown, trap } = benchCard(kind);
  const [over, setOver] = useState<File | undefined>();
  useEffect(() => {
    if (!launched) return;
    setOver(launched);
    launchedReadings.value = undefined;
  }, [launched]);
  return (
    <article
      class="card bench-card"
      aria-labelledby="bench-card-title"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        setOver(event.dataTransfer?.files[0]);
      }}
    >
      <h2 id="bench-card-title">{measurementName(kind)}</h2>
      <p>{about}</p>
      {card.equipment.length > 0 && <p class="quiet">{benchCardWords.takes(equipmentNames(card.equipment))}</p>}
      {card.cautions.length > 0 && (
        <section class="bench-cautions" aria-labelledby="bench-cautions-title">
          <h3 id="bench-cautions-title">{benchCardWords.cautions}</h3>
          <ul class="sentences">
            {card.cautions.map((code) => (
              <li key={code}>{cautionTexts[code]}</li>
            ))}
          </ul>
        </section>
      )}
      <h3>{benchCardWords.connect}</h3>
      <Connection kind={kind} />
      <h3>{benchCardWords.steps}</h3>
      <ol class="bench-steps">
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>{benchCardWords.writeDown(writeDown)}</p>
      <p class="bench-trap">{benchCardWords.trap(trap)}</p>
      {kind === 'phones-sound-card' && <SoundCardImpedance card={card} set={set} draft={draft} onChange={put} />}
      {kind === 'decay' && (
        <RingingCapture
          onTaken={(taken, source) => {
            // Date and note stay, also those typed while it was recorded.
            const typed = drafts.peek()[key] ?? draft;
            const next = draftOf(card, taken, source);
            put({ ...typed, ...next, fields: { ...typed.fields, ...next.fields } });
          }}
        />
      )}
      <h3>{texts.readings}</h3>
      <ReadingsForm card={card} set={set} draft={draft} fit={fit} onChange={put} />
      <ReadingsFile
        card={card}
        offered={offered}
        set={set}
        source={draft.source}
        isRefused={fit.answer?.ok === false}
        dropped={over}
        onTaken={(taken, name) => {
          put(draftOf(taken.card, taken.written, name), draftKey(taken.card, station));
          // Readings of another part are shown, whatever was wanted.
          if (cardKey(taken.card) !== cardKey(card)) wantedPart.value = undefined;
          openCard.value = cardKey(taken.card);
        }}
      />
    </article>
  );
}

function Connection({ kind }: { readonly kind: OfferedMeasurement['kind'] }) {
  const { width, holder } = useNear();
  const scene = useMemo(
    () => (width > 0 ? benchConnection(kind, { width: Math.min(width, 620) }) : undefined),
    [kind, width],
  );
  return (
    <figure class="drawing bench-connection" ref={holder}>
      {scene && <SceneView scene={scene} />}
    </figure>
  );
}
