import { useEffect, useRef, useState } from 'preact/hooks';
import type { Reception } from '../../../engine/index.ts';
import {
  DETECTOR_CHOICES,
  isRetuned,
  LONGEST_RECORDING,
  type RecordedProgramme,
  type Settings,
  USUAL_TONE,
  type WaveProgramme,
  type WaveSpec,
  withSettings,
} from '../../../outputs/explain/index.ts';
import { detectorName, explainTexts } from '../../../outputs/words/index.ts';
import { FilePicker } from '../../widgets/FilePicker.tsx';
import { fromMicrophone, programmeFrom } from './hear.ts';
import { Slide } from './Slide.tsx';
import { waveProblemText } from './scene-problem.ts';

interface Props {
  settings: Settings;
  /** The set's own waves. */
  base: WaveSpec;
  reception?: Reception;
  recording?: WaveProgramme;
  onChange(settings: Settings): void;
  /** A new one; it is then the programme. */
  onRecording(recording: RecordedProgramme): void;
}

/** Changes one or more of the settings. */
type Turn = (change: Settings) => void;

/** Whatever one turns at will. */
export function Controls(props: Props) {
  const { settings, base, reception, recording, onChange, onRecording } = props;
  // As it will be, at once: the waves follow.
  const spec = withSettings(base, settings, recording);
  const turn: Turn = (change) => onChange({ ...settings, ...change });
  const back = (key: keyof Settings) =>
    settings[key] === undefined
      ? undefined
      : () => {
          const { [key]: _, ...rest } = settings;
          onChange(rest);
        };
  const texts = explainTexts.settings;
  return (
    <div class="explain-controls">
      <StationField settings={settings} reception={reception} turn={turn} />
      <ProgrammeField {...{ settings, recording, onRecording, turn }} tones={spec.programme} />
      <SignalSlides settings={settings} spec={spec} turn={turn} back={back} />
      <label class="explain-check">
        <input
          type="checkbox"
          checked={settings.neighbours !== false}
          onChange={(event) => turn({ neighbours: event.currentTarget.checked ? undefined : false })}
        />{' '}
        {texts.neighbours}
      </label>
      <label class="explain-field">
        <span>{texts.detector}</span>
        <select
          value={settings.detector ?? ''}
          onChange={(event) => turn({ detector: event.currentTarget.value || undefined })}
        >
          <option value="">{texts.asInSet}</option>
          {DETECTOR_CHOICES.map((id) => (
            <option key={id} value={id}>
              {detectorName(id)}
            </option>
          ))}
        </select>
      </label>
      <DetectorSlides spec={spec} turn={turn} back={back} />
      {Object.keys(settings).length > 0 && (
        <button type="button" onClick={() => onChange({})}>
          {texts.reset}
        </button>
      )}
    </div>
  );
}

function StationField({ settings, reception, turn }: Pick<Props, 'settings' | 'reception'> & { turn: Turn }) {
  const stations = reception?.stations.filter((s) => s.detectorVoltage > 0) ?? [];
  if (stations.length < 2) return null;
  const texts = explainTexts.settings;
  return (
    <label class="explain-field">
      <span>{texts.station}</span>
      <select
        value={String(settings.station ?? reception?.best[0] ?? 0)}
        onChange={(event) =>
          turn({ station: Number(event.currentTarget.value), carrier: undefined, otherBand: undefined })
        }
      >
        {stations.map((s) => (
          <option key={s.index} value={String(s.index)}>
            {texts.stationChoice(s.name, s.frequency)}
          </option>
        ))}
      </select>
    </label>
  );
}

interface SlidesProps {
  spec: WaveSpec;
  turn: Turn;
  /** Puts one of the settings back to the set's own; undefined where it is that already. */
  back(key: keyof Settings): (() => void) | undefined;
}

const twoDigits = (v: number): number => Number(v.toPrecision(2));

/** Of the station and the tuned circuit. */
function SignalSlides({ settings, spec, turn, back }: SlidesProps & Pick<Props, 'settings'>) {
  const texts = explainTexts.settings;
  return (
    <>
      <Slide
        label={texts.depth}
        value={spec.depth}
        min={0}
        max={1.5}
        round={(v) => Math.round(v * 100) / 100}
        text={texts.depthValue}
        onChange={(depth) => turn({ depth })}
        onReset={back('depth')}
      />
      <Slide
        label={texts.carrier}
        value={spec.carrier}
        min={150e3}
        max={1700e3}
        round={(v) => Math.round(v / 1e3) * 1e3}
        text={texts.carrierValue}
        onChange={(carrier) => turn({ carrier, otherBand: undefined })}
        onReset={back('carrier') ?? back('otherBand')}
      />
      {isRetuned(settings) && (
        <label class="explain-check">
          <input
            type="checkbox"
            checked={settings.keepsCoil === true}
            onChange={(event) => turn({ keepsCoil: event.currentTarget.checked || undefined })}
          />{' '}
          {texts.keepsCoil}
        </label>
      )}
      <Slide
        label={texts.loadedQ}
        value={spec.loadedQ}
        min={1}
        max={500}
        log
        round={twoDigits}
        text={(v) => texts.loadedQValue(v, spec.carrier)}
        onChange={(loadedQ) => turn({ loadedQ })}
        onReset={back('loadedQ')}
      />
    </>
  );
}

/** Of the detector and its load. */
function DetectorSlides({ spec, turn, back }: SlidesProps) {
  const texts = explainTexts.settings;
  return (
    <>
      <Slide
        label={texts.strength}
        value={spec.atDetector}
        min={1e-3}
        max={10}
        log
        round={twoDigits}
        text={texts.strengthValue}
        onChange={(strength) => turn({ strength })}
        onReset={back('strength')}
      />
      <Slide
        label={texts.capacitance}
        value={Math.max(spec.load.capacitance, 5e-12)}
        min={5e-12}
        max={1e-6}
        log
        round={twoDigits}
        text={texts.capacitanceValue}
        onChange={(capacitance) => turn({ capacitance })}
        onReset={back('capacitance')}
      />
      <Slide
        label={texts.resistance}
        value={spec.load.resistance}
        min={100}
        max={10e6}
        log
        round={twoDigits}
        text={texts.resistanceValue}
        onChange={(resistance) => turn({ resistance })}
        onReset={back('resistance')}
      />
    </>
  );
}

interface ProgrammeProps {
  settings: Settings;
  recording?: WaveProgramme;
  tones: WaveProgramme;
  turn: Turn;
  onRecording(recording: RecordedProgramme): void;
}

/** A sound file or the microphone as programme. */
function useRecording({ onRecording }: Pick<ProgrammeProps, 'onRecording'>) {
  const [problem, setProblem] = useState('');
  const [stop, setStop] = useState<(() => void) | undefined>();
  const texts = explainTexts.settings;
  // It takes a minute at most, and much may have been changed meanwhile.
  const latest = useRef(onRecording);
  latest.current = onRecording;
  const [leaving] = useState(() => new AbortController());
  const { signal } = leaving;
  useEffect(() => () => leaving.abort(), []);
  const take = async (data: Blob, name: string) => {
    if (signal.aborted) return;
    try {
      const recorded = await programmeFrom(data, name);
      if (signal.aborted) return;
      latest.current(recorded);
      setProblem('');
    } catch (error) {
      setProblem(waveProblemText(error));
    }
  };
  const speak = async () => {
    setProblem('');
    try {
      const microphone = await fromMicrophone(LONGEST_RECORDING, signal);
      setStop(() => microphone.stop);
      await take(await microphone.done, texts.microphoneName);
    } catch {
      setProblem(texts.problems.microphone);
    } finally {
      setStop(undefined);
    }
  };
  return { problem, setProblem, stop, take, speak };
}

function ProgrammeField({ settings, recording, tones, turn, onRecording }: ProgrammeProps) {
  const picker = useRef<HTMLInputElement>(null);
  const { problem, setProblem, stop, take, speak } = useRecording({ onRecording });
  const chosen = settings.programme;
  const kind = chosen?.kind ?? 'tone';
  const first = tones.kind === 'tones' ? tones.tones[0].frequency : USUAL_TONE;
  const choose = (value: string) => {
    setProblem('');
    if (value === 'tone') turn({ programme: { kind: 'tone', frequency: first } });
    else if (value === 'two tones') turn({ programme: { kind: 'two tones', first: 500, second: 1300 } });
    else if (value === 'file') picker.current?.click();
    else if (value === 'microphone') void speak();
    else turn({ programme: { kind: 'recording' } });
  };
  const texts = explainTexts.settings;
  return (
    <>
      <label class="explain-field">
        <span>{texts.programme}</span>
        <select value={kind} onChange={(event) => choose(event.currentTarget.value)}>
          <option value="tone">{texts.tone}</option>
          <option value="two tones">{texts.twoTones}</option>
          {recording?.kind === 'recording' && <option value="recording">{recording.name}</option>}
          <option value="file">{texts.file}</option>
          <option value="microphone">{texts.microphone(LONGEST_RECORDING)}</option>
        </select>
      </label>
      <FilePicker
        picker={picker}
        accept="audio/*"
        label={texts.filePicker}
        onFile={(file) => void take(file, file.name.slice(0, 60))}
      />
      {stop && (
        <p class="explain-buttons" role="status">
          {texts.recording(LONGEST_RECORDING)}
          <button type="button" onClick={stop}>
            {texts.stopRecording}
          </button>
        </p>
      )}
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {kind === 'tone' && (
        <ToneSlide
          label={texts.toneFrequency}
          value={first}
          onChange={(frequency) => turn({ programme: { kind: 'tone', frequency } })}
        />
      )}
      {chosen?.kind === 'two tones' && (
        <>
          <ToneSlide
            label={texts.firstTone}
            value={chosen.first}
            onChange={(f) => turn({ programme: { ...chosen, first: f } })}
          />
          <ToneSlide
            label={texts.secondTone}
            value={chosen.second}
            onChange={(f) => turn({ programme: { ...chosen, second: f } })}
          />
        </>
      )}
    </>
  );
}

function ToneSlide({ label, value, onChange }: { label: string; value: number; onChange(f: number): void }) {
  return (
    <Slide
      label={label}
      value={value}
      min={50}
      max={5000}
      log
      round={(v) => Math.max(50, Math.round(v / 50) * 50)}
      text={explainTexts.settings.toneValue}
      onChange={onChange}
    />
  );
}
