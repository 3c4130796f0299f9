/** Arguments: what is understood, and what is said of the rest. */
import { describe, expect, test } from 'vitest';
import { readArguments } from '../../server/src/cli/arguments';
import { COMMANDS } from '../../server/src/cli/commands';

const split = (line: string) => line.split(' ').filter((word) => word !== '');

/** `check a b --format=json`: the way back from what was understood. */
function read(line: string): string {
  const asked = readArguments(split(line), COMMANDS);
  switch (asked.kind) {
    case 'run':
      return [
        asked.command.name,
        ...asked.given.places,
        ...Object.entries(asked.given.options).map(([name, value]) =>
          value === true ? `--${name}` : `--${name}=${value}`,
        ),
      ].join(' ');
    case 'help':
      return asked.command === undefined ? 'help' : `help ${asked.command.name}`;
    case 'version':
      return 'version';
    case 'wrong':
      return asked.message;
  }
}

const understood: readonly (readonly [string, string])[] = [
  ['check', 'check'],
  ['check a b/c.ino', 'check a b/c.ino'],
  ['check --format json a', 'check a --format=json'],
  ['check a --format=text', 'check a --format=text'],
  ['--format json check', 'check --format=json'],
  ['check -- --odd', 'check --odd'],
  ['check -o x.json -j 2 -w', 'check --output=x.json --jobs=2 --watch'],
  ['uses a --board pico --format json', 'uses a --board=pico --format=json'],
  ['size series --board pico --pair', 'size series --board=pico --pair'],
  ['size wire --gauge -1', 'size wire --gauge=-1'],
  ['explain', 'explain'],
  ['explain idle-wire', 'explain idle-wire'],
  ['serve --stdio', 'serve --stdio'],
  ['--help', 'help'],
  ['help', 'help'],
  ['help check', 'help check'],
  ['check -h', 'help check'],
  ['size --help', 'help size'],
  ['--version', 'version'],
];

const names = COMMANDS.map(({ name }) => name).join(', ');

const refused: readonly (readonly [string, string])[] = [
  ['', `Name a command: ${names}.`],
  ['chek', 'There is no command "chek". Did you mean check?'],
  ['help chek', 'There is no command "chek". Did you mean check?'],
  ['Serve --stdio', 'There is no command "Serve". Did you mean serve?'],
  ['polish', `There is no command "polish". Possible: ${names}.`],
  ['check --fromat json', 'There is no option --fromat. Did you mean --format?'],
  ['check --watches', 'There is no option --watches. Did you mean --watch?'],
  [
    'check -x',
    'There is no option -x. Possible: --format, --output, --jobs, --baseline, --write-baseline, --shard, --watch, --help, --version.',
  ],
  ['check --format jsn', 'There is no format "jsn". Did you mean json?'],
  ['check --format pretty', 'There is no format "pretty". Possible: text, json, sarif, junit, annotations.'],
  ['check --format', 'The option --format wants a value: text, json, sarif, junit, annotations.'],
  ['check --output', 'The option --output wants a value: FILE.'],
  ['check --help=yes', 'The option --help takes no value.'],
  ['check --format json --format text', 'The option --format is given twice.'],
  ['check --board pico', 'The command check takes no --board.'],
  ['check --stdio', 'The command check takes no --stdio.'],
  ['explain a b', 'The command explain is called as: wiretrue explain [rule]'],
  ['hookup a b', 'The command hookup is called as: wiretrue hookup [path]'],
  ['size', 'The command size is called as: wiretrue size WHAT'],
  ['size serie', 'The command size knows no "serie". Did you mean series?'],
  ['completion powershell', 'The command completion knows no "powershell". Possible: bash, zsh, fish.'],
  ['serve --stdio here', 'The command serve is called as: wiretrue serve --stdio'],
];

describe('arguments', () => {
  test.each(understood)('understood: %s', (line, words) => {
    expect(read(line)).toBe(words);
  });

  test.each(refused)('refused: %s', (line, message) => {
    expect(read(line)).toBe(message);
    expect(readArguments(split(line), COMMANDS).kind).toBe('wrong');
  });

  test('an option is of one kind in all commands', () => {
    const kinds = new Map<string, string>();
    for (const { name, short, value } of COMMANDS.flatMap((command) => command.options)) {
      const kind = `${value === undefined ? 'switch' : 'value'} ${short ?? ''}`;
      expect(kinds.get(name) ?? kind, name).toBe(kind);
      kinds.set(name, kind);
    }
    expect(kinds.size).toBeGreaterThan(30);
  });
});
