import type { Arrival } from '../../../../engine/index.ts';
import { type FieldProfile, fieldProfile } from '../../../../outputs/plots/index.ts';
import { pathWords as texts, warningSentences } from '../../../../outputs/words/index.ts';
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
      <h3 id="profile-title">{texts.title(station.name)}</h3>
      {profile ? (
        <Plot title={texts.plot} data={profile} draw={fieldProfile} />
      ) : (
        <p class="quiet">{station.fieldStrength !== undefined ? texts.measured : texts.missing}</p>
      )}
      {sky && ground && <p>{texts.waves(sky, ground)}</p>}
      {warningSentences(arrival.warnings).map((warning) => (
        <p key={warning} class="quiet">
          {warning}
        </p>
      ))}
      {canWrite && (
        <button type="button" class="chip" onClick={() => onOwnSections(true)}>
          {texts.writeSections}
        </button>
      )}
      {hasOwnSections && (
        <button type="button" class="chip" onClick={() => onOwnSections(false)}>
          {texts.mapSections}
        </button>
      )}
    </section>
  );
}
