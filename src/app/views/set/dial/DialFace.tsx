import type { Reception } from '../../../../engine/index.ts';
import { dialWords as texts } from '../../../../outputs/words/index.ts';
import { barsOf } from '../Heard.tsx';
import { type DialScale, evenMarks, type Mark, placeNames, roundMarks } from './dial-scale.ts';
import { reachable } from './tuning.ts';

interface Props {
  reception: Reception;
  scale: DialScale;
  chosenIndex?: number;
  position: number;
  width: number;
  compact: boolean;
}

/** Kept free at each end for the last labels. */
export const MARGIN = 22;
const CHARACTER = 6.4;
const DEEPEST = -60;

/** A short scale would stay blank: it has finer steps too. */
const stepsFor = (steps: readonly number[], span: number): readonly number[] =>
  span < 5 * steps[steps.length - 1] ? [...steps, 5, 2, 1] : steps;

/** The dial as drawn; what it says is said in words by the slider around it. */
export function DialFace({ reception, scale, chosenIndex, position, width, compact }: Props) {
  const rows = compact ? 1 : 2;
  const top = rows * 15 + 4;
  const base = top + 30;
  const height = base + 37;
  const length = width - 2 * MARGIN;
  const x = (along: number) => MARGIN + along * length;
  const { dial } = reception;
  const kHz = evenMarks(
    dial.lowest / 1e3,
    dial.highest / 1e3,
    (f) => scale.alongAt(scale.positionOf(f * 1e3)),
    38 / length,
  );
  const firstDegree = dial.points[0].scale;
  const lastDegree = dial.points[dial.points.length - 1].scale;
  const degrees = roundMarks(
    Math.min(firstDegree, lastDegree),
    Math.max(firstDegree, lastDegree),
    stepsFor([90, 30, 10], Math.abs(lastDegree - firstDegree)),
    (degree) => 1 - (degree - firstDegree) / (lastDegree - firstDegree || 1),
    46 / length,
  );
  const fine = roundMarks(
    dial.lowest / 1e3,
    dial.highest / 1e3,
    stepsFor([100, 50, 10], (dial.highest - dial.lowest) / 1e3),
    (f) => scale.alongAt(scale.positionOf(f * 1e3)),
    4 / length,
  );
  const folds = dial.folds.map(([lowest, highest]) => ({
    lowest,
    highest,
    from: x(scale.alongAt(scale.positionOf(lowest))),
    to: x(scale.alongAt(scale.positionOf(highest))),
  }));
  /** Frequencies are not marked where the scale is not that of one. */
  const isRead = ({ along }: Mark): boolean => folds.every(({ from, to }) => x(along) <= from || x(along) >= to);
  const pointerX = x(scale.alongAt(position));
  return (
    <svg class="dial-face" viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
      <path class="dial-profile" d={profile(reception, scale, x, top, base)}>
        <title>{texts.profileTip}</title>
      </path>
      <line class="dial-line" x1={x(0)} x2={x(1)} y1={base} y2={base} />
      {folds.map(({ lowest, highest, from, to }) => (
        <line key={lowest} class="dial-fold" x1={from} x2={to} y1={base + 3} y2={base + 3}>
          <title>{texts.foldTip(lowest, highest)}</title>
        </line>
      ))}
      {fine.filter(isRead).map((mark) => (
        <line key={mark.text} class="dial-tick" x1={x(mark.along)} x2={x(mark.along)} y1={base} y2={base + 4} />
      ))}
      {kHz.filter(isRead).map((mark) => (
        <g key={mark.text}>
          <line class="dial-tick strong" x1={x(mark.along)} x2={x(mark.along)} y1={base} y2={base + 7} />
          <text class="dial-kilohertz" x={x(mark.along)} y={base + 19}>
            {mark.text}
          </text>
        </g>
      ))}
      {degrees.map((mark) => (
        <text key={mark.text} class="dial-degrees" x={x(mark.along)} y={base + 35}>
          {texts.degrees(mark.text)}
        </text>
      ))}
      <StationMarks {...{ reception, scale, chosenIndex, length, rows, top, base }} />
      <g class="dial-pointer">
        <line x1={pointerX} x2={pointerX} y1={top} y2={base + 7} />
        <path d={`M${pointerX - 6} ${top - 3}h12v4l-6 7l-6 -7z`} />
      </g>
    </svg>
  );
}

/** The strongest there is at each place of the dial, as a hill: what one meets while turning. */
function profile(
  reception: Reception,
  scale: DialScale,
  x: (along: number) => number,
  top: number,
  base: number,
): string {
  const { points, levels } = reception.dial;
  if (levels.length !== points.length || reception.stations.length === 0) return '';
  const hill = points.map((point, i) => {
    let strongest = DEEPEST;
    for (const level of levels[i]) if (level > strongest) strongest = level;
    const y = base - (1 - strongest / DEEPEST) * (base - top);
    return `${x(scale.alongAt(point.position)).toFixed(1)} ${y.toFixed(1)}`;
  });
  const first = x(scale.alongAt(points[0].position)).toFixed(1);
  const last = x(scale.alongAt(points[points.length - 1].position)).toFixed(1);
  return `M${first} ${base}L${hill.join('L')}L${last} ${base}Z`;
}

interface MarksProps extends Pick<Props, 'reception' | 'scale' | 'chosenIndex'> {
  length: number;
  rows: number;
  top: number;
  base: number;
}

function StationMarks({ reception, scale, chosenIndex, length, rows, top, base }: MarksProps) {
  const stations = reachable(reception).sort(
    (a, b) =>
      Number(b.index === chosenIndex) - Number(a.index === chosenIndex) ||
      (b.margin ?? Number.NEGATIVE_INFINITY) - (a.margin ?? Number.NEGATIVE_INFINITY),
  );
  const along = stations.map((station) => scale.alongAt(station.dial!.position));
  const places = placeNames(
    stations.map((station, i) => ({ along: along[i], width: station.name.length * CHARACTER })),
    rows,
    length,
  );
  return (
    <>
      {stations.map((station, i) => {
        const bars = barsOf(station.verdict);
        const at = MARGIN + along[i] * length;
        const { range: readings = [station.dial!.scale, station.dial!.scale] } = station.dial!;
        const [from, to] = readings.map((degree) => degreeAlong(reception, degree));
        const place = places[i];
        const isNamed = place && (bars > 0 || station.index === chosenIndex);
        return (
          <g
            key={station.index}
            class={`dial-station heard-${bars}${station.index === chosenIndex ? ' is-chosen' : ''}`}
          >
            {station.index === chosenIndex && (
              <line
                class="dial-spread"
                x1={MARGIN + Math.min(from, to) * length}
                x2={MARGIN + Math.max(from, to) * length}
                y1={base - 2.5}
                y2={base - 2.5}
              >
                <title>{texts.spreadTip(station.name)}</title>
              </line>
            )}
            <line class="dial-mark" x1={at} x2={at} y1={base} y2={base - 6 - bars * 6} />
            {isNamed && (
              <line
                class="dial-leader"
                x1={at}
                x2={Math.abs(MARGIN + place.middle - at) < 20 ? at : MARGIN + place.middle}
                y1={base - 6 - bars * 6}
                y2={top - 3 - place.row * 15}
              />
            )}
            {isNamed && (
              <text x={MARGIN + place.middle} y={top - 6 - place.row * 15}>
                {station.name}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

function degreeAlong(reception: Reception, degree: number): number {
  const { points } = reception.dial;
  const first = points[0].scale;
  const last = points[points.length - 1].scale;
  return Math.min(1, Math.max(0, 1 - (degree - first) / (last - first || 1)));
}
