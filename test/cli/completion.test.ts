/** Completion, asked of the shells themselves. */
import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../server/src/cli/commands';
import { requireOracle } from '../oracle/oracle';
import { CLI, openWorkshop, type Workshop } from './program';

let shop: Workshop;
beforeAll(() => {
  shop = openWorkshop();
  shop.put('here.json', '{}');
  shop.put('folder/x', '');
  // Completion of files asks for a command by this name.
  chmodSync(shop.put('bin/wiretrue', `#!/bin/sh\nexec "${process.execPath}" "${CLI}" "$@"\n`), 0o755);
  for (const shell of ['bash', 'zsh', 'fish']) {
    expect(shop.wiretrue(['completion', shell, '-o', `script.${shell}`])).toEqual({
      status: 0,
      stdout: '',
      stderr: '',
    });
  }
});
afterAll(() => shop.clear());

const has = (shell: string) => spawnSync(shell, ['-c', 'exit 0']).status === 0;
const env = () => ({
  PATH: `${join(shop.base, 'bin')}:${dirname(process.execPath)}:${process.env.PATH ?? ''}`,
  HOME: shop.base,
  TERM: 'dumb',
});
const names = COMMANDS.map(({ name }) => name);

/** What every shell has to offer, by the words typed so far. */
const cases: readonly (readonly [line: string, offered: readonly string[]])[] = [
  ['wiretrue ch', ['check']],
  ['wiretrue check --format s', ['sarif']],
  ['wiretrue check --w', ['--watch', '--write-baseline']],
  ['wiretrue explain lamp-un', ['lamp-unlimited']],
  ['wiretrue boards nano', ['nano-v3']],
  ['wiretrue uses --board pic', ['pico', 'pico-w']],
  ['wiretrue size div', ['divider']],
  ['wiretrue completion z', ['zsh']],
];

describe('bash', () => {
  /** Calls the function as bash does, then lets bash's own default rules speak where it left nothing. */
  function complete(line: string): readonly string[] {
    const words = line.split(' ');
    const script = `
source ./script.bash
COMP_WORDS=(${words.map((word) => `'${word}'`).join(' ')})
COMP_CWORD=$(( \${#COMP_WORDS[@]} - 1 ))
_wiretrue
printf '%s\\n' "\${COMPREPLY[@]}"`;
    const { stdout, stderr } = spawnSync('bash', ['--norc', '-c', script], {
      cwd: shop.base,
      encoding: 'utf8',
      env: env(),
    });
    expect(stderr).toBe('');
    return stdout.split('\n').filter((word) => word !== '');
  }

  test.each(cases)('%s', (line, offered) => {
    expect([...complete(line)].sort()).toEqual(offered);
  });

  test('all commands, an option with a sign, and files where files are wanted', () => {
    expect(complete('wiretrue ')).toEqual(expect.arrayContaining(names));
    expect(complete('wiretrue check --format = j')).toEqual(['json', 'junit']);
    expect(complete('wiretrue check --output h')).toEqual([]);
    const { stdout } = spawnSync('bash', ['--norc', '-c', 'source ./script.bash; complete -p wiretrue'], {
      cwd: shop.base,
      encoding: 'utf8',
    });
    expect(stdout).toContain('-o default');
  });
});

describe('fish', () => {
  function complete(line: string): readonly string[] {
    const script = `source ./script.fish; complete -C '${line}'`;
    const { stdout, stderr } = spawnSync('fish', ['--no-config', '-c', script], {
      cwd: shop.base,
      encoding: 'utf8',
      env: env(),
    });
    expect(stderr).toBe('');
    return stdout
      .split('\n')
      .filter((row) => row !== '')
      .map((row) => row.split('\t')[0] ?? '');
  }

  for (const [line, offered] of cases) {
    test(line, (context) => {
      requireOracle(context, 'fish', has('fish'));
      expect([...complete(line)].sort()).toEqual(offered);
    });
  }

  test('all commands, and files where files are wanted', (context) => {
    requireOracle(context, 'fish', has('fish'));
    expect([...complete('wiretrue ')].sort()).toEqual([...names].sort());
    expect(complete('wiretrue merge h')).toEqual(['here.json']);
    expect(complete('wiretrue check --output h')).toEqual(['here.json']);
    expect(complete('wiretrue size --supply h')).toEqual([]);
  });
});

describe('zsh', () => {
  // Sourced, not typed: a terminal echoes what is typed, and the marks would be read in the echo.
  const SET_UP = `
PS1=; unsetopt zle_bracketed_paste prompt_sp prompt_cr list_beep; setopt no_auto_menu
autoload -Uz compinit && compinit -u -d ./dump
source ./script.zsh
show() { print -r -- "<<$BUFFER>>"; BUFFER=; }
zle -N show; bindkey '^X' show
echo ready`;

  /** A zsh in a terminal of its own: types the line, presses the key and reads what the line became. */
  function complete(line: string): string {
    shop.put('shell.zsh', SET_UP);
    const script = `
zmodload zsh/zpty
zpty shell zsh -f -i
put() { zpty -w shell "$1" }
until_mark() { local text line; while zpty -r shell line; do text+=$line; [[ $line == *$1* ]] && break; done; print -r -- "$text" }
put 'source ./shell.zsh'
until_mark ready >/dev/null
zpty -w -n shell ${JSON.stringify(line)}$'\\t\\x18'
until_mark '>>'
zpty -d shell`;
    const { stdout } = spawnSync('zsh', ['-f', '-c', script], {
      cwd: shop.base,
      encoding: 'utf8',
      env: env(),
      timeout: 15_000,
    });
    return /<<(.*)>>/.exec(stdout)?.[1]?.trimEnd() ?? stdout;
  }

  test('the script is one', (context) => {
    requireOracle(context, 'zsh', has('zsh'));
    expect(spawnSync('zsh', ['-n', 'script.zsh'], { cwd: shop.base, encoding: 'utf8' })).toMatchObject({
      status: 0,
      stderr: '',
    });
  });

  test('commands, values, rules, boards and files', (context) => {
    requireOracle(context, 'zsh', has('zsh'));
    const finished = [
      'ch',
      'check --format s',
      'explain lamp-unlim',
      'boards nano',
      'size div',
      'completion z',
      'merge he',
      'check --watc',
    ];
    expect(finished.map((line) => complete(`wiretrue ${line}`))).toEqual([
      'wiretrue check',
      'wiretrue check --format sarif',
      'wiretrue explain lamp-unlimited',
      'wiretrue boards nano-v3',
      'wiretrue size divider',
      'wiretrue completion zsh',
      'wiretrue merge here.json',
      'wiretrue check --watch',
    ]);
  }, 120_000);
});
