/** A part of a set, by its place in the description: "coil:0", "tuning", "trap:1/coil", "element:3". Holds for one build. */
export type PartId = string & { readonly __part: unique symbol };
/** An end or tap of a part: "coil:0#11" is turn 11, "tuning#moving". */
export type TerminalId = string & { readonly __terminal: unique symbol };
/** What wires join into one: a node of the circuit whose contacts and leads count as wire. */
export type JointId = string & { readonly __joint: unique symbol };
/** An element of the circuit: its part and what of it, "coil:0/winding:0-11". */
export type ElementId = string & { readonly __element: unique symbol };

/** What an element stands for of its part. */
export type ElementRole =
  /** A coil's turns, all or those between two taps, and the capacitance between them. */
  | 'winding'
  | 'self-capacitance'
  | 'junction-capacitance'
  /** Leads and sliders: wire as far as a drawing is concerned. */
  | 'contact'
  /** What stands outside the board. */
  | 'emf'
  | 'aerial'
  | 'earth'
  /** A part that is one element. */
  | 'part'
  /** Of what one listens with: its own elements, those of a transformer before it, its cord. */
  | 'transducer'
  | 'primary'
  | 'secondary'
  | 'cord'
  | 'by-pass'
  | 'bias'
  | 'device';

/** Whose element it is, and what of it. */
export interface Owner {
  readonly part: PartId;
  readonly role: ElementRole;
  /** Of a winding, or of the emf in it: between which turns, counted from the earthed end. */
  readonly turns?: readonly [number, number];
}

export const partId = (text: string): PartId => text as PartId;
export const terminalId = (part: PartId, end: string): TerminalId => `${part}#${end}` as TerminalId;
export const jointId = (node: string): JointId => node as JointId;
export const elementId = (text: string): ElementId => text as ElementId;

/** One side of a transformer: what its elements are together. */
export const sideOf = (part: PartId, role: 'primary' | 'secondary'): string => `${part}/${role}`;

/** A count of turns as an id has it: no finer than taps can be told apart. */
export const turnsInId = (turns: number): string => `${Number(turns.toFixed(3))}`;

/**
 * Id and owner of an element.
 * @param part whose element it is
 * @param role what of the part
 * @param options the turns it covers; a word that tells apart elements of one role
 * @param detail tells apart the elements that have one role of a part.
 * @returns what every element carries
 */
export function owned(
  part: PartId,
  role: ElementRole,
  { turns, detail }: { readonly turns?: readonly [number, number]; readonly detail?: string } = {},
): { readonly id: ElementId; readonly owner: Owner } {
  const stretch = turns ? `:${turnsInId(turns[0])}-${turnsInId(turns[1])}` : '';
  return {
    id: elementId(`${part}/${role}${stretch}${detail ? `:${detail}` : ''}`),
    owner: turns ? { part, role, turns } : { part, role },
  };
}
