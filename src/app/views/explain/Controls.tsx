import { useRef, useState } from 'preact/hooks';
import type { Reception } from '../../../engine/reception/path/types.ts';
import { formatNumber, formatQuantity } from '../../../engine/units/format.ts';
import {
  DETECTOR_CHOICES,
  type Programme,
  type Settings,
  type WaveSpec,
  withSettings,
} from '../../../outputs/explain/index.ts';
import { fromMicrophone, programmeFrom } from './hear.ts';
import { Slide } from './Slide.tsx';

interface Props {
  settings: Settings;
  /** The set's own waves. */
  base: WaveSpec;
  reception?: Reception;
  recording?: Programme;
  onChange(settings: Settings): void;
  onRecording(recording: Programme): void;
}

/** The file or the microphone, so many seconds of it. */
const SPEAK = 5;

/** Whatever one turns at will. */
export function Controls({ settings, base, reception, recording, onChange, onRecording }: Props) {
  // As it will be, at once: the waves follow.
  const spec = withSettings(base, settings, recording);
  const turn = (change: Settings) => onChange({ ...settings, ...change });
  const back = (key: keyof Settings) =>
    settings[key] === undefined
      ? undefined
      : () => {
          const { [key]: _, ...rest } = settings;
          onChange(rest);
        };
  const stations = reception?.stations.filter((s) => s.detectorVoltage > 0) ?? [];
  return (
    <div class="explain-controls">
      {stations.length > 1 && (
        <label class="explain-field">
          <span>Station</span>
          <select
            value={String(settings.station ?? reception?.best[0] ?? 0)}
            onChange={(event) => turn({ station: Number(event.currentTarget.value), carrier: undefined })}
          >
            {stations.map((s) => (
              <option key={s.index} value={String(s.index)}>
                {s.name}, {formatNumber(s.frequency / 1e3, 5)} kHz
              </option>
            ))}
          </select>
        </label>
      )}
      <ProgrammeField {...{ settings, recording, onRecording, turn }} tones={spec.programme} />
      <Slide
        label="Depth of modulation"
        value={spec.depth}
        min={0}
        max={1.5}
        round={(v) => Math.round(v * 100) / 100}
        text={(v) => `${formatNumber(v * 100, 3)} %${v > 1 ? ': too deep' : ''}`}
        onChange={(depth) => turn({ depth })}
        onReset={back('depth')}
      />
      <Slide
        label="Carrier"
        value={spec.carrier}
        min={150e3}
        max={1700e3}
        round={(v) => Math.round(v / 1e3) * 1e3}
        text={(v) => `${formatNumber(v / 1e3, 4)} kHz`}
        onChange={(carrier) => turn({ carrier })}
        onReset={back('carrier')}
      />
      <Slide
        label="How sharply it is tuned (loaded Q)"
        value={spec.loadedQ}
        min={1}
        max={500}
        log
        round={(v) => Number(v.toPrecision(2))}
        text={(v) => `${formatNumber(v, 3)}, ${formatQuantity(spec.carrier / v, 'frequency', 2)} broad`}
        onChange={(loadedQ) => turn({ loadedQ })}
        onReset={back('loadedQ')}
      />
      <label class="explain-check">
        <input
          type="checkbox"
          checked={settings.neighbours !== false}
          onChange={(event) => turn({ neighbours: event.currentTarget.checked ? undefined : false })}
        />{' '}
        Other stations on the air
      </label>
      <label class="explain-field">
        <span>Detector</span>
        <select
          value={settings.detector ?? ''}
          onChange={(event) => turn({ detector: event.currentTarget.value || undefined })}
        >
          <option value="">As in the set</option>
          {DETECTOR_CHOICES.map((d) => (
            <option key={d.id} value={d.id}>
              {d.label}
            </option>
          ))}
        </select>
      </label>
      <Slide
        label="Carrier at the detector"
        value={spec.atDetector}
        min={1e-3}
        max={10}
        log
        round={(v) => Number(v.toPrecision(2))}
        text={(v) => formatQuantity(v, 'voltage', 2)}
        onChange={(strength) => turn({ strength })}
        onReset={back('strength')}
      />
      <Slide
        label="Load capacitor"
        value={Math.max(spec.load.capacitance, 5e-12)}
        min={5e-12}
        max={1e-6}
        log
        round={(v) => Number(v.toPrecision(2))}
        text={(v) => formatQuantity(v, 'capacitance', 2)}
        onChange={(capacitance) => turn({ capacitance })}
        onReset={back('capacitance')}
      />
      <Slide
        label="Load resistance"
        value={spec.load.resistance}
        min={100}
        max={10e6}
        log
        round={(v) => Number(v.toPrecision(2))}
        text={(v) => formatQuantity(v, 'resistance', 2)}
        onChange={(resistance) => turn({ resistance })}
        onReset={back('resistance')}
      />
      {Object.keys(settings).length > 0 && (
        <button type="button" onClick={() => onChange({})}>
          All as in the set
        </button>
      )}
    </div>
  );
}

interface ProgrammeProps {
  settings: Settings;
  recording?: Programme;
  tones: Programme;
  turn(change: Settings): void;
  onRecording(recording: Programme): void;
}

function ProgrammeField({ settings, recording, tones, turn, onRecording }: ProgrammeProps) {
  const picker = useRef<HTMLInputElement>(null);
  const [problem, setProblem] = useState('');
  const [listening, setListening] = useState(false);
  const chosen = settings.programme;
  const kind = chosen?.kind ?? 'tone';
  const first = tones.kind === 'tones' ? tones.tones[0].frequency : 1000;
  const take = async (data: Blob, name: string) => {
    try {
      onRecording(await programmeFrom(data, name));
      turn({ programme: { kind: 'recording' } });
      setProblem('');
    } catch (error) {
      setProblem((error as Error).message);
    }
  };
  const speak = async () => {
    setListening(true);
    setProblem('');
    try {
      await take(await fromMicrophone(SPEAK), 'the microphone');
    } catch {
      setProblem('The microphone cannot be used: allow it in the browser, or choose a file.');
    } finally {
      setListening(false);
    }
  };
  const choose = (value: string) => {
    setProblem('');
    if (value === 'tone') turn({ programme: { kind: 'tone', frequency: first } });
    else if (value === 'two tones') turn({ programme: { kind: 'two tones', first: 500, second: 1300 } });
    else if (value === 'file') picker.current?.click();
    else if (value === 'microphone') void speak();
    else turn({ programme: { kind: 'recording' } });
  };
  const tone = (v: number) => `${formatNumber(v, 4)} Hz`;
  const toGrid = (v: number) => Math.max(50, Math.round(v / 50) * 50);
  return (
    <>
      <label class="explain-field">
        <span>Programme</span>
        <select value={kind} onChange={(event) => choose(event.currentTarget.value)}>
          <option value="tone">A tone</option>
          <option value="two tones">Two tones</option>
          {recording?.kind === 'recording' && <option value="recording">{recording.name}</option>}
          <option value="file">A sound file…</option>
          <option value="microphone">Your voice, {SPEAK} seconds…</option>
        </select>
      </label>
      <input
        ref={picker}
        class="visually-hidden"
        type="file"
        accept="audio/*"
        tabIndex={-1}
        aria-label="A sound file as programme"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) void take(file, file.name.slice(0, 60));
        }}
      />
      {listening && (
        <p class="quiet" role="status">
          Listening for {SPEAK} seconds: say something…
        </p>
      )}
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {kind === 'tone' && (
        <Slide
          label="Tone"
          value={first}
          min={50}
          max={5000}
          log
          round={toGrid}
          text={tone}
          onChange={(frequency) => turn({ programme: { kind: 'tone', frequency } })}
        />
      )}
      {chosen?.kind === 'two tones' && (
        <>
          <Slide
            label="First tone"
            value={chosen.first}
            min={50}
            max={5000}
            log
            round={toGrid}
            text={tone}
            onChange={(f) => turn({ programme: { ...chosen, first: f } })}
          />
          <Slide
            label="Second tone"
            value={chosen.second}
            min={50}
            max={5000}
            log
            round={toGrid}
            text={tone}
            onChange={(f) => turn({ programme: { ...chosen, second: f } })}
          />
        </>
      )}
    </>
  );
}
