import { calculationWords, commandWords, helpTexts } from '../outputs/words/index.ts';
import { CALCULATIONS } from './calc/index.ts';
import type { Command } from './command.ts';

type Rows = readonly (readonly [term: string, meaning: string])[];

/** How a command is called, a line for each form, without the program's name. */
export const usageOf = ({ name }: Command): readonly string[] => commandWords[name].usage;

export const aboutOf = ({ name }: Command): string => commandWords[name].about;

/** Options of a command: how each is written, and its meaning. */
export function optionRows({ name }: Command): Rows {
  const words: Readonly<Record<string, { readonly value?: string; readonly about: string | (() => string) }>> =
    commandWords[name].options;
  return Object.entries(words).map(([option, { value, about }]) => {
    const meaning = typeof about === 'function' ? about() : about;
    return [value === undefined ? `--${option}` : `--${option} ${value}`, meaning];
  });
}

/** What `calc` can be asked for. */
export const calculationRows = (): Rows => CALCULATIONS.map(({ name }) => [name, calculationWords[name]]);

const aligned = (rows: Rows): string[] => {
  const widest = Math.max(0, ...rows.map(([term]) => term.length));
  return rows.map(([term, meaning]) => `  ${term.padEnd(widest)}  ${meaning}`);
};
const section = (lines: readonly string[], heading?: string): readonly string[] =>
  lines.length === 0 ? [] : [...(heading === undefined ? [] : [heading]), ...lines, ''];

/** The list of commands. @param strong makes a heading stand out. */
export const help = (commands: readonly Command[], strong: (text: string) => string): string =>
  [
    strong('faintwave'),
    helpTexts.tagline,
    '',
    helpTexts.usage(helpTexts.generalCall),
    '',
    ...section(aligned(commands.map((command) => [command.name, aboutOf(command)]))),
    helpTexts.start,
    '  faintwave path examples/medium-wave-galena.json',
    '',
    helpTexts.more,
    '',
  ].join('\n');

/** The help of one command. @param strong makes a heading stand out. */
export const commandHelp = (command: Command, strong: (text: string) => string): string =>
  [
    ...usageOf(command).map((call, i) => (i === 0 ? helpTexts.usage(call) : helpTexts.usageMore(call))),
    '',
    aboutOf(command),
    '',
    ...section(aligned(optionRows(command))),
    ...(command.name === 'calc' ? section(aligned(calculationRows()), helpTexts.calculations) : []),
    ...section(
      command.examples.map((example) => `  ${example}`),
      strong(helpTexts.examples),
    ),
  ].join('\n');
