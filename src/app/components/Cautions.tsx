import { reception } from '../state/reception.ts';

const ABOUT: Readonly<Record<string, RegExp>> = {
  aerial: /power line|thunder|lightning|arrester/i,
  earth: /mains earth|neutral|gas pipe|house.s earth|earth (rod|pin)/i,
  detector: /lead sulphide|galena|heater|valve|HT\b/i,
  load: /mains|isolat|volume|amplifier/i,
  old: /asbestos|PCB|radium|selenium/i,
};

/** The cautions that belong where one is working; all of them stand together at the side as well. */
export function Cautions({ about }: { about: keyof typeof ABOUT }) {
  const cautions = reception.value?.cautions.filter((caution) => ABOUT[about].test(caution)) ?? [];
  if (cautions.length === 0) return null;
  return (
    <div class="caution-here">
      {cautions.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </div>
  );
}
