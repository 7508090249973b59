/** By which sets that stand side by side are told apart. */
export const setLetter = (index: number): string => 'ABCD'[index];
