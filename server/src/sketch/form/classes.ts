/** Classes and structs: their members are items like any others. */
import type { PlainNode } from '../syntax/plain-tree';
import type { ClassItem, TypeName } from './ast';
import { type BuildContext, childOfType, field, placeOf } from './context';
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
