/** What `--help` prints, of the program and of each command: written from the commands themselves. */
import { COMMON } from './arguments';
import type { CommandSpec, OptionSpec } from './spec';

const COLUMNS = 100;

/** The help of the program: its commands and how to get on. */
export function programHelp(commands: readonly CommandSpec[]): string {
  const rows = commands.map((command) => [usageOf(command), command.summary] as const);
  return [
    'wiretrue: keeps a firmware sketch true to the wires it runs on',
    '',
    'Usage: wiretrue COMMAND [arguments] [options]',
    '',
    ...table(rows),
    '',
    'wiretrue COMMAND --help tells everything on one command: options, output, exit codes, examples.',
    'wiretrue --version prints the version.',
    '',
    'Colours are used on a terminal only, and not where NO_COLOR is set. Results go to standard output, everything else',
    'to standard error. Every command ends with 2 where it could not do what was asked, and says why.',
    '',
  ].join('\n');
}

/** All there is to know of one command. */
export function commandHelp(command: CommandSpec): string {
  const options = [...command.options, ...COMMON.filter((option) => option.name === 'help')];
  const blocks = [
    wrap(`wiretrue ${command.name}: ${command.summary}`),
    [`Usage: wiretrue ${usageOf(command)} [options]`],
    ...command.about.map((text) =>
      text.split('\n').flatMap((line) => (line.startsWith('  ') ? [line] : wrap(line))),
    ),
    ['Options', ...table(options.map((option) => [optionWords(option), option.about]))],
    ['Exit codes', ...table(command.exits.map(([code, words]) => [String(code), words]))],
    [
      'Examples',
      ...command.examples.flatMap(([line, words]) => [`  wiretrue ${line}`, ...wrap(words, '      ')]),
    ],
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** `check [path ...]`. */
export function usageOf({ name, places }: CommandSpec): string {
  return `${name} ${places.words}`.trimEnd();
}

function optionWords({ name, short, value }: OptionSpec): string {
  const dash = short === undefined ? '' : `-${short}, `;
  return `${dash}--${name}${value === undefined ? '' : ` ${value.words}`}`;
}

/** Two columns, the second wrapped beside the first. */
function table(rows: readonly (readonly [string, string])[]): readonly string[] {
  const widest = Math.min(34, Math.max(0, ...rows.map(([first]) => first.length)));
  return rows.flatMap(([first, second]) => {
    const indent = ' '.repeat(widest + 4);
    const lines = wrap(second, indent);
    if (first.length > widest) {
      return [`  ${first}`, ...lines];
    }
    const [head = '', ...tail] = lines;
    return [`  ${first.padEnd(widest)}  ${head.trimStart()}`, ...tail];
  });
}

/** Breaks a text between words. */
export function wrap(text: string, indent = ''): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && indent.length + line.length + 1 + word.length > COLUMNS) {
      lines.push(indent + line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, indent + line];
}
