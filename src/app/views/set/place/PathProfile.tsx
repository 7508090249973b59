import { type Arrival, formatQuantity } from '../../../../engine/index.ts';
import { type FieldProfile, fieldProfile } from '../../../../outputs/plots/index.ts';
import { warningSentences } from '../../../../outputs/words/index.ts';
import { Plot } from '../../../widgets/Plot.tsx';

interface Props {
  readonly arrival: Arrival;
  readonly profile?: FieldProfile;
  /** Whether the description holds sections of its own for this station. */
  readonly hasOwnSections: boolean;
  /** Write the path as found into the description, to be edited; or go back to the map's. */
  readonly onOwnSections: (own: boolean) => void;
}

/** How the field falls, and rises behind a coast, on the way from a station. */
export function PathProfile({ arrival, profile, hasOwnSections, onOwnSections }: Props) {
  const { station, sky, ground, sections } = arrival;
  const canWrite = !hasOwnSections && sections.length > 1;
  return (
    <section class="card" aria-labelledby="profile-title">
      <h3 id="profile-title">The way from {station.name}</h3>
      {profile ? (
        <Plot title="Ground wave along the path" data={profile} draw={fieldProfile} />
      ) : (
        <p class="quiet">
          {station.fieldStrength !== undefined
            ? 'Its field is as measured; with a power and a position or distance as well, the way can be drawn.'
            : 'With its power and a position or distance the way can be drawn.'}
        </p>
      )}
      {sky && ground && (
        <p>
          At this time the sky wave brings {formatQuantity(sky.fieldStrength, 'field strength', 2)} ±
          {Math.round(sky.spread)} dB
          {sky.hourlyLoss > 0.5 ? `, ${Math.round(sky.hourlyLoss)} dB less than deep in the night` : ''}, the ground
          wave {formatQuantity(ground.fieldStrength, 'field strength', 2)} ±{Math.round(ground.spread)} dB.
        </p>
      )}
      {warningSentences(arrival.warnings).map((warning) => (
        <p key={warning} class="quiet">
          {warning}
        </p>
      ))}
      {canWrite && (
        <button type="button" class="chip" onClick={() => onOwnSections(true)}>
          Write land and sea into the station, to edit
        </button>
      )}
      {hasOwnSections && (
        <button type="button" class="chip" onClick={() => onOwnSections(false)}>
          Take land and sea from the map again
        </button>
      )}
    </section>
  );
}
