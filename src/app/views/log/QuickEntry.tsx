import { useState } from 'preact/hooks';
import { HEARD, type HeardAs, type LogCells, readLog, type SetDescription, writeLog } from '../../../engine/index.ts';
import { logProblemText, stationFrequency, logWords as texts, verdictWords } from '../../../outputs/words/index.ts';
import { byFrequency } from '../../description/by-frequency.ts';
import { useOpenSet } from '../../state/set-context.ts';
import { HeardBars } from '../set/Heard.tsx';

interface Props {
  readonly set: SetDescription;
  readonly onWrite: (cells: LogCells) => void;
}

const MORE = ['frequency', 'pointer', 'shunt', 'conditions', 'spot', 'remark'] as const;
type More = Partial<Record<(typeof MORE)[number], string>>;

/** "2026-11-30T21:40+01:00": by the clock of whoever listens. */
function timeText(at: Date): string {
  const two = (value: number): string => String(Math.floor(Math.abs(value))).padStart(2, '0');
  const offset = -at.getTimezoneOffset();
  const zone = offset === 0 ? 'Z' : `${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
  const date = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${date}T${two(at.getHours())}:${two(at.getMinutes())}${zone}`;
}

/** Station, how it was heard, write it down: three taps with the phones on. */
export function QuickEntry({ set, onWrite }: Props) {
  const { chosen } = useOpenSet();
  const { stations } = set.place;
  const [station, setStation] = useState<number | 'unknown' | undefined>(chosen.value?.index);
  const [heard, setHeard] = useState<HeardAs | undefined>();
  const [more, setMore] = useState<More>({});
  const [problems, setProblems] = useState<readonly string[]>([]);
  const order = byFrequency(stations);
  const isPlaced = typeof station === 'number' || Boolean(more.frequency?.trim() || more.pointer?.trim());
  const canWrite = heard !== undefined && isPlaced;
  const write = () => {
    if (!canWrite) return;
    const of = typeof station === 'number' ? stations[station] : undefined;
    const typed = Object.fromEntries(
      Object.entries(more)
        .map(([key, text]) => [key, text.trim()])
        .filter(([, text]) => text !== ''),
    );
    const cells: LogCells = {
      time: timeText(new Date()),
      ...(of ? { station: of.name, frequency: String(of.frequency / 1e3) } : {}),
      heard,
      ...typed,
    };
    const { problems: wrong } = readLog(writeLog([cells]));
    setProblems(wrong.map((one) => logProblemText(one)));
    if (wrong.length > 0) return;
    onWrite(cells);
    setHeard(undefined);
    setMore(more.conditions ? { conditions: more.conditions } : {});
  };
  return (
    <div class="log-entry card">
      <h2>{texts.title}</h2>
      <fieldset>
        <legend>{texts.which}</legend>
        <div class="log-stations">
          {order.map((index) => (
            <button key={index} type="button" aria-pressed={station === index} onClick={() => setStation(index)}>
              <span class="log-station-name">{stations[index].name}</span>{' '}
              <span class="quiet">{stationFrequency(stations[index].frequency)}</span>
            </button>
          ))}
          <button type="button" aria-pressed={station === 'unknown'} onClick={() => setStation('unknown')}>
            {texts.unknown}
          </button>
        </div>
      </fieldset>
      <fieldset>
        <legend>{texts.how}</legend>
        <div class="log-heard">
          {HEARD.map((one) => (
            <button key={one} type="button" aria-pressed={heard === one} onClick={() => setHeard(one)}>
              <HeardBars verdict={one} /> {verdictWords[one]}
            </button>
          ))}
        </div>
      </fieldset>
      <details class="log-more" open={station === 'unknown' ? true : undefined}>
        <summary>{texts.more}</summary>
        {MORE.map((key) => (
          <label key={key}>
            {texts.fields[key]}
            <input
              type="text"
              autocomplete="off"
              value={more[key] ?? ''}
              placeholder={texts.examples[key]}
              onInput={(event) => setMore({ ...more, [key]: event.currentTarget.value })}
            />
          </label>
        ))}
      </details>
      {problems.length > 0 && (
        <ul class="problem" role="alert">
          {problems.map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
      <button type="button" class="primary log-write" disabled={!canWrite} onClick={write}>
        {texts.write}
      </button>
      {!canWrite && <p class="quiet">{isPlaced ? texts.chooseHow : texts.chooseWhich}</p>}
    </div>
  );
}
