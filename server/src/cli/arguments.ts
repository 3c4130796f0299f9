/** Arguments to a command with its options, or to a sentence that says what is wrong and what was probably meant. */
import { parseArgs } from 'node:util';
import { nearest } from './nearest';
import type { CommandSpec, Given, OptionSpec } from './spec';

/** What the program was asked to do. */
export type Asked =
  | { readonly kind: 'run'; readonly command: CommandSpec; readonly given: Given }
  /** Of one command where it is named. */
  | { readonly kind: 'help'; readonly command?: CommandSpec }
  | { readonly kind: 'version' }
  | { readonly kind: 'wrong'; readonly message: string };

/** Options of every command. */
export const COMMON: readonly OptionSpec[] = [
  { name: 'help', short: 'h', about: 'print this help' },
  { name: 'version', about: 'print the version' },
];

/** Reads the arguments behind the program's name. Never throws. */
export function readArguments(args: readonly string[], commands: readonly CommandSpec[]): Asked {
  const all = [...COMMON, ...commands.flatMap((command) => command.options)];
  const options = Object.fromEntries(
    all.map(({ name, short, value }) => [
      name,
      { type: value ? ('string' as const) : ('boolean' as const), ...(short === undefined ? {} : { short }) },
    ]),
  );
  const { positionals, tokens } = parseArgs({
    args: [...args],
    options,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const names = commands.map((command) => command.name);
  const [name, ...rest] = positionals;
  // `wiretrue help check` is what many type first.
  const asksHelp = name === 'help' && !names.includes('help');
  const wanted = asksHelp ? rest[0] : name;
  const command = commands.find((known) => known.name === wanted);
  const own = command === undefined ? all : [...command.options, ...COMMON];
  const values: Record<string, string | true> = {};
  for (const token of tokens) {
    if (token.kind === 'option') {
      const option = own.find((known) => known.name === token.name);
      const elsewhere = all.some((known) => known.name === token.name);
      const wrong =
        option === undefined
          ? unknownOption(token.name, token.rawName, own, elsewhere, command)
          : checkValue(option, token.rawName, token.value);
      if (wrong !== undefined) {
        return { kind: 'wrong', message: wrong };
      }
      if (token.name in values && option?.value !== undefined) {
        return { kind: 'wrong', message: `The option --${token.name} is given twice.` };
      }
      values[token.name] = token.value ?? true;
    }
  }
  if (values.version === true) {
    return { kind: 'version' };
  }
  if (wanted !== undefined && command === undefined) {
    return { kind: 'wrong', message: `There is no command "${wanted}". ${suggest(wanted, names)}` };
  }
  if (values.help === true || asksHelp) {
    return { kind: 'help', ...(command === undefined ? {} : { command }) };
  }
  if (command === undefined) {
    return { kind: 'wrong', message: `Name a command: ${names.join(', ')}.` };
  }
  const wrong = checkPlaces(command, rest);
  return wrong === undefined
    ? { kind: 'run', command, given: { places: rest, options: values } }
    : { kind: 'wrong', message: wrong };
}

function unknownOption(
  name: string,
  written: string,
  own: readonly OptionSpec[],
  elsewhere: boolean,
  command: CommandSpec | undefined,
): string {
  const near = nearest(
    `--${name}`,
    own.map((each) => `--${each.name}`),
  );
  const known = own.map((each) => `--${each.name}`).join(', ');
  const way = near === undefined ? `Possible: ${known}.` : `Did you mean ${near}?`;
  return elsewhere && command !== undefined
    ? `The command ${command.name} takes no --${name}.`
    : `There is no option ${written}. ${way}`;
}

function checkValue(option: OptionSpec, written: string, value: string | undefined): string | undefined {
  const { value: wanted } = option;
  if (wanted === undefined) {
    return value === undefined ? undefined : `The option ${written} takes no value.`;
  }
  const { choices } = wanted;
  if (value === undefined || value === '') {
    return `The option ${written} wants a value: ${choices?.join(', ') ?? wanted.words}.`;
  }
  return choices === undefined || choices.includes(value)
    ? undefined
    : `There is no ${option.name} "${value}". ${suggest(value, choices)}`;
}

function checkPlaces({ name, places }: CommandSpec, given: readonly string[]): string | undefined {
  if (given.length < places.least || given.length > places.most) {
    return `The command ${name} is called as: wiretrue ${name} ${places.words}`.trimEnd();
  }
  const [first] = given;
  return first === undefined || places.choices === undefined || places.choices.includes(first)
    ? undefined
    : `The command ${name} knows no "${first}". ${suggest(first, places.choices)}`;
}

/** The way out of a mistyped name. */
export function suggest(name: string, known: readonly string[]): string {
  const near = nearest(name, known);
  return near === undefined ? `Possible: ${known.join(', ')}.` : `Did you mean ${near}?`;
}
