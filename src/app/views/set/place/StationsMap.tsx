import { geoCircle, geoPath } from 'd3-geo';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type Arrival, isHeard, type Position, subsolarPoint } from '../../../../engine/index.ts';
import { textWidth } from '../../../../outputs/scene/index.ts';
import type { StationRow } from '../../../../outputs/tables/index.ts';
import { mapWords as texts, verdictWords } from '../../../../outputs/words/index.ts';
import type { When } from '../../../description/when.ts';
import { useWidth } from '../../../widgets/use-width.ts';
import { type Outline, type OutlineQuestion, projectionAt } from '../../../workers/outline.ts';
import {
  extentOf,
  HALF_ROUND,
  holds,
  type MapLabel,
  type MapView,
  movedMap,
  placeMapNames,
  pointOf,
  ringsFor,
  type Size,
  stretches,
  viewOfAll,
  zoomedMap,
} from './map-view.ts';
import { useDrag } from './use-drag.ts';
import { usePlaceWorker } from './use-place-worker.ts';

interface Props {
  readonly centre: Position;
  readonly siteName: string;
  readonly arrivals: readonly Arrival[];
  /** Best first. */
  readonly rows: readonly Pick<StationRow, 'index' | 'name' | 'heard'>[];
  readonly when: When;
  readonly chosen?: number;
  /** Where something else lets the keyboard choose a station too. */
  readonly onChoose?: (index: number) => void;
}

const LETTERS = 12;
/** Names beyond these only crowd; the table has them all. */
const MOST_NAMES = 40;
/** Where a ring's distance is written: the first of these in sight. */
const RING_SIDES = [
  [0, -1],
  [-1, 0],
  [0, 1],
  [1, 0],
  [-Math.SQRT1_2, Math.SQRT1_2],
  [Math.SQRT1_2, Math.SQRT1_2],
] as const;
/** Degrees about the middle of the night: sun's upper edge on the horizon, refraction included; and 12° under it. */
const SUNSET_RADIUS = 90 - 0.833;
const DARK_RADIUS = 90 - 12;

/** A map about the site on which distances and directions from it are true. The table says the same in words. */
export function StationsMap({ centre, siteName, arrivals, rows, when, chosen, onChoose }: Props) {
  const [width, holder] = useWidth();
  const size: Size = { width, height: Math.round(Math.min(460, Math.max(280, width * 0.62))) };
  const points = useMemo(() => {
    const shown = new Set(rows.map(({ index }) => index));
    return arrivals.map((arrival) => (shown.has(arrival.index) ? pointOf(arrival) : undefined));
  }, [arrivals, rows]);
  const home = useMemo(
    () =>
      viewOfAll(
        points.filter((point) => point !== undefined),
        size,
      ),
    [points, size.width, size.height],
  );
  const [own, setOwn] = useState<MapView | undefined>();
  // Moved elsewhere, everything lies otherwise.
  useEffect(() => setOwn(undefined), [centre.latitude, centre.longitude]);
  const view = own ?? home;
  const outline = useOutline(centre, view, size);
  const frame = useRef<HTMLDivElement>(null);
  const change = (make: (view: MapView) => MapView) => setOwn((now) => make(now ?? home));
  const drag = useDrag(frame, {
    move: (dx, dy) => change((v) => movedMap(v, dx, dy, size)),
    zoom: (factor, at) => change((v) => zoomedMap(v, factor, size, at)),
  });

  const middle: [number, number] = [width / 2, size.height / 2];
  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const actions: Record<string, () => void> = {
      ArrowLeft: () => change((v) => movedMap(v, 60, 0, size)),
      ArrowRight: () => change((v) => movedMap(v, -60, 0, size)),
      ArrowUp: () => change((v) => movedMap(v, 0, 60, size)),
      ArrowDown: () => change((v) => movedMap(v, 0, -60, size)),
      '+': () => change((v) => zoomedMap(v, 1 / 1.5, size, middle)),
      '=': () => change((v) => zoomedMap(v, 1 / 1.5, size, middle)),
      '-': () => change((v) => zoomedMap(v, 1.5, size, middle)),
      '0': () => setOwn(undefined),
      Home: () => setOwn(undefined),
    };
    const action = actions[event.key];
    if (!action) return;
    event.preventDefault();
    event.stopPropagation();
    action();
  };

  const onScreen = ([x, y]: readonly [number, number]): [number, number] => [
    width / 2 + (x - view.x) / view.kmPerPixel,
    size.height / 2 + (y - view.y) / view.kmPerPixel,
  ];
  const ground = `translate(${width / 2} ${size.height / 2}) scale(${1 / view.kmPerPixel}) translate(${-view.x} ${-view.y})`;
  const drawn = useMemo(
    () => <Masts arrivals={arrivals} rows={rows} chosen={chosen} onChoose={onChoose} />,
    [arrivals, rows, chosen, onChoose],
  );
  const shade = useNight(centre, when);
  const rings = width > 0 ? ringsFor(view, size) : [];
  const here = onScreen([0, 0]);
  const names = placeMapNames(
    [
      { index: -1, name: siteName || texts.here, at: here },
      ...[...rows]
        .sort((a, b) => Number(b.index === chosen) - Number(a.index === chosen))
        .slice(0, MOST_NAMES)
        .flatMap((row) => {
          const point = points[row.index];
          return point ? [{ index: row.index, name: row.name, at: onScreen(point) }] : [];
        }),
    ],
    size,
    (text) => textWidth(text, LETTERS) + 2,
    points.flatMap((point) => (point ? [[onScreen(point), here] as const] : [])),
  );
  const placed = points.filter((point) => point !== undefined).length;

  return (
    <div ref={holder} class="place-map drawing">
      <div
        ref={frame}
        class="map-frame"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the map is moved from the keyboard
        tabIndex={0}
        aria-label={texts.label(placed, rows.length, siteName || undefined)}
        onKeyDown={keys}
        {...drag}
      >
        {width > 0 && (
          <svg width={width} height={size.height} viewBox={`0 0 ${width} ${size.height}`} aria-hidden="true">
            <g transform={ground}>
              <circle class="map-sea" r={HALF_ROUND} />
              {outline && <path class="map-land" d={outline.d} />}
              {shade && <path class="map-twilight" d={shade.twilight} />}
              {shade && <path class="map-night" d={shade.night} />}
              {when === 'night' && <circle class="map-night" r={HALF_ROUND} />}
              {rings.map((km) => (
                <circle key={km} class="map-ring" r={km} />
              ))}
            </g>
            <g>
              {rings.map((km) => {
                const at = RING_SIDES.map(([x, y]) => onScreen([x * km, y * km])).find(
                  ([x, y]) =>
                    x > 4 &&
                    x < width - 50 &&
                    y > 20 &&
                    y < size.height - 8 &&
                    !(x > width - 105 && y < 125) &&
                    !isOverName(names, x, y),
                );
                return (
                  at && (
                    <text key={km} class="map-ring-name" x={at[0] + 4} y={at[1] - 4}>
                      {texts.ring(km)}
                    </text>
                  )
                );
              })}
            </g>
            <g transform={ground}>{drawn}</g>
            <circle class="map-site" cx={here[0]} cy={here[1]} r="5" />
            <g>
              {names.map((label) => (
                <text
                  key={label.index}
                  class={`map-name${label.index === chosen ? ' is-chosen' : ''}`}
                  x={label.x}
                  y={label.y}
                  text-anchor={label.anchor}
                >
                  {label.text}
                </text>
              ))}
            </g>
          </svg>
        )}
      </div>
      <MapButtons onZoom={(by) => change((v) => zoomedMap(v, by, size, middle))} onAll={() => setOwn(undefined)} />
      <MapKey />
    </div>
  );
}

function MapButtons({ onZoom, onAll }: { readonly onZoom: (by: number) => void; readonly onAll: () => void }) {
  return (
    <div class="map-buttons">
      <button type="button" aria-label={texts.zoomIn} onClick={() => onZoom(1 / 1.5)}>
        +
      </button>
      <button type="button" aria-label={texts.zoomOut} onClick={() => onZoom(1.5)}>
        −
      </button>
      <button type="button" aria-label={texts.showAll} onClick={onAll}>
        {texts.all}
      </button>
    </div>
  );
}

/** What the colours mean. */
function MapKey() {
  return (
    <p class="map-key quiet">
      <span class="key-land" />
      {texts.key.land}
      <span class="key-sea" />
      {texts.key.sea}
      <span class="key-heard" />
      {texts.key.heard}
      <span class="key-masked" />
      {texts.key.masked}
      <span class="key-unheard" />
      {texts.key.unheard}
    </p>
  );
}

/** A distance written there would lie over a name. */
const isOverName = (names: readonly MapLabel[], x: number, y: number): boolean =>
  names.some(({ x: at, y: line, anchor, text }) => {
    const w = textWidth(text, LETTERS);
    const left = anchor === 'start' ? at : at - w;
    return Math.abs(line - y) < 18 && left < x + 55 && left + w > x;
  });

/**
 * Paths and masts in km, so that moving the map moves them all at once. A mast is a line of no length with round ends: its
 * size does not grow with the map.
 */
function Masts({ arrivals, rows, chosen, onChoose }: Pick<Props, 'arrivals' | 'rows' | 'chosen' | 'onChoose'>) {
  const last = (a: { index: number }, b: { index: number }) => Number(a.index === chosen) - Number(b.index === chosen);
  const shown = new Set(rows.map(({ index }) => index));
  const line = (sea: boolean, isChosen: boolean) =>
    arrivals
      .filter(({ index }) => shown.has(index) && (index === chosen) === isChosen)
      .flatMap((arrival) => stretches(arrival).filter((stretch) => stretch.sea === sea))
      .map(({ from, to }) => `M${round(from)}L${round(to)}`)
      .join('');
  return (
    <>
      <path class="map-path" d={line(false, false)} />
      <path class="map-path is-sea" d={line(true, false)} />
      <path class="map-path is-chosen" d={line(false, true)} />
      <path class="map-path is-sea is-chosen" d={line(true, true)} />
      {rows
        .toReversed()
        .sort(last)
        .map((row) => {
          const point = arrivals[row.index] && pointOf(arrivals[row.index]);
          if (!point) return null;
          const d = `M${round(point)}h0`;
          const heard = isHeard(row.heard);
          return (
            // biome-ignore lint/a11y/noStaticElementInteractions: the table has a button for every station
            <g
              key={row.index}
              class={`map-station${onChoose ? ' is-choice' : ''}${heard ? ' is-heard' : ''}${row.heard === 'masked' ? ' is-masked' : ''}${row.index === chosen ? ' is-chosen' : ''}`}
              onClick={onChoose && (() => onChoose(row.index))}
            >
              <title>{texts.station(row.name, verdictWords[row.heard])}</title>
              <path class="map-touch" d={d} />
              <path class="map-rim" d={d} />
              <path class="map-mast" d={d} />
              {row.heard === 'masked' && <path class="map-core" d={d} />}
            </g>
          );
        })}
    </>
  );
}

const round = ([x, y]: readonly [number, number]): string => `${x.toFixed(2)},${y.toFixed(2)}`;

/** The land for a view; the last one stays until the next is there. */
function useOutline(centre: Position, view: MapView, size: Size): Outline | undefined {
  const [outline, setOutline] = useState<Outline | undefined>();
  const ask = usePlaceWorker<OutlineQuestion, Outline>('map', (_question, reply) => {
    if ('answer' in reply) setOutline(reply.answer);
  });
  const { latitude, longitude } = centre;
  const isSame = outline?.centre.latitude === latitude && outline.centre.longitude === longitude;
  const fineEnough = outline && outline.kmPerPixel < view.kmPerPixel * 1.7 && outline.kmPerPixel > view.kmPerPixel / 4;
  const isGood = isSame && fineEnough && holds(outline.extent, extentOf(view, size, 0));
  useEffect(() => {
    if (size.width > 0 && !isGood)
      ask({
        about: 'outline',
        centre: { latitude, longitude },
        extent: extentOf(view, size),
        kmPerPixel: view.kmPerPixel,
      });
  }, [latitude, longitude, view, size.width, size.height, isGood]);
  return isSame ? outline : undefined;
}

function useNight({ latitude, longitude }: Position, when: When) {
  return useMemo(() => {
    if (!(when instanceof Date)) return undefined;
    const noon = subsolarPoint(when);
    const path = geoPath(projectionAt({ latitude, longitude })).digits(0);
    const side = (radius: number) =>
      path(
        geoCircle()
          .center([noon.longitude + 180, -noon.latitude])
          .radius(radius)
          .precision(2)(),
      ) ?? '';
    return { night: side(DARK_RADIUS), twilight: side(SUNSET_RADIUS) };
  }, [latitude, longitude, when]);
}
