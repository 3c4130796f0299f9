/** Classes, structs and enumerations: their members are items like any others. */
import type { PlainNode } from '../syntax/plain-tree';
import type { ClassItem, EnumItem, TypeName } from './ast';
import { type BuildContext, childOfType, field, placeOf } from './context';
import { expressionOf } from './expressions';
import { itemsOf } from './items';
import { angleArguments, typeText } from './types';

/** Undefined where the class is only announced. */
export function classOf(
  build: BuildContext,
  node: PlainNode,
  templateNames: readonly string[] = [],
): ClassItem | undefined {
  const body = field(node, 'body') ?? childOfType(node, 'field_declaration_list');
  if (body === undefined) return undefined;
  const { bodies } = build;
  build.bodies = 0;
  const members = itemsOf(build, body.children);
  build.bodies = bodies;
  return {
    kind: 'class',
    name: typeText(build, node),
    bases: basesOf(build, childOfType(node, 'base_class_clause')),
    members,
    templateNames,
    ...placeOf(node),
  };
}

function basesOf(build: BuildContext, clause: PlainNode | undefined): readonly TypeName[] {
  const bases: TypeName[] = [];
  for (const child of clause?.children ?? []) {
    if (!/^(type_identifier|qualified_identifier|template_type)$/.test(child.type)) continue;
    const plain = {
      name: typeText(build, child),
      constant: false,
      pointers: 0,
      reference: false,
      sizes: [],
    };
    const list = angleArguments(build, child);
    bases.push(list === undefined ? plain : { ...plain, arguments: list });
  }
  return bases;
}

export function enumOf(build: BuildContext, node: PlainNode): EnumItem | undefined {
  const body = field(node, 'body');
  if (body === undefined) return undefined;
  const entries: EnumItem['entries'][number][] = [];
  const collect = (nodes: readonly PlainNode[]) => {
    for (const child of nodes) {
      const name = field(child, 'name');
      if (child.type !== 'enumerator' || name === undefined) {
        collect(child.children);
        continue;
      }
      const value = field(child, 'value');
      const entry = { name: build.textOf(name), place: placeOf(name) };
      entries.push(value === undefined ? entry : { ...entry, value: expressionOf(build, value) });
    }
  };
  collect(body.children);
  const head = build.text.slice(node.start, body.start);
  const name = field(node, 'name');
  return {
    kind: 'enum',
    name: name === undefined ? '' : typeText(build, name),
    scoped: /^enum\s+(class|struct)\b/.test(head),
    entries,
    ...placeOf(node),
  };
}
