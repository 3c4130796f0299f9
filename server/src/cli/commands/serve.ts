/** `serve`: the language server, for editors. */
import { type CommandSpec, Refusal } from '../spec';

export const serve: CommandSpec = {
  name: 'serve',
  summary: 'Runs the language server over standard input and output, for an editor.',
  places: { words: '--stdio', least: 0, most: 0 },
  options: [{ name: 'stdio', about: 'speak over standard input and output; there is no other way' }],
  about: ['Speaks the Language Server Protocol until the editor ends it.'],
  exits: [
    [0, 'the editor ended it in order'],
    [2, 'it was called otherwise'],
  ],
  examples: [['serve --stdio', 'the command that an editor is given']],
  async run(given, here) {
    if (given.options.stdio !== true) {
      throw new Refusal('The command serve is called as: wiretrue serve --stdio');
    }
    here.serve();
    return undefined;
  },
};
