/** Arguments to a command, or to a sentence that says what is wrong and what was probably meant. */
import { parseArgs } from 'node:util';
import { nearest } from './nearest';

/** What the program was asked to do. */
export type Command =
  | { readonly kind: 'check'; readonly paths: readonly string[]; readonly format: 'text' | 'json' }
  | {
      readonly kind: 'uses';
      readonly paths: readonly string[];
      readonly format: 'text' | 'json';
      /** Id of a library board or path of a board file. */
      readonly board?: string;
    }
  | { readonly kind: 'hookup'; readonly path: string }
  | { readonly kind: 'explain'; readonly rule?: string }
  | { readonly kind: 'serve' }
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | { readonly kind: 'wrong'; readonly message: string };

const COMMANDS = ['check', 'uses', 'hookup', 'explain', 'serve'] as const;
const FORMATS = ['text', 'json'] as const;
const OPTIONS = {
  format: { type: 'string' },
  board: { type: 'string' },
  stdio: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean' },
} as const;
type OptionName = keyof typeof OPTIONS;

/** The options a command takes besides `--help` and `--version`. */
const TAKES: Readonly<Record<(typeof COMMANDS)[number], readonly OptionName[]>> = {
  check: ['format'],
  uses: ['format', 'board'],
  hookup: [],
  explain: [],
  serve: ['stdio'],
};

/** Reads the arguments behind the program's name. Never throws. */
export function readArguments(args: readonly string[]): Command {
  const { values, positionals, tokens } = parseArgs({
    args: [...args],
    options: OPTIONS,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  for (const token of tokens) {
    if (token.kind === 'option') {
      const wrong = checkOption(token.name, token.rawName, token.value);
      if (wrong !== undefined) {
        return { kind: 'wrong', message: wrong };
      }
    }
  }
  if (values.help === true) {
    return { kind: 'help' };
  }
  if (values.version === true) {
    return { kind: 'version' };
  }
  const [name, ...rest] = positionals;
  const command = COMMANDS.find((known) => known === name);
  if (name === undefined) {
    return { kind: 'wrong', message: `Name a command: ${COMMANDS.join(', ')}.` };
  }
  if (command === undefined) {
    return { kind: 'wrong', message: `There is no command "${name}". ${suggest(name, COMMANDS)}` };
  }
  for (const option of Object.keys(values)) {
    if (!TAKES[command].some((known) => known === option)) {
      return { kind: 'wrong', message: `The command ${command} takes no --${option}.` };
    }
  }
  switch (command) {
    case 'check':
      return {
        kind: 'check',
        paths: rest.length === 0 ? ['.'] : rest,
        format: values.format === 'json' ? 'json' : 'text',
      };
    case 'uses':
      return {
        kind: 'uses',
        paths: rest.length === 0 ? ['.'] : rest,
        format: values.format === 'json' ? 'json' : 'text',
        ...(typeof values.board === 'string' ? { board: values.board } : {}),
      };
    case 'hookup':
      return rest.length > 1
        ? { kind: 'wrong', message: 'The command hookup takes one build at a time.' }
        : { kind: 'hookup', path: rest[0] ?? '.' };
    case 'explain':
      return rest.length > 1
        ? { kind: 'wrong', message: 'The command explain takes one rule at a time.' }
        : { kind: 'explain', ...(rest[0] === undefined ? {} : { rule: rest[0] }) };
    case 'serve':
      if (rest.length > 0 || values.stdio !== true) {
        return { kind: 'wrong', message: 'The command serve is called as: wiretrue serve --stdio' };
      }
      return { kind: 'serve' };
  }
}

function checkOption(name: string, written: string, value: string | undefined): string | undefined {
  const option = Object.entries(OPTIONS).find(([known]) => known === name)?.[1];
  if (option === undefined) {
    const known = Object.keys(OPTIONS).map((each) => `--${each}`);
    return `There is no option ${written}. ${suggest(`--${name}`, known)}`;
  }
  if (option.type === 'boolean') {
    return value === undefined ? undefined : `The option ${written} takes no value.`;
  }
  const wanted = name === 'board' ? 'the id of a board or the path of a board file' : FORMATS.join(' or ');
  if (value === undefined || value === '') {
    return `The option ${written} wants a value: ${wanted}.`;
  }
  return name === 'board' || FORMATS.some((format) => format === value)
    ? undefined
    : `There is no format "${value}". ${suggest(value, FORMATS)}`;
}

function suggest(name: string, known: readonly string[]): string {
  const near = nearest(name, known);
  return near === undefined ? `Possible: ${known.join(', ')}.` : `Did you mean ${near}?`;
}
