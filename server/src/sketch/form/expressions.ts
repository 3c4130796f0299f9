/** Expressions of the plain tree. What is not understood keeps its parts, so that no call gets lost in it. */
import type { PlainNode } from '../syntax/plain-tree';
import type { Expression, ListEntry, ListExpression, TypeName } from './ast';
import { type BuildContext, childOfType, field, fields, placeOf } from './context';
import { lambdaOf } from './functions';
import { readCharacter, readNumber } from './literals';
import { angleArguments, declared, typeOf, typeText } from './types';
import { variablesOf } from './variables';

const named = new Set([
  'identifier',
  'field_identifier',
  'type_identifier',
  'namespace_identifier',
  'primitive_type',
  'sized_type_specifier',
]);

/** An expression node; anything else becomes opaque. */
export function expressionOf(build: BuildContext, node: PlainNode): Expression {
  const { start, end } = node;
  if (named.has(node.type)) return { kind: 'name', name: build.textOf(node), start, end };
  switch (node.type) {
    case 'number_literal': {
      const literal = readNumber(build.textOf(node));
      return literal === undefined ? opaqueOf(build, node) : { kind: 'number', ...literal, start, end };
    }
    case 'char_literal': {
      const literal = readCharacter(build.textOf(node));
      return literal === undefined ? opaqueOf(build, node) : { kind: 'number', ...literal, start, end };
    }
    case 'true':
    case 'false':
      return { kind: 'number', value: node.type === 'true' ? 1 : 0, type: 'bool', start, end };
    case 'null':
    case 'nullptr':
      return { kind: 'number', value: 0, type: 'int', start, end };
    case 'string_literal':
    case 'raw_string_literal':
    case 'concatenated_string':
      return { kind: 'text', length: Math.max(0, node.end - node.start - 2), start, end };
    case 'this':
      return { kind: 'this', start, end };
    case 'qualified_identifier':
    case 'template_function':
    case 'template_type':
    case 'template_method': {
      const list = angleArguments(build, node);
      const name = { kind: 'name' as const, name: typeText(build, node), start, end };
      return list === undefined ? name : { ...name, arguments: list };
    }
    case 'parenthesized_expression': {
      const inner = onlyChild(node);
      return inner === undefined ? opaqueOf(build, node) : expressionOf(build, inner);
    }
    case 'condition_clause':
      return conditionOf(build, node);
    case 'declaration':
      return { kind: 'let', variables: variablesOf(build, node), start, end };
    case 'binary_expression':
      return {
        kind: 'binary',
        operator: wordSign(signOf(build, node)),
        left: sub(build, node, 'left'),
        right: sub(build, node, 'right'),
        start,
        end,
      };
    case 'unary_expression':
    case 'pointer_expression':
      return {
        kind: 'unary',
        operator: wordSign(signOf(build, node)),
        operand: sub(build, node, 'argument'),
        start,
        end,
      };
    case 'update_expression': {
      const operator = field(node, 'operator');
      const operand = sub(build, node, 'argument');
      const prefix = (operator?.start ?? 0) < operand.start;
      return { kind: 'step', by: signOf(build, node) === '--' ? -1 : 1, prefix, operand, start, end };
    }
    case 'assignment_expression':
      return {
        kind: 'assign',
        operator: signOf(build, node).slice(0, -1),
        target: sub(build, node, 'left'),
        value: sub(build, node, 'right'),
        start,
        end,
      };
    case 'conditional_expression': {
      const test = sub(build, node, 'condition');
      const yes = field(node, 'consequence') === undefined ? test : sub(build, node, 'consequence');
      return { kind: 'choice', test, yes, no: sub(build, node, 'alternative'), start, end };
    }
    case 'comma_expression':
      return { kind: 'comma', left: sub(build, node, 'left'), right: sub(build, node, 'right'), start, end };
    case 'call_expression':
      return callOf(build, node);
    case 'subscript_expression': {
      const indices = field(node, 'indices');
      const index = indices === undefined ? field(node, 'index') : onlyChild(indices);
      if (index === undefined) return opaqueOf(build, node);
      return {
        kind: 'index',
        base: sub(build, node, 'argument'),
        index: expressionOf(build, index),
        start,
        end,
      };
    }
    case 'field_expression': {
      const name = field(node, 'field');
      if (name === undefined) return opaqueOf(build, node);
      const text = typeText(build, name);
      const member = {
        kind: 'member' as const,
        base: sub(build, node, 'argument'),
        name: text,
        namePlace: placeOf(name),
      };
      const list = angleArguments(build, name);
      return list === undefined ? { ...member, start, end } : { ...member, arguments: list, start, end };
    }
    case 'cast_expression': {
      const type = field(node, 'type');
      return type === undefined
        ? opaqueOf(build, node)
        : { kind: 'cast', type: typeOf(build, type), operand: sub(build, node, 'value'), start, end };
    }
    case 'sizeof_expression': {
      const type = field(node, 'type');
      if (type !== undefined) return { kind: 'size', type: typeOf(build, type), start, end };
      return { kind: 'size', operand: sub(build, node, 'value'), start, end };
    }
    case 'initializer_list':
      return listOf(build, node);
    case 'compound_literal_expression': {
      const value = field(node, 'value');
      if (value?.type !== 'initializer_list') return opaqueOf(build, node);
      return { ...listOf(build, value), type: literalType(build, node), start, end };
    }
    case 'lambda_expression':
      return { kind: 'lambda', definition: lambdaOf(build, node), start, end };
    case 'new_expression': {
      const list = field(node, 'arguments');
      const type = field(node, 'type');
      if (type === undefined || field(node, 'declarator') !== undefined) return opaqueOf(build, node);
      return { kind: 'new', type: typeOf(build, node), arguments: argumentsOf(build, list), start, end };
    }
    default:
      return opaqueOf(build, node);
  }
}

function opaqueOf(build: BuildContext, node: PlainNode): Expression {
  return { kind: 'opaque', parts: partsOf(build, node), start: node.start, end: node.end };
}

/** The expression in a field; an opaque one without width where it is missing. */
function sub(build: BuildContext, node: PlainNode, name: string): Expression {
  const child = field(node, name);
  return child === undefined
    ? { kind: 'opaque', parts: [], start: node.end, end: node.end }
    : expressionOf(build, child);
}

function signOf(build: BuildContext, node: PlainNode): string {
  const operator = field(node, 'operator');
  return operator === undefined ? '' : build.textOf(operator);
}

function literalType(build: BuildContext, node: PlainNode): TypeName {
  const type = field(node, 'type');
  return type?.type === 'type_descriptor' ? typeOf(build, type) : typeOf(build, node);
}

const words: Readonly<Record<string, string>> = {
  and: '&&',
  or: '||',
  not: '!',
  not_eq: '!=',
  bitand: '&',
  bitor: '|',
  xor: '^',
  compl: '~',
};

/** The sign of an operator that is spelt as a word. */
function wordSign(text: string): string {
  return words[text] ?? text;
}

function onlyChild(node: PlainNode): PlainNode | undefined {
  return node.children.find((child) => child.type !== 'ERROR') ?? node.children[0];
}

/** The parts of a node that might hold calls. */
export function partsOf(build: BuildContext, node: PlainNode): Expression[] {
  const parts: Expression[] = [];
  for (const child of node.children) {
    if (child.field === 'operator' || /^(type_|primitive_type|string_content)/.test(child.type)) continue;
    parts.push(expressionOf(build, child));
  }
  return parts;
}

/** Arguments of a call, or none where the list is missing. */
export function argumentsOf(build: BuildContext, list: PlainNode | undefined): readonly Expression[] {
  if (list === undefined) return [];
  return list.children.map((child) => expressionOf(build, child));
}

function conditionOf(build: BuildContext, node: PlainNode): Expression {
  const value = field(node, 'value') ?? onlyChild(node);
  if (value === undefined) return { kind: 'opaque', parts: [], ...placeOf(node) };
  const test = expressionOf(build, value);
  const first = field(node, 'initializer');
  const declaration = first === undefined ? undefined : (childOfType(first, 'declaration') ?? first);
  if (declaration === undefined) return test;
  return { kind: 'comma', left: expressionOf(build, declaration), right: test, ...placeOf(node) };
}

const castWords = new Set(['static_cast', 'reinterpret_cast', 'const_cast', 'dynamic_cast']);

function callOf(build: BuildContext, node: PlainNode): Expression {
  const place = placeOf(node);
  const callee = field(node, 'function');
  const list = argumentsOf(build, field(node, 'arguments'));
  if (callee === undefined) return { kind: 'opaque', parts: list, ...place };
  const first = list[0];
  if (callee.type === 'primitive_type' && first !== undefined) {
    const type = { name: build.textOf(callee), constant: false, pointers: 0, reference: false, sizes: [] };
    return { kind: 'cast', type, operand: first, ...place };
  }
  if (callee.type === 'template_function' && castWords.has(typeText(build, callee)) && first !== undefined) {
    const descriptor = field(callee, 'arguments')?.children[0];
    if (descriptor?.type === 'type_descriptor') {
      return { kind: 'cast', type: typeOf(build, descriptor), operand: first, ...place };
    }
  }
  return { kind: 'call', callee: expressionOf(build, callee), arguments: list, ...place };
}

function listOf(build: BuildContext, node: PlainNode): ListExpression {
  const items: ListEntry[] = [];
  let numbers: number[] | undefined = [];
  for (const child of node.children) {
    const entry = entryOf(build, child);
    items.push(entry);
    const { value } = entry;
    if (value.kind === 'number' && value.type !== 'float' && entry.field === undefined && !entry.index) {
      numbers?.push(value.value);
    } else numbers = undefined;
  }
  const list: ListExpression = { kind: 'list', items, ...placeOf(node) };
  // A long table keeps its numbers only; one syntax object for each entry would be most of the memory.
  return numbers === undefined || numbers.length === 0 ? list : { ...list, items: shortOf(items), numbers };
}

const longTable = 256;

function shortOf(items: readonly ListEntry[]): readonly ListEntry[] {
  return items.length > longTable ? [] : items;
}

function entryOf(build: BuildContext, node: PlainNode): ListEntry {
  if (node.type !== 'initializer_pair') return { value: expressionOf(build, node) };
  const value = field(node, 'value');
  const designators = fields(node, 'designator');
  const designator = designators[0];
  const built: Expression =
    value === undefined ? { kind: 'opaque', parts: [], ...placeOf(node) } : expressionOf(build, value);
  const inner = designator?.children[0];
  if (inner === undefined || designators.length > 1) return { value: built };
  if (designator?.type === 'subscript_designator') return { value: built, index: expressionOf(build, inner) };
  return { value: built, field: build.textOf(inner) };
}

/** The declared type of a descriptor with its pointers, for casts and aliases. */
export function describedType(build: BuildContext, node: PlainNode): TypeName {
  const base = typeOf(build, node);
  const declarator = field(node, 'declarator');
  return declarator === undefined ? base : (declared(build, declarator, base)?.type ?? base);
}
