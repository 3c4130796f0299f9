/**
 * Turns the text of a hardware file into nodes and tells syntax errors in plain words. Half-typed text is the normal
 * case in an editor: whatever can still be understood is handed on.
 */
import { type Node, type ParseError, parseTree } from 'jsonc-parser';
import type { Problem, Read } from '../../base/read';
import type { Span } from '../../base/span';
import type { JsonEntry, JsonNode } from './node';
import { findDeepNesting } from './scan';

/** Nothing in a hardware file is nested half as deep; text that is would exhaust the stack of a recursive reader. */
const deepestNesting = 64;
const mostSyntaxProblems = 20;

/** @returns The root node, undefined where there is no value at all. Never throws. */
export function parseJson(file: string, text: string): Read<JsonNode | undefined> {
  if (text.includes('\0')) {
    const message = 'This file is not text: it contains a zero byte.';
    const hint = 'Save it as UTF-8 text.';
    return { value: undefined, problems: [{ code: 'not-text', message, span: firstLine(file, text), hint }] };
  }
  const plain = text.startsWith('\uFEFF') ? ` ${text.slice(1)}` : text;
  const tooDeep = findDeepNesting(plain, deepestNesting);
  if (tooDeep !== undefined) {
    const message = `Brackets are nested more than ${deepestNesting} deep here; the file is not read any further.`;
    const span = { file, start: tooDeep, end: tooDeep + 1 };
    return { value: undefined, problems: [{ code: 'nested-too-deep', message, span }] };
  }
  const errors: ParseError[] = [];
  const tree = parseTree(plain, errors, { allowTrailingComma: true, disallowComments: false });
  if (tree === undefined) {
    const message = 'This file is empty.';
    const hint = 'It must hold an object: { ... }.';
    if (errors.every((error) => error.error === 4)) {
      return {
        value: undefined,
        problems: [{ code: 'empty-file', message, span: firstLine(file, text), hint }],
      };
    }
  }
  const problems = describeErrors(file, plain, errors);
  const value = tree === undefined ? undefined : convert(file, plain, tree, problems);
  return { value, problems };
}

function firstLine(file: string, text: string): Span {
  const end = text.search(/[\r\n\0]/);
  return { file, start: 0, end: Math.min(end < 0 ? text.length : end, 80) };
}

/** By jsonc-parser's ParseErrorCode, which is a const enum and so has no names at run time. */
const errorWords: Readonly<Record<number, readonly [message: string, hint?: string]>> = {
  1: ['This is neither a text in quotes, a number, true, false nor null.', 'Put text between double quotes.'],
  2: ['This number is not written as JSON has it.', 'Write it as in 0.25, or in quotes with its unit.'],
  3: ['Here a key in double quotes is expected.'],
  4: ['Here a value is expected.'],
  5: ['Between a key and its value stands a colon.', 'Write ":" here.'],
  6: ['Here a comma is missing.', 'Separate entries by commas.'],
  7: ['A closing brace is missing.', 'Write "}" here.'],
  8: ['A closing bracket is missing.', 'Write "]" here.'],
  9: ['Nothing may follow the closing brace of the file.', 'Delete it, or move it inside the braces.'],
  11: ['This comment is never closed.', 'Write "*/" at its end.'],
  12: ['This text is never closed.', 'Write a double quote at its end.'],
  13: ['This number is cut short.'],
  14: ['This is not a character code.', 'Write \\u and four hexadecimal digits.'],
  15: ['This is not an escape that JSON knows.', 'Write a backslash as \\\\.'],
  16: ['A control character stands in this text.', 'Write a tab as \\t, a line break as \\n.'],
};

function describeErrors(file: string, text: string, errors: readonly ParseError[]): Problem[] {
  const problems: Problem[] = [];
  let last: ParseError | undefined;
  for (const { error, offset, length } of errors) {
    // One slip makes several errors; only the first helps. Behind a word that is no value, a value is missing as well.
    const follows = last !== undefined && (last.offset === offset || (last.error === 1 && error === 4));
    last = { error, offset, length };
    if (follows) continue;
    const [message, hint] = errorWords[error] ?? ['This is not JSON.'];
    const span = { file, start: Math.min(offset, text.length), end: Math.min(offset + length, text.length) };
    problems.push({ code: 'syntax', message, span, ...(hint === undefined ? {} : { hint }) });
    if (problems.length === mostSyntaxProblems) break;
  }
  return problems;
}

const noEntries: ReadonlyMap<string, JsonEntry> = new Map();
const noItems: readonly JsonNode[] = [];

function convert(file: string, text: string, node: Node, problems: Problem[]): JsonNode {
  // An object that is never closed has no length, and a text that ends in a backslash one too many.
  const end = node.length < 0 ? text.length : Math.min(node.offset + node.length, text.length);
  const span = { file, start: node.offset, end };
  if (node.type === 'array') {
    const items = (node.children ?? []).map((item) => convert(file, text, item, problems));
    return { kind: 'array', span, scalar: null, entries: noEntries, items };
  }
  if (node.type === 'object') {
    const entries = convertEntries(file, text, node.children ?? [], problems);
    return { kind: 'object', span, scalar: null, entries, items: noItems };
  }
  const scalar = typeof node.value === 'string' || typeof node.value === 'boolean' ? node.value : null;
  if (node.type === 'number') {
    const number = Number(node.value);
    return {
      kind: 'number',
      span,
      scalar: Number.isFinite(number) ? number : 0,
      entries: noEntries,
      items: noItems,
    };
  }
  const kind = node.type === 'property' ? 'null' : node.type;
  return { kind, span, scalar, entries: noEntries, items: noItems };
}

function convertEntries(file: string, text: string, properties: readonly Node[], problems: Problem[]) {
  const entries = new Map<string, JsonEntry>();
  for (const property of properties) {
    const [keyNode, valueNode] = property.children ?? [];
    // A key whose value is not typed yet has a syntax error already.
    if (keyNode === undefined || valueNode === undefined) continue;
    const key = String(keyNode.value);
    const value = convert(file, text, valueNode, problems);
    const keySpan = {
      file,
      start: keyNode.offset + 1,
      end: keyNode.offset + Math.max(keyNode.length - 1, 1),
    };
    const span = { file, start: property.offset, end: value.span.end };
    if (entries.has(key)) {
      const message = `The key "${key}" stands here a second time; only the first one counts.`;
      problems.push({ code: 'double-key', message, span: keySpan, hint: 'Rename or delete one of the two.' });
      continue;
    }
    entries.set(key, { key, keySpan, span, value });
  }
  return entries;
}

/** True where something of the text was not understood: what is missing may be what was meant. */
export function isHalfTyped(problems: readonly Problem[]): boolean {
  return problems.some((problem) => problem.code === 'syntax');
}
