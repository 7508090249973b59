interface Props<Value extends string> {
  readonly label: string;
  readonly value: Value;
  /** In their order: what is chosen, and its words. */
  readonly options: readonly (readonly [value: Value, words: string])[];
  readonly onChoose: (value: Value) => void;
  /** By which it is told from others: "station". */
  readonly name: string;
}

/** One choice of several, with what it is about before it. */
export function LabelledSelect<Value extends string>({ label, value, options, onChoose, name }: Props<Value>) {
  return (
    <label class="labelled-select">
      {label}{' '}
      <select name={name} value={value} onChange={(event) => onChoose(event.currentTarget.value as Value)}>
        {options.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
