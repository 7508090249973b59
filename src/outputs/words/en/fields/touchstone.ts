import type { TouchstoneProblem, TouchstoneProblemFacts } from '../../../../engine/facts/touchstone-problems.ts';
import { counted } from '../grammar.ts';
import type { SentencesFor } from '../warnings/sentences-for.ts';

const OPTION_LINE = 'the option line, such as "# MHz S MA R 50",';

const PROBLEMS: SentencesFor<TouchstoneProblemFacts> = {
  'version-2-keyword': ({ keyword }) => `"[${keyword}]" belongs to version 2 files, which begin with "[Version] 2.0"`,
  'version-first': () => '"[Version]" must come before everything else',
  version: ({ given }) => `expected version 2.0 or 2.1, got "${given}"`,
  'one-port': ({ given }) => `expected 1 port, got "${given}": an aerial’s impedance is a one-port measurement`,
  'frequency-count': ({ given }) => `expected the number of frequencies that follow, got "${given}"`,
  'keyword-missing-before-data': ({ keyword }) => `"${keyword}" is missing before the data`,
  'not-of-one-port': ({ keyword }) => `"[${keyword}]" does not belong in a one-port file`,
  'keyword-not-known': ({ keyword }) => `the keyword "[${keyword}]" is not known`,
  'keyword-before-data': ({ given }) => `expected a keyword in brackets before the data, got "${given}"`,
  'option-line-before-data': () => `${OPTION_LINE} is missing before the data`,
  'option-line-before-reference': () => `${OPTION_LINE} must come before "[Reference]"`,
  'information-not-ended': () => '"[End Information]" is missing',
  'keyword-missing': ({ keyword }) => `"${keyword}" is missing`,
  'cut-short': () => '"[End]" is missing: the file may have been cut short',
  'frequencies-counted': ({ announced, counted: found }) =>
    `expected ${counted(announced, 'frequency', 'frequencies')}, got ${found}`,
  'no-data': () => 'there is no line of data: frequency, then two numbers',
  'reference-resistance': ({ given }) => `expected one reference resistance above 0 Ω, got "${given}"`,
  'two-port-parameter': ({ parameter }) =>
    `${parameter} parameters belong to two ports; an aerial is given as S, Z or Y`,
  'option-resistance': ({ given }) => `expected a resistance above 0 after "R", got "${given}"`,
  'option-not-known': ({ given }) =>
    `expected a unit (Hz, kHz, MHz, GHz), S, Z or Y, MA, DB or RI, or R and a resistance, got "${given}"`,
  numbers: ({ given }) => `expected numbers, got "${given}"`,
  'decimal-comma': ({ given }) => `expected numbers with a decimal point, got "${given}"`,
  binary: () => 'expected text, got a file that is none: save the measurement as Touchstone (.s1p or .s2p)',
  ports: ({ given }) => `expected 1 or 2 ports, got "${given}"`,
  'nine-numbers': ({ counted: found, least }) =>
    `expected a frequency and ${least - 1} numbers, got ${counted(found, 'number', 'numbers')}`,
  'three-or-nine-numbers': ({ counted: found }) =>
    `expected a frequency and 2 numbers (one port) or 8 (two ports), got ${counted(found, 'number', 'numbers')}`,
  'parameter-not-read': ({ parameter }) => `expected S, Z or Y parameters, got ${parameter}`,
  'references-differ': () => 'expected one reference resistance for both ports, got two',
  'table-columns': () =>
    'expected a Touchstone file (.s1p, .s2p), or a table of S11 alone with a heading over each column: frequency with its unit, and real and imaginary part, or magnitude (or dB) and phase in degrees',
  'no-scattering': () => 'expected parameters of a passive network, got values from which no S parameters follow',
  'three-numbers': ({ counted: found }) =>
    found === 9
      ? 'expected a frequency and two numbers, got 9 numbers, as in a two-port file'
      : `expected a frequency and two numbers, got ${counted(found, 'number', 'numbers')}`,
  'negative-frequency': ({ value }) => `expected a frequency of 0 or more, got ${value}`,
  'frequency-not-rising': ({ value }) => `expected frequencies that rise from line to line, got ${value}`,
  more: ({ count }) => `and ${counted(count, 'more problem like these', 'more problems like these')}`,
};

/** "line 3: expected numbers, got …". */
export const touchstoneProblem = (problem: TouchstoneProblem): string =>
  `line ${problem.line}: ${(PROBLEMS[problem.code] as (figures: TouchstoneProblem) => string)(problem)}`;
