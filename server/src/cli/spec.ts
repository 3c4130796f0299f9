/**
 * What a command is, as data: its arguments and options, what it prints, how it ends. The arguments are read by it, the
 * help is written from it and so are the shells' completions, so that none of them can tell another story.
 */
import type { TextStyle } from './print/paint';

/** Kinds of names that a shell can complete and a message can suggest from. */
export type Names = 'path' | 'file' | 'board' | 'rule' | 'revision';

/** What an option takes behind its name. */
export interface ValueSpec {
  /** As the help shows it: `FILE`, `K/N`. */
  readonly words: string;
  /** The only values there are. */
  readonly choices?: readonly string[];
  readonly names?: Names;
}

/** One option of a command. */
export interface OptionSpec {
  readonly name: string;
  readonly short?: string;
  /** Absent: the option is a switch. */
  readonly value?: ValueSpec;
  /** A phrase for the help; begins small, no full stop. */
  readonly about: string;
}

/** The arguments that are no options. */
export interface PlaceSpec {
  /** As the help shows them: `[path ...]`. */
  readonly words: string;
  readonly least: number;
  readonly most: number;
  readonly choices?: readonly string[];
  readonly names?: Names;
}

/** What was given to a command. */
export interface Given {
  readonly places: readonly string[];
  /** By option name; true for a switch. */
  readonly options: Readonly<Record<string, string | true>>;
}

/** One command. */
export interface CommandSpec {
  readonly name: string;
  /** One sentence for the list of commands. */
  readonly summary: string;
  readonly places: PlaceSpec;
  readonly options: readonly OptionSpec[];
  /** Paragraphs of its own help; a line that begins with two spaces is kept as it is. */
  readonly about: readonly string[];
  readonly exits: readonly (readonly [code: number, words: string])[];
  readonly examples: readonly (readonly [line: string, words: string])[];
  /**
   * Runs it. Returns the exit code, or nothing where the process goes on by itself.
   * @throws Refusal in words where it cannot do what was asked.
   */
  run(given: Given, here: Surroundings): Promise<number | undefined>;
}

/** Something that cannot be done as it was asked for: a whole sentence for the person, exit code 2. */
export class Refusal extends Error {}

/** What the program has of its surroundings. */
export interface Surroundings {
  /** The current folder. */
  readonly base: string;
  /** The folder the program's own file lies in: libraries and version are looked for from there upwards. */
  readonly home: string;
  /** The file that a worker thread runs. Absent: everything runs in this thread. */
  readonly worker?: string;
  readonly style: TextStyle;
  /** True where errors and progress go to a terminal. */
  readonly errorTerminal: boolean;
  out(text: string): void;
  err(text: string): void;
  /** Runs the language server over standard input and output; returns when it listens. */
  serve(): void;
  /** Resolves when somebody asks the program to end. */
  interrupted(): Promise<void>;
}

/** The option `--format` of a command. */
export function formatOption(choices: readonly string[]): OptionSpec {
  const about = `how to print: ${choices.join(', ')}; ${choices[0]} without it`;
  return { name: 'format', value: { words: 'FORMAT', choices }, about };
}

/** The option `--output`, which every command that prints a result has. */
export const OUTPUT: OptionSpec = {
  name: 'output',
  short: 'o',
  value: { words: 'FILE', names: 'file' },
  about: 'write into this file instead of printing; it is whole or not there at all',
};

/** The value of an option, where it was given one. */
export function optionOf(given: Given, name: string): string | undefined {
  const value = given.options[name];
  return value === true ? undefined : value;
}
