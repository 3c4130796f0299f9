/** Every command, in the order in which the help lists them. */
import type { CommandSpec } from '../spec';
import { addendum } from './addendum';
import { bands } from './bands';
import { boards } from './boards';
import { check } from './check';
import { makeCompletion } from './completion';
import { draft } from './draft';
import { explain } from './explain';
import { merge } from './merge';
import { guide, hookup, parts, tests } from './papers';
import { picture } from './picture';
import { serve } from './serve';
import { size } from './size';
import { uses } from './uses';

export const COMMANDS: readonly CommandSpec[] = [
  check,
  merge,
  uses,
  draft,
  hookup,
  parts,
  guide,
  tests,
  addendum,
  picture,
  size,
  bands,
  boards,
  explain,
  serve,
  makeCompletion(() => COMMANDS),
];
