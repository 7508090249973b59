const RANGE = /^(\d{1,2})(?::?(\d{2}))?\s*(?:-|–|to)\s*(\d{1,2})(?::?(\d{2}))?$/i;

/**
 * Hours on the air as people write them: "06:00-22:00", "0600-0100", "5-9, 16-24", "24h".
 * @returns stretches in minutes from midnight, an end before its start running over midnight; undefined if not understood.
 */
export function readHours(text: string): readonly (readonly [number, number])[] | undefined {
  const trimmed = text.slice(0, 200).trim();
  if (trimmed === '' || /^(24 ?h(ours)?|24\/7|always|all day)$/i.test(trimmed)) return [[0, 1440]];
  const stretches: [number, number][] = [];
  for (const part of trimmed.split(/\s*[,;]\s*/)) {
    const match = RANGE.exec(part.replace(/\s*(UTC|GMT|Z|h)$/i, ''));
    if (!match) return undefined;
    const start = Number(match[1]) * 60 + Number(match[2] ?? 0);
    const end = Number(match[3]) * 60 + Number(match[4] ?? 0);
    if (!(start <= 1440 && end <= 1440 && Number(match[2] ?? 0) < 60 && Number(match[4] ?? 0) < 60)) return undefined;
    stretches.push([start, end]);
  }
  return stretches;
}

/**
 * Whether a station is on the air.
 * @param utcOffset minutes its hours are ahead of UTC; default 0.
 * @returns undefined when its hours are not given or not understood.
 */
export function onAir(hours: string | undefined, time: Date, utcOffset = 0): boolean | undefined {
  const stretches = hours === undefined ? undefined : readHours(hours);
  if (!stretches) return undefined;
  const minutes = (((time.getTime() / 60_000 + utcOffset) % 1440) + 1440) % 1440;
  return stretches.some(([start, end]) =>
    end > start ? minutes >= start && minutes < end : minutes >= start || minutes < end,
  );
}
