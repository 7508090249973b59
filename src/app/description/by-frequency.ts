/** Places in a list of stations, in the order of their frequencies. */
export const byFrequency = (stations: readonly { readonly frequency: number }[]): number[] =>
  stations.map((_, i) => i).sort((a, b) => stations[a].frequency - stations[b].frequency);
