/**
 * A head without its body: `if (isHigh)` that is being typed takes the next statement, which was there before. Where
 * that statement is not set further in than the head, the condition is taken as undecided, so that both readings count.
 */
import type { PlainNode } from '../syntax/plain-tree';
import type { Expression } from './ast';
import { type BuildContext, field, placeOf } from './context';

export function undecided(test: Expression | undefined, node: PlainNode): Expression {
  return { kind: 'opaque', parts: test === undefined ? [] : [test], ...placeOf(node) };
}

/** The condition, or an unknown one. */
export function decided(build: BuildContext, node: PlainNode, test: Expression): Expression {
  return isUnfinished(build, node) ? undecided(test, node) : test;
}

/** Whether the body, or what follows `else`, may not have been meant as one. */
export function isUnfinished(build: BuildContext, node: PlainNode): boolean {
  const yes = field(node, 'consequence') ?? field(node, 'body');
  const other = field(node, 'alternative');
  const no = other?.type === 'else_clause' ? other.children[0] : other;
  return [yes, no].some((body) => body !== undefined && isFlush(build, node, body));
}

/** On a later line, and no further in than the line of its head. */
function isFlush({ text }: BuildContext, head: PlainNode, body: PlainNode): boolean {
  if (body.type === 'compound_statement') return false;
  const line = lineStart(text, body.start);
  if (line <= head.start || text.slice(line, body.start).trim() !== '') return false;
  return body.start - line <= indentation(text, head.start);
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

function indentation(text: string, offset: number): number {
  const line = text.slice(lineStart(text, offset), offset);
  return line.length - line.trimStart().length;
}
