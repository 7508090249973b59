/**
 * A name that nothing has yet: "coil", else "coil 2", "coil 3" and so on.
 * @param first the name that is tried first
 * @param isTaken whether something has a name
 * @returns the first that is free
 */
export function untakenName(first: string, isTaken: (name: string) => boolean): string {
  let name = first;
  for (let n = 2; isTaken(name); n++) name = `${first} ${n}`;
  return name;
}
