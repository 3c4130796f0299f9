/** The whole program as a function of its arguments and streams, so that it can be tested without a process. */
import { readProduct } from '../files';
import { readArguments } from './arguments';
import { COMMANDS } from './commands';
import { commandHelp, programHelp } from './help';
import { harmless } from './print/excerpt';
import { Refusal, type Surroundings } from './spec';

/** Runs one command. Returns the exit code, or nothing where the process goes on by itself (`serve`). */
export async function run(args: readonly string[], here: Surroundings): Promise<number | undefined> {
  const asked = readArguments(args, COMMANDS);
  const refuse = (why: string) => {
    here.err(`wiretrue: ${harmless(why)}\n`);
    return 2;
  };
  switch (asked.kind) {
    case 'wrong':
      return refuse(`${asked.message} See wiretrue --help.`);
    case 'help':
      here.out(asked.command === undefined ? programHelp(COMMANDS) : commandHelp(asked.command));
      return 0;
    case 'version':
      here.out(`${readProduct(here.home).version}\n`);
      return 0;
    case 'run':
      try {
        return await asked.command.run(asked.given, here);
      } catch (error) {
        if (error instanceof Refusal) {
          return refuse(error.message);
        }
        throw error;
      }
  }
}
