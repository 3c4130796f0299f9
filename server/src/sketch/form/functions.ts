/** Function definitions, methods, constructors and lambdas. */
import type { PlainNode } from '../syntax/plain-tree';
import type { FunctionItem, Item, MemberStart } from './ast';
import { type BuildContext, childOfType, field, placeOf } from './context';
import { argumentsOf } from './expressions';
import { itemsOf } from './items';
import { type Declared, declared, typeOf, typeText } from './types';
import { parametersOf } from './variables';

const noType = { name: '', constant: false, pointers: 0, reference: false, sizes: [] };

function definitionOf(
  build: BuildContext,
  node: PlainNode,
  from: Pick<Declared, 'name' | 'owner' | 'namePlace' | 'type' | 'parameters'>,
  templateNames: readonly string[],
): FunctionItem {
  const outer = build.locals;
  build.locals = [];
  const parameters = parametersOf(build, from.parameters);
  const members = membersOf(build, node);
  const body = field(node, 'body');
  build.bodies += 1;
  const { value, directives } = build.collecting(() =>
    body?.type === 'compound_statement' ? itemsOf(build, body.children) : undefined,
  );
  build.bodies -= 1;
  const locals = [...new Set(build.locals)];
  // A lambda's names are its own, but it stands in a function where they could hide the same global.
  build.locals = [...outer, ...locals];
  return {
    kind: 'function',
    name: from.name,
    namePlace: from.namePlace,
    owner: from.owner,
    type: from.type,
    parameters,
    members,
    ...(value === undefined || body === undefined ? {} : { body: value, bodyStart: body.start + 1 }),
    templateNames,
    isStatic: node.children.some(
      (child) => child.type === 'storage_class_specifier' && build.textOf(child) === 'static',
    ),
    directives,
    locals,
    ...placeOf(node),
  };
}

/** A function definition; undefined for operators and what has no name. */
export function functionOf(
  build: BuildContext,
  node: PlainNode,
  templateNames: readonly string[] = [],
): FunctionItem | undefined {
  const declarator = field(node, 'declarator');
  const from = declarator === undefined ? undefined : declared(build, declarator, typeOf(build, node));
  if (from === undefined || from.name === '' || from.name.startsWith('~')) return undefined;
  return definitionOf(build, node, from, templateNames);
}

export function lambdaOf(build: BuildContext, node: PlainNode): FunctionItem {
  const declarator = field(node, 'declarator');
  const parameters = declarator === undefined ? undefined : field(declarator, 'parameters');
  const start = { start: node.start, end: node.start + 1 };
  const from = {
    name: '',
    owner: '',
    namePlace: start,
    type: noType,
    ...(parameters === undefined ? {} : { parameters }),
  };
  return definitionOf(build, node, from, []);
}

function membersOf(build: BuildContext, node: PlainNode): readonly MemberStart[] {
  const list = childOfType(node, 'field_initializer_list');
  const members: MemberStart[] = [];
  for (const child of list?.children ?? []) {
    const name = child.children[0];
    const value = child.children[1];
    if (child.type !== 'field_initializer' || name === undefined) continue;
    members.push({ name: typeText(build, name), arguments: argumentsOf(build, value) });
  }
  return members;
}

/** A definition whose pieces lie loose in an error: the statements that follow its head become its body. */
export function looseFunction(
  build: BuildContext,
  head: PlainNode,
  bodyNodes: readonly PlainNode[],
  bodyStart: number,
  end: number,
): FunctionItem | undefined {
  const from = declared(build, head, noType);
  if (from === undefined || from.name === '' || from.parameters === undefined) return undefined;
  const whole = { type: 'compound_statement', field: 'body', start: bodyStart - 1, end, children: bodyNodes };
  const node: PlainNode = {
    type: 'function_definition',
    field: undefined,
    start: head.start,
    end,
    children: [head, whole],
  };
  const items: Item[] = [];
  const built = definitionOf(build, node, from, []);
  return built.body === undefined ? { ...built, body: items, bodyStart } : built;
}
