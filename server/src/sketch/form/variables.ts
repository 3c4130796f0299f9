/** Declared variables, fields and parameters. */
import type { PlainNode } from '../syntax/plain-tree';
import type { Expression, Item, Parameter, TypeName, Variable } from './ast';
import { type BuildContext, childOfType, field, placeOf } from './context';
import { argumentsOf, expressionOf } from './expressions';
import { type Declared, declared, typeOf } from './types';

interface Flags {
  readonly isStatic: boolean;
  readonly isExtern: boolean;
  readonly isVolatile: boolean;
}

function flagsOf(build: BuildContext, node: PlainNode): Flags {
  const words = node.children
    .filter((child) => child.type === 'storage_class_specifier' || child.type === 'type_qualifier')
    .map((child) => build.textOf(child));
  return {
    isStatic: words.includes('static'),
    isExtern: words.includes('extern'),
    isVolatile: words.includes('volatile'),
  };
}

/** One declared thing of a declaration: a variable, or what reads as a function. */
type Entry = { readonly variable: Variable; readonly from: Declared };

function entriesOf(build: BuildContext, node: PlainNode): Entry[] {
  const flags = flagsOf(build, node);
  const base = typeOf(build, node);
  const entries: Entry[] = [];
  node.children.forEach((child, index) => {
    if (child.field !== 'declarator' && child.type !== 'init_declarator') return;
    const from = declared(build, child, base);
    if (from === undefined || from.name === '') return;
    let value = child.type === 'init_declarator' ? field(child, 'value') : undefined;
    const next = node.children[index + 1];
    if (value === undefined && (next?.field === 'default_value' || next?.field === 'value')) value = next;
    const start = child.start;
    const end = value === undefined ? child.end : Math.max(child.end, value.end);
    const plain = { name: from.name, namePlace: from.namePlace, type: from.type, ...flags, start, end };
    const owner = from.owner === '' ? {} : { owner: from.owner };
    entries.push({ variable: { ...plain, ...owner, ...initialOf(build, value) }, from });
  });
  return entries;
}

function initialOf(
  build: BuildContext,
  node: PlainNode | undefined,
): { readonly value?: Expression; readonly arguments?: readonly Expression[] } {
  if (node === undefined) return {};
  if (node.type === 'argument_list') return { arguments: argumentsOf(build, node) };
  return { value: expressionOf(build, node) };
}

/** The variables of a declaration, prototypes left out. */
export function variablesOf(build: BuildContext, node: PlainNode): readonly Variable[] {
  const variables = entriesOf(build, node)
    .filter(({ from }) => from.parameters === undefined)
    .map(({ variable }) => variable);
  for (const variable of variables) build.locals.push(variable.name);
  return variables;
}

/** The items of a declaration: variables first, then what reads as prototypes. */
export function declarationItems(build: BuildContext, node: PlainNode): Item[] {
  const items: Item[] = [];
  const variables: Variable[] = [];
  for (const { variable, from } of entriesOf(build, node)) {
    if (from.parameters === undefined || isPointerToFunction(node, from)) {
      variables.push(variable);
      build.locals.push(variable.name);
      continue;
    }
    const list = possibleArguments(build, from.parameters);
    const whole = list === undefined ? variable : { ...variable, arguments: list };
    const parameters = parametersOf(build, from.parameters);
    items.push({ kind: 'prototype', variable: whole, owner: from.owner, parameters, ...placeOf(node) });
  }
  if (variables.length > 0) items.unshift({ kind: 'variables', variables, ...placeOf(node) });
  return items;
}

/** `void (*handler)(int)` declares a variable. */
function isPointerToFunction(node: PlainNode, from: Declared): boolean {
  const covers = (child: PlainNode): boolean =>
    child.type === 'parenthesized_declarator' &&
    child.start <= from.namePlace.start &&
    child.end >= from.namePlace.end;
  const search = (child: PlainNode): boolean => covers(child) || child.children.some(search);
  return node.children.some((child) => /declarator/.test(child.type) && search(child));
}

/** A parameter list read as arguments: possible where every parameter is a bare name. */
function possibleArguments(build: BuildContext, list: PlainNode): readonly Expression[] | undefined {
  if (list.children.length === 0) return undefined;
  const found: Expression[] = [];
  for (const child of list.children) {
    const type = field(child, 'type');
    if (child.type !== 'parameter_declaration' || type === undefined || child.children.length !== 1) {
      return undefined;
    }
    if (type.type !== 'type_identifier' && type.type !== 'qualified_identifier') return undefined;
    found.push(expressionOf(build, type));
  }
  return found;
}

/** Parameters of a function; `...` and `void` give none. */
export function parametersOf(build: BuildContext, list: PlainNode | undefined): readonly Parameter[] {
  const parameters: Parameter[] = [];
  for (const child of list?.children ?? []) {
    if (!/parameter_declaration$/.test(child.type)) continue;
    const base = typeOf(build, child);
    const declarator = field(child, 'declarator');
    const from = declarator === undefined ? undefined : declared(build, declarator, base);
    if (from === undefined && base.name === 'void') continue;
    const value = field(child, 'default_value');
    const name = from?.name ?? '';
    if (name !== '') build.locals.push(name);
    parameters.push({
      name,
      namePlace: from?.namePlace ?? placeOf(child),
      type: from?.type ?? base,
      ...(value === undefined ? {} : { value: expressionOf(build, value) }),
      ...(child.type.startsWith('variadic') ? { pack: true as const } : {}),
    });
  }
  return parameters;
}

/** Names that a template is parametrised by. */
export function templateNamesOf(build: BuildContext, node: PlainNode): readonly string[] {
  const list = field(node, 'parameters') ?? childOfType(node, 'template_parameter_list');
  const names: string[] = [];
  for (const child of list?.children ?? []) {
    const name = field(child, 'declarator') ?? field(child, 'name') ?? child.children[0];
    names.push(name === undefined ? '' : build.textOf(name));
  }
  return names;
}

/** The variable of a range loop. */
export function loopVariable(build: BuildContext, node: PlainNode): Variable | undefined {
  const declarator = field(node, 'declarator');
  const base: TypeName = typeOf(build, node);
  const from = declarator === undefined ? undefined : declared(build, declarator, base);
  if (from === undefined || declarator === undefined) return undefined;
  build.locals.push(from.name);
  const { name, namePlace, type } = from;
  return { name, namePlace, type, ...flagsOf(build, node), ...placeOf(declarator) };
}

/** `void (*act)() = on;` reads as an assignment to the result of a call. */
export function functionPointer(build: BuildContext, node: PlainNode): Variable | undefined {
  const isAssigned = node.type === 'assignment_expression';
  const outer = isAssigned ? field(node, 'left') : node;
  const inner = outer?.type === 'call_expression' ? field(outer, 'function') : undefined;
  const type = inner?.type === 'call_expression' ? field(inner, 'function') : undefined;
  const list = inner === undefined ? undefined : field(inner, 'arguments');
  const [pointer] = list?.children ?? [];
  if (type === undefined || !/^(primitive_type|identifier)$/.test(type.type)) return undefined;
  if (pointer?.type !== 'pointer_expression' || list?.children.length !== 1) return undefined;
  const argument = field(pointer, 'argument');
  const isArray = argument?.type === 'subscript_expression';
  const name = isArray ? field(argument, 'argument') : argument;
  if (name?.type !== 'identifier') return undefined;
  const indices = isArray ? field(argument, 'indices') : undefined;
  const size = indices?.children[0];
  const sizes = isArray ? [size === undefined ? undefined : expressionOf(build, size)] : [];
  const value = isAssigned ? field(node, 'right') : undefined;
  const text = build.textOf(name);
  build.locals.push(text);
  return {
    name: text,
    namePlace: placeOf(name),
    type: { name: build.textOf(type), constant: false, pointers: 1, reference: false, sizes },
    isStatic: false,
    isExtern: false,
    isVolatile: false,
    ...(value === undefined ? {} : { value: expressionOf(build, value) }),
    ...placeOf(node),
  };
}

/** `programs[current]();` reads as a declaration with the type `programs`. */
export function tableCall(build: BuildContext, node: PlainNode): Expression | undefined {
  const type = field(node, 'type');
  const outer = field(node, 'declarator');
  const binding = outer?.type === 'function_declarator' ? field(outer, 'declarator') : undefined;
  const [index] = binding?.children ?? [];
  if (type?.type !== 'type_identifier' || binding?.type !== 'structured_binding_declarator') return undefined;
  if (index === undefined || binding.children.length !== 1 || outer === undefined) return undefined;
  const base = expressionOf(build, type);
  const place = { start: node.start, end: outer.end };
  const callee: Expression = {
    kind: 'index',
    base,
    index: expressionOf(build, index),
    start: type.start,
    end: binding.end,
  };
  const list = field(outer, 'parameters');
  return {
    kind: 'call',
    callee,
    arguments: (list === undefined ? undefined : possibleArguments(build, list)) ?? [],
    ...place,
  };
}
