/** The names that a shell offers, by kind; where a kind is not here, the shell offers files or nothing. */
import type { CommandSpec, Names, OptionSpec } from '../spec';

/** All that the scripts are written from. */
export interface Known {
  readonly commands: readonly CommandSpec[];
  /** Options of every command. */
  readonly common: readonly OptionSpec[];
  readonly names: Readonly<Partial<Record<Names, readonly string[]>>>;
}

/** What stands behind an option or in a place: words to choose from, files, or something free. */
export type Offer =
  | { readonly kind: 'words'; readonly words: readonly string[]; readonly files: boolean }
  | { readonly kind: 'files' }
  | { readonly kind: 'free' };

export function offerOf(
  spec: { readonly choices?: readonly string[]; readonly names?: Names },
  known: Known,
): Offer {
  const words = spec.choices ?? (spec.names === undefined ? undefined : known.names[spec.names]);
  if (words !== undefined) {
    // A board may also be the path of a board file.
    return { kind: 'words', words, files: spec.names === 'board' };
  }
  return { kind: spec.names === 'file' || spec.names === 'path' ? 'files' : 'free' };
}

/** `-o` and `--output`. */
export function spellingsOf({ name, short }: OptionSpec): readonly string[] {
  return [...(short === undefined ? [] : [`-${short}`]), `--${name}`];
}

/** The options of a command, with `--help`. */
export function optionsOf(command: CommandSpec, known: Known): readonly OptionSpec[] {
  return [...command.options, ...known.common.filter(({ name }) => name === 'help')];
}

/** A text in single quotes, for bash and zsh. */
export function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
