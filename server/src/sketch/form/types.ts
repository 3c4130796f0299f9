/** Type names and declarators: who is declared, and as what. */
import type { PlainNode } from '../syntax/plain-tree';
import type { Expression, Place, TypeName } from './ast';
import { type BuildContext, childOfType, field, placeOf } from './context';
import { expressionOf } from './expressions';

/** The name of a type node without its template arguments and white space. */
export function typeText(build: BuildContext, node: PlainNode): string {
  switch (node.type) {
    case 'template_type':
    case 'template_function':
    case 'template_method': {
      const name = field(node, 'name');
      return name === undefined ? '' : typeText(build, name);
    }
    case 'qualified_identifier': {
      const scope = field(node, 'scope');
      const name = field(node, 'name');
      const inner = name === undefined ? '' : typeText(build, name);
      return scope === undefined ? inner : `${typeText(build, scope)}::${inner}`;
    }
    case 'placeholder_type_specifier':
      return 'auto';
    case 'struct_specifier':
    case 'class_specifier':
    case 'union_specifier':
    case 'enum_specifier': {
      const name = field(node, 'name');
      // A type without a name is known by where it stands.
      return name === undefined ? `(unnamed ${node.start})` : typeText(build, name);
    }
    default: {
      const text = build.textOf(node);
      return /\s/.test(text) ? text.replace(/\s+/g, ' ').trim() : text;
    }
  }
}

/** Arguments in angle brackets of a type or function name. */
export function angleArguments(build: BuildContext, node: PlainNode): TypeName['arguments'] {
  const named = node.type === 'qualified_identifier' ? field(node, 'name') : node;
  let list = named === undefined ? undefined : field(named, 'arguments');
  // `Out<5>::begin()`: those of the class.
  const scope = node.type === 'qualified_identifier' ? field(node, 'scope') : undefined;
  if (list === undefined && scope !== undefined) list = field(scope, 'arguments');
  if (list === undefined || list.type !== 'template_argument_list') return undefined;
  return list.children.map((child) =>
    child.type === 'type_descriptor'
      ? { ...typeOf(build, child), place: placeOf(child) }
      : expressionOf(build, child),
  );
}

/** The type of a declaration, a parameter or a descriptor, without what its declarator adds. */
export function typeOf(build: BuildContext, node: PlainNode): TypeName {
  const type = field(node, 'type');
  let constant = false;
  for (const child of node.children) {
    if (child.type === 'type_qualifier' && build.text.startsWith('const', child.start)) constant = true;
  }
  const plain: TypeName = {
    name: type === undefined ? '' : typeText(build, type),
    constant,
    pointers: 0,
    reference: false,
    sizes: [],
  };
  const list = type === undefined ? undefined : angleArguments(build, type);
  const base = list === undefined ? plain : { ...plain, arguments: list };
  const declarator = field(node, 'declarator');
  return node.type === 'type_descriptor' && declarator !== undefined
    ? (declared(build, declarator, base)?.type ?? base)
    : base;
}

export interface Declared {
  readonly name: string;
  /** With qualifiers: `Probe::begin`. */
  readonly owner: string;
  readonly namePlace: Place;
  readonly type: TypeName;
  /** Set where the declarator is a function's. */
  readonly parameters?: PlainNode;
}

/** Follows a declarator down to the name. */
export function declared(build: BuildContext, node: PlainNode, type: TypeName): Declared | undefined {
  let at: PlainNode | undefined = node;
  let pointers = type.pointers;
  let reference = type.reference;
  const sizes: (Expression | undefined)[] = [];
  let parameters: PlainNode | undefined;
  for (;;) {
    if (at === undefined) {
      const whole = { ...type, pointers, reference, sizes: [...sizes, ...type.sizes] };
      return {
        name: '',
        owner: '',
        namePlace: placeOf(node),
        type: whole,
        ...(parameters && { parameters }),
      };
    }
    switch (at.type) {
      case 'pointer_declarator':
      case 'abstract_pointer_declarator':
        pointers += 1;
        at = innerOf(at);
        continue;
      case 'reference_declarator':
      case 'abstract_reference_declarator':
        reference = true;
        at = innerOf(at);
        continue;
      case 'array_declarator':
      case 'abstract_array_declarator': {
        const size = field(at, 'size');
        sizes.unshift(size === undefined ? undefined : expressionOf(build, size));
        at = field(at, 'declarator');
        continue;
      }
      case 'function_declarator':
      case 'abstract_function_declarator':
        parameters = field(at, 'parameters');
        at = field(at, 'declarator');
        continue;
      case 'init_declarator':
      case 'attributed_declarator':
      case 'parenthesized_declarator':
        at = field(at, 'declarator') ?? at.children.find((child) => /declarator|identifier/.test(child.type));
        continue;
      default: {
        const text = typeText(build, at);
        const cut = text.lastIndexOf('::');
        const name = cut === -1 ? text : text.slice(cut + 2);
        if (!/^(~\s*)?[A-Za-z_$][\w$]*$/.test(name) && !name.startsWith('operator')) return undefined;
        const whole = { ...type, pointers, reference, sizes: [...sizes, ...type.sizes] };
        const start = at.end - lastNameLength(build, at);
        return {
          name,
          owner: cut === -1 ? '' : text.slice(0, cut),
          namePlace: { start, end: at.end },
          type: whole,
          ...(parameters && { parameters }),
        };
      }
    }
  }
}

function innerOf(node: PlainNode): PlainNode | undefined {
  return (
    field(node, 'declarator') ??
    childOfType(node, 'identifier') ??
    node.children.find((child) => /declarator$|identifier$/.test(child.type))
  );
}

function lastNameLength(build: BuildContext, node: PlainNode): number {
  const match = /[\w$]+$/.exec(build.textOf(node));
  return match === null ? node.end - node.start : match[0].length;
}
