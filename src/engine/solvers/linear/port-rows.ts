/**
 * The network as its ports see it, in one array that is cheap to keep: of every port the open voltage and its impedances
 * to all ports, re and im of each beside one another.
 */
export type PortRows = Float64Array;

/** Where the open voltage of a port stands. */
export const openAt = (ports: number, port: number): number => 2 * (1 + ports) * port;
/** Where the impedance between two ports stands. */
export const impedanceAt = (ports: number, port: number, other: number): number =>
  openAt(ports, port) + 2 * (1 + other);

/**
 * The network with an admittance across its last port, as the other ports see it.
 * @param from of so many ports @param re of the admittance, S @param into for one port less
 */
export function joinLast(from: PortRows, ports: number, re: number, im: number, into: PortRows): PortRows {
  const left = ports - 1;
  const last = openAt(ports, left);
  // 1/(z + 1/y): the current into the admittance, per volt that stood there.
  const size = re * re + im * im;
  const at = impedanceAt(ports, left, left);
  const zr = size > 0 ? from[at] + re / size : Number.POSITIVE_INFINITY;
  const zi = size > 0 ? from[at + 1] - im / size : 0;
  const d = zr * zr + zi * zi;
  const [fr, fi] = size > 0 ? [zr / d, -zi / d] : [0, 0];
  for (let port = 0; port < left; port++) {
    const row = openAt(ports, port);
    const to = row + 2 * (1 + left);
    const gr = from[to] * fr - from[to + 1] * fi;
    const gi = from[to] * fi + from[to + 1] * fr;
    const out = openAt(left, port);
    for (let k = 0; k < 2 * ports; k += 2) {
      into[out + k] = from[row + k] - (gr * from[last + k] - gi * from[last + k + 1]);
      into[out + k + 1] = from[row + k + 1] - (gr * from[last + k + 1] + gi * from[last + k]);
    }
  }
  return into;
}
