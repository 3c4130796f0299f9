/** The whole program as a function of its arguments and streams, so that it can be tested without a process. */
import { type FileProblem, readProduct, schemasFolder } from '../files';
import { readArguments } from './arguments';
import { checkBuilds } from './check-builds';
import { harmless } from './excerpt';
import { explainRule, listRules } from './explain';
import { HELP } from './help';
import { readHookup } from './hookup';
import { printJson } from './print-json';
import { printText, type TextStyle } from './print-text';
import { printUsesJson, printUsesText } from './print-uses';
import { readAllUses } from './read-uses';

/** What the program has of its surroundings. */
export interface Surroundings {
  /** The current folder. */
  readonly base: string;
  /** The folder the program's own file lies in: libraries and version are looked for from there upwards. */
  readonly home: string;
  readonly style: TextStyle;
  out(text: string): void;
  err(text: string): void;
  /** Runs the language server over standard input and output; returns when it listens. */
  serve(): void;
}

/** Runs one command. Returns the exit code, or nothing where the process goes on by itself (`serve`). */
export async function run(args: readonly string[], here: Surroundings): Promise<number | undefined> {
  const command = readArguments(args);
  const tell = (notes: readonly string[], problems: readonly FileProblem[]) => {
    for (const note of [...notes, ...problems.map((problem) => `${problem.path}: ${problem.why}`)]) {
      here.err(`wiretrue: ${harmless(note)}\n`);
    }
  };
  const refuse = (why: string) => {
    here.err(`wiretrue: ${harmless(why)}\n`);
    return 2;
  };
  switch (command.kind) {
    case 'wrong':
      return refuse(`${command.message} See wiretrue --help.`);
    case 'help':
      here.out(HELP);
      return 0;
    case 'version':
      here.out(`${readProduct(here.home).version}\n`);
      return 0;
    case 'serve':
      here.serve();
      return undefined;
    case 'uses': {
      const { paths, board, format } = command;
      const read = await readAllUses(paths, board, here.base, schemasFolder(here.home));
      if (!read.ok) {
        return refuse(read.why);
      }
      tell(read.notes, read.problems);
      here.out(format === 'json' ? printUsesJson(read) : printUsesText(read));
      return read.problems.length > 0 ? 2 : 0;
    }
    case 'hookup': {
      const hookup = readHookup(command.path, here.base, schemasFolder(here.home));
      if (!hookup.ok) {
        return refuse(hookup.why);
      }
      here.out(hookup.text);
      return 0;
    }
    case 'explain': {
      if (command.rule === undefined) {
        here.out(listRules());
        return 0;
      }
      const explanation = explainRule(command.rule);
      if (!explanation.ok) {
        return refuse(explanation.why);
      }
      here.out(explanation.text);
      return 0;
    }
    case 'check': {
      const result = await checkBuilds(command.paths, here.base, schemasFolder(here.home));
      tell(result.notes, result.problems);
      if (command.format === 'json') {
        here.out(printJson(result, readProduct(here.home)));
      } else if (result.sketches > 0 || result.problems.length === 0) {
        // Where nothing could be checked there is nothing to sum up.
        here.out(printText(result, here.style));
      }
      if (result.problems.length > 0) {
        return 2;
      }
      return result.counts.error + result.counts.warning > 0 ? 1 : 0;
    }
  }
}
