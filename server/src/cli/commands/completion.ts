/** `completion`: scripts that make shells complete commands, options, rules and boards. */
import { compareText, loadLibrary, schemasFolder } from '../../files';
import { rules } from '../../rules/generated/registry';
import { COMMON } from '../arguments';
import { bashCompletion } from '../completion/bash';
import { fishCompletion } from '../completion/fish';
import type { Known } from '../completion/known';
import { zshCompletion } from '../completion/zsh';
import { deliver } from '../deliver';
import { type CommandSpec, OUTPUT } from '../spec';

const SHELLS: Readonly<Record<string, (known: Known) => string>> = {
  bash: bashCompletion,
  zsh: zshCompletion,
  fish: fishCompletion,
};

/** @param commands All commands, this one included; asked for when they are needed. */
export function makeCompletion(commands: () => readonly CommandSpec[]): CommandSpec {
  return {
    name: 'completion',
    summary: 'Prints a script that makes a shell complete commands, options, rules and boards.',
    places: { words: 'SHELL', least: 1, most: 1, choices: Object.keys(SHELLS) },
    options: [OUTPUT],
    about: [
      [
        'To try it in this shell',
        '  bash   source <(wiretrue completion bash)',
        '  zsh    source <(wiretrue completion zsh)      after compinit',
        '  fish   wiretrue completion fish | source',
        'To keep it',
        '  bash   wiretrue completion bash -o ~/.local/share/bash-completion/completions/wiretrue',
        '  zsh    wiretrue completion zsh -o DIR/_wiretrue    DIR being a folder of $fpath',
        '  fish   wiretrue completion fish -o ~/.config/fish/completions/wiretrue.fish',
      ].join('\n'),
      'The script holds the rules and boards of this version: write it anew after an update.',
    ],
    exits: [
      [0, 'it was printed'],
      [2, 'the shell is not known'],
    ],
    examples: [['completion bash', 'the script for bash']],
    async run(given, here) {
      const boards = [...loadLibrary(schemasFolder(here.home)).boards.keys()].sort(compareText);
      const names = { board: boards, rule: rules.map(({ id }) => id) };
      const write = SHELLS[given.places[0] ?? ''] ?? bashCompletion;
      deliver(write({ commands: commands(), common: COMMON, names }), given, here);
      return 0;
    },
  };
}
