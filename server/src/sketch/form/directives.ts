/** Preprocessor directives. Each is an item where it stands, and goes on the list of its function or branch. */
import type { PlainNode } from '../syntax/plain-tree';
import type { Branch, ConditionalItem, Directive } from './ast';
import { type BuildContext, field, placeOf } from './context';
import { itemsOf } from './items';

function noted<T extends Directive>(build: BuildContext, directive: T): T {
  build.directives.push(directive);
  return directive;
}

export function defineOf(build: BuildContext, node: PlainNode): readonly Directive[] {
  const name = field(node, 'name');
  if (name === undefined) return [];
  const value = field(node, 'value');
  const list = field(node, 'parameters');
  const plain = {
    kind: 'define' as const,
    name: build.textOf(name),
    namePlace: placeOf(name),
    body: value === undefined ? '' : build.textOf(value),
    ...placeOf(node),
  };
  if (list === undefined) return [noted(build, plain)];
  const parameters = build
    .textOf(list)
    .replace(/^\(|\)$/g, '')
    .split(',')
    .map((parameter) => parameter.trim())
    .filter((parameter) => parameter !== '');
  return [noted(build, { ...plain, parameters })];
}

/** `#undef`; other directives (pragma, error, line) say nothing about values. */
export function undefOf(build: BuildContext, node: PlainNode): readonly Directive[] {
  const directive = field(node, 'directive');
  const argument = field(node, 'argument');
  if (directive === undefined || argument === undefined) return [];
  if (build.textOf(directive).replace(/\s/g, '') !== '#undef') return [];
  const name = /^\s*(\w+)/.exec(build.textOf(argument))?.[1];
  return name === undefined ? [] : [noted(build, { kind: 'undef', name, ...placeOf(node) })];
}

export function includeOf(build: BuildContext, node: PlainNode): readonly Directive[] {
  const path = field(node, 'path');
  if (path === undefined) return [];
  const text = build.textOf(path);
  return [
    noted(build, {
      kind: 'include',
      // A name there is a macro.
      path: /^["<]/.test(text) ? text.slice(1, -1) : text,
      system: text.startsWith('<'),
      ...placeOf(node),
    }),
  ];
}

export function conditionalOf(build: BuildContext, node: PlainNode): ConditionalItem {
  const branches: Branch[] = [];
  let at: PlainNode | undefined = node;
  while (at !== undefined) {
    const here: PlainNode = at;
    const alternative = field(here, 'alternative');
    const head = new Set<PlainNode | undefined>([field(here, 'condition'), field(here, 'name'), alternative]);
    const inside = here.children.filter((child) => !head.has(child));
    const { value, directives } = build.collecting(() => itemsOf(build, inside));
    branches.push({ condition: conditionText(build, here), items: value, directives });
    at = alternative;
  }
  return noted(build, { kind: 'conditional', branches, ...placeOf(node) });
}

function conditionText(build: BuildContext, node: PlainNode): string | undefined {
  if (node.type === 'preproc_else') return undefined;
  const name = field(node, 'name');
  if (name !== undefined) {
    const negative = /^#\s*(ifndef|elifndef)/.test(build.textOf(node));
    return `${negative ? '!' : ''}defined(${build.textOf(name)})`;
  }
  const condition = field(node, 'condition');
  return condition === undefined ? '' : build.textOf(condition);
}
