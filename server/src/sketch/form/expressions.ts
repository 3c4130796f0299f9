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
  const place = placeOf(node);
  if (named.has(node.type)) return { kind: 'name', name: build.textOf(node), ...place };
  const opaque = (): Expression => ({ kind: 'opaque', parts: partsOf(build, node), ...place });
  const sub = (name: string): Expression => {
    const child = field(node, name);
    return child === undefined
      ? { kind: 'opaque', parts: [], start: node.end, end: node.end }
      : expressionOf(build, child);
  };
  const sign = () => {
    const operator = field(node, 'operator');
    return operator === undefined ? '' : build.textOf(operator);
  };
  switch (node.type) {
    case 'number_literal': {
      const literal = readNumber(build.textOf(node));
      return literal === undefined ? opaque() : { kind: 'number', ...literal, ...place };
    }
    case 'char_literal': {
      const literal = readCharacter(build.textOf(node));
      return literal === undefined ? opaque() : { kind: 'number', ...literal, ...place };
    }
    case 'true':
    case 'false':
      return { kind: 'number', value: node.type === 'true' ? 1 : 0, type: 'bool', ...place };
    case 'null':
    case 'nullptr':
      return { kind: 'number', value: 0, type: 'int', ...place };
    case 'string_literal':
    case 'raw_string_literal':
    case 'concatenated_string':
      return { kind: 'text', length: Math.max(0, node.end - node.start - 2), ...place };
    case 'this':
      return { kind: 'this', ...place };
    case 'qualified_identifier':
    case 'template_function':
    case 'template_type':
    case 'template_method': {
      const list = angleArguments(build, node);
      const name = { kind: 'name' as const, name: typeText(build, node), ...place };
      return list === undefined ? name : { ...name, arguments: list };
    }
    case 'parenthesized_expression': {
      const inner = onlyChild(node);
      return inner === undefined ? opaque() : expressionOf(build, inner);
    }
    case 'condition_clause':
      return conditionOf(build, node);
    case 'declaration':
      return { kind: 'let', variables: variablesOf(build, node), ...place };
    case 'binary_expression':
      return { kind: 'binary', operator: wordSign(sign()), left: sub('left'), right: sub('right'), ...place };
    case 'unary_expression':
    case 'pointer_expression':
      return { kind: 'unary', operator: wordSign(sign()), operand: sub('argument'), ...place };
    case 'update_expression': {
      const operator = field(node, 'operator');
      const operand = sub('argument');
      const prefix = (operator?.start ?? 0) < operand.start;
      return { kind: 'step', by: sign() === '--' ? -1 : 1, prefix, operand, ...place };
    }
    case 'assignment_expression':
      return {
        kind: 'assign',
        operator: sign().slice(0, -1),
        target: sub('left'),
        value: sub('right'),
        ...place,
      };
    case 'conditional_expression': {
      const test = sub('condition');
      const yes = field(node, 'consequence') === undefined ? test : sub('consequence');
      return { kind: 'choice', test, yes, no: sub('alternative'), ...place };
    }
    case 'comma_expression':
      return { kind: 'comma', left: sub('left'), right: sub('right'), ...place };
    case 'call_expression':
      return callOf(build, node);
    case 'subscript_expression': {
      const indices = field(node, 'indices');
      const index = indices === undefined ? field(node, 'index') : onlyChild(indices);
      if (index === undefined) return opaque();
      return { kind: 'index', base: sub('argument'), index: expressionOf(build, index), ...place };
    }
    case 'field_expression': {
      const name = field(node, 'field');
      if (name === undefined) return opaque();
      const text = typeText(build, name);
      const member = { kind: 'member' as const, base: sub('argument'), name: text, namePlace: placeOf(name) };
      const list = angleArguments(build, name);
      return list === undefined ? { ...member, ...place } : { ...member, arguments: list, ...place };
    }
    case 'cast_expression': {
      const type = field(node, 'type');
      return type === undefined
        ? opaque()
        : { kind: 'cast', type: typeOf(build, type), operand: sub('value'), ...place };
    }
    case 'sizeof_expression': {
      const type = field(node, 'type');
      if (type !== undefined) return { kind: 'size', type: typeOf(build, type), ...place };
      return { kind: 'size', operand: sub('value'), ...place };
    }
    case 'initializer_list':
      return listOf(build, node);
    case 'compound_literal_expression': {
      const value = field(node, 'value');
      if (value?.type !== 'initializer_list') return opaque();
      return { ...listOf(build, value), type: literalType(build, node), ...place };
    }
    case 'lambda_expression':
      return { kind: 'lambda', definition: lambdaOf(build, node), ...place };
    case 'new_expression': {
      const list = field(node, 'arguments');
      const type = field(node, 'type');
      if (type === undefined || field(node, 'declarator') !== undefined) return opaque();
      return { kind: 'new', type: typeOf(build, node), arguments: argumentsOf(build, list), ...place };
    }
    default:
      return opaque();
  }
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
