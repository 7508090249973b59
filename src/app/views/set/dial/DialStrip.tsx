import { useRef, useState } from 'preact/hooks';
import { LIGHT_SPEED, type Reception } from '../../../../engine/index.ts';
import { dialWords as texts } from '../../../../outputs/words/index.ts';
import { useOpenSet } from '../../../state/set-context.ts';
import { DayNight } from '../../../widgets/DayNight.tsx';
import { Later } from '../../../widgets/Later.tsx';
import { useWidth } from '../../../widgets/use-width.ts';
import { DialFace, MARGIN } from './DialFace.tsx';
import { type DialScale, dialScale } from './dial-scale.ts';
import { whatIsThere } from './there.ts';
import { channelStep, nextStation, pointAt, pointTo, tuneTo } from './tuning.ts';

const loadListen = () => import('../listen/Listen.tsx').then((m) => m.Listen);

/** The dial, always at the foot of the page. */
export function DialStrip() {
  const { reception, pointerPosition } = useOpenSet();
  const now = reception.value;
  const scale = now && dialScale(now.dial);
  const position = pointerPosition.value;
  return (
    <section class="dial" aria-label={texts.label}>
      {now && scale && position !== undefined ? (
        <TurningDial now={now} scale={scale} position={position} />
      ) : (
        <p class="quiet dial-none">{now ? texts.fixed : ''}</p>
      )}
    </section>
  );
}

function TurningDial({ now, scale, position }: { now: Reception; scale: DialScale; position: number }) {
  const set = useOpenSet();
  const { chosen, pointer, receptionSet, written, time } = set;
  const [width, holder] = useWidth();
  const slider = useRef<HTMLDivElement>(null);
  const [listening, setListening] = useState(false);
  const station = pointer.value === undefined ? chosen.value : undefined;
  const frequency = station?.dial ? station.frequency : scale.frequencyAt(position);
  const words = whatIsThere(now, position, frequency, station);

  const follow = (event: PointerEvent) => {
    const box = slider.current!.getBoundingClientRect();
    const length = box.width - 2 * MARGIN;
    const near = event.pointerType === 'touch' ? 14 : 8;
    pointAt(set, now, scale, (event.clientX - box.left - MARGIN) / length, near / length);
  };
  const keys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const channel = channelStep(now);
    const step = (by: number) => tuneTo(set, now, scale, Math.round(frequency / 1e3) * 1e3 + by, 1e3);
    const actions: Record<string, () => void> = {
      ArrowRight: () => step(1e3),
      ArrowUp: () => step(1e3),
      ArrowLeft: () => step(-1e3),
      ArrowDown: () => step(-1e3),
      PageUp: () => tuneTo(set, now, scale, (Math.floor(frequency / channel + 1e-6) + 1) * channel, 1e3),
      PageDown: () => tuneTo(set, now, scale, (Math.ceil(frequency / channel - 1e-6) - 1) * channel, 1e3),
      Home: () => tuneTo(set, now, scale, now.dial.lowest, 1e3),
      End: () => tuneTo(set, now, scale, now.dial.highest, 1e3),
      n: () => nextStation(set, now, frequency, 1),
      p: () => nextStation(set, now, frequency, -1),
    };
    const action = actions[event.key];
    if (!action) return;
    event.preventDefault();
    action();
  };
  const kHz = String(Number((frequency / 1e3).toFixed(1)));
  return (
    <>
      <div class="readout">
        <p class="readout-figure">
          {kHz} <span class="unit">{texts.kilohertz}</span>
        </p>
        <p class="readout-more">{texts.more(LIGHT_SPEED / frequency, scale.degreesAt(position))}</p>
        <p class="readout-station">{words}</p>
      </div>
      <div class="dial-holder" ref={holder}>
        <div
          ref={slider}
          class="dial-slider"
          role="slider"
          tabIndex={0}
          aria-label={texts.pointer}
          aria-orientation="horizontal"
          aria-valuemin={Math.round(now.dial.lowest / 1e3)}
          aria-valuemax={Math.round(now.dial.highest / 1e3)}
          aria-valuenow={Math.round(frequency / 1e3)}
          aria-valuetext={texts.value(frequency, words)}
          aria-describedby="dial-keys"
          onKeyDown={keys}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            event.currentTarget.focus({ preventScroll: true });
            follow(event);
          }}
          onPointerMove={(event) => {
            if (event.currentTarget.hasPointerCapture(event.pointerId)) follow(event);
          }}
        >
          {width > 0 && (
            <DialFace
              reception={now}
              scale={scale}
              chosenIndex={pointer.value === undefined ? chosen.value?.index : undefined}
              position={position}
              width={width}
              compact={width < 560}
            />
          )}
        </div>
        <p id="dial-keys" class="visually-hidden">
          {texts.keys}
        </p>
      </div>
      <div class="dial-buttons">
        <DayNight />
        <button type="button" class="listen" aria-expanded={listening} onClick={() => setListening(!listening)}>
          {texts.listen}
        </button>
      </div>
      {listening && receptionSet.value && (
        <div class="listen-holder">
          <Later
            load={loadListen}
            name={texts.listening}
            props={{
              written: written.value,
              set: receptionSet.value,
              reception: now,
              scale,
              position,
              frequency,
              onPosition: (to: number) => pointTo(set, now, to),
              time: time.value,
            }}
          />
        </div>
      )}
    </>
  );
}
