/** Arguments: what is understood, and what is said of the rest. */
import { describe, expect, test } from 'vitest';
import { type Command, readArguments } from '../../server/src/cli/arguments';

const understood: readonly (readonly [string, Command])[] = [
  ['check', { kind: 'check', paths: ['.'], format: 'text' }],
  ['check a b/c.ino', { kind: 'check', paths: ['a', 'b/c.ino'], format: 'text' }],
  ['check --format json a', { kind: 'check', paths: ['a'], format: 'json' }],
  ['check a --format=text', { kind: 'check', paths: ['a'], format: 'text' }],
  ['--format json check', { kind: 'check', paths: ['.'], format: 'json' }],
  ['check -- --odd', { kind: 'check', paths: ['--odd'], format: 'text' }],
  ['uses', { kind: 'uses', paths: ['.'], format: 'text' }],
  ['uses a --board pico --format json', { kind: 'uses', paths: ['a'], format: 'json', board: 'pico' }],
  ['explain', { kind: 'explain' }],
  ['explain idle-wire', { kind: 'explain', rule: 'idle-wire' }],
  ['serve --stdio', { kind: 'serve' }],
  ['--help', { kind: 'help' }],
  ['check -h', { kind: 'help' }],
  ['--version', { kind: 'version' }],
];

const refused: readonly (readonly [string, string])[] = [
  ['', 'Name a command: check, uses, hookup, explain, serve.'],
  ['chek', 'There is no command "chek". Did you mean check?'],
  ['Serve --stdio', 'There is no command "Serve". Did you mean serve?'],
  ['polish', 'There is no command "polish". Possible: check, uses, hookup, explain, serve.'],
  ['check --fromat json', 'There is no option --fromat. Did you mean --format?'],
  [
    'check --verbose',
    'There is no option --verbose. Possible: --format, --board, --stdio, --help, --version.',
  ],
  ['check -x', 'There is no option -x. Possible: --format, --board, --stdio, --help, --version.'],
  ['check --format jsn', 'There is no format "jsn". Did you mean json?'],
  ['check --format pretty', 'There is no format "pretty". Possible: text, json.'],
  ['check --format', 'The option --format wants a value: text or json.'],
  ['check --help=yes', 'The option --help takes no value.'],
  ['check --no-help', 'There is no option --no-help. Did you mean --help?'],
  ['uses --board', 'The option --board wants a value: the id of a board or the path of a board file.'],
  ['check --board pico', 'The command check takes no --board.'],
  ['check --stdio', 'The command check takes no --stdio.'],
  ['explain a b', 'The command explain takes one rule at a time.'],
  ['serve', 'The command serve is called as: wiretrue serve --stdio'],
  ['serve --stdio here', 'The command serve is called as: wiretrue serve --stdio'],
];

const split = (line: string) => line.split(' ').filter((word) => word !== '');

describe('arguments', () => {
  test.each(understood)('understood: %s', (line, command) => {
    expect(readArguments(split(line))).toEqual(command);
  });

  test.each(refused)('refused: %s', (line, message) => {
    expect(readArguments(split(line))).toEqual({ kind: 'wrong', message });
  });
});

test('takes one build for the hookup list', () => {
  expect(readArguments(['hookup'])).toEqual({ kind: 'hookup', path: '.' });
  expect(readArguments(['hookup', 'a'])).toEqual({ kind: 'hookup', path: 'a' });
  expect(readArguments(['hookup', 'a', 'b']).kind).toBe('wrong');
});
