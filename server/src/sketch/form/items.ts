/** Statements and declarations of the plain tree, at every level of a file. */
import type { PlainNode } from '../syntax/plain-tree';
import type { Case, Expression, Item } from './ast';
import { classOf, enumOf } from './classes';
import { type BuildContext, childOfType, field, placeOf } from './context';
import { conditionalOf, defineOf, includeOf, undefOf } from './directives';
import { salvage } from './errors';
import { describedType, expressionOf } from './expressions';
import { functionOf } from './functions';
import { typeText } from './types';
import { decided, isUnfinished, undecided } from './unfinished';
import { declarationItems, functionPointer, loopVariable, tableCall, templateNamesOf } from './variables';

/** All items of a list of nodes, in order. */
export function itemsOf(build: BuildContext, nodes: readonly PlainNode[]): Item[] {
  const items: Item[] = [];
  for (const node of nodes) for (const item of itemOf(build, node)) items.push(item);
  return items;
}

/** One statement; several become a block. */
export function statementOf(build: BuildContext, node: PlainNode | undefined, at: PlainNode): Item {
  const items = node === undefined ? [] : itemOf(build, node);
  const [first] = items;
  if (first !== undefined && items.length === 1) return first;
  return { kind: 'block', items, ...placeOf(node ?? at) };
}

function conditionIn(build: BuildContext, node: PlainNode): Expression {
  const test = field(node, 'condition');
  return test === undefined ? { kind: 'opaque', parts: [], ...placeOf(node) } : expressionOf(build, test);
}

/** The items a node stands for: none, one, or several. */
export function itemOf(build: BuildContext, node: PlainNode): readonly Item[] {
  const place = placeOf(node);
  switch (node.type) {
    case 'expression_statement': {
      const [inner] = node.children;
      if (inner === undefined) return [];
      const handler = functionPointer(build, inner);
      if (handler !== undefined) return [{ kind: 'variables', variables: [handler], ...place }];
      return [{ kind: 'expression', expression: expressionOf(build, inner), ...place }];
    }
    case 'declaration':
    case 'field_declaration': {
      const call = tableCall(build, node);
      if (call !== undefined) return [{ kind: 'expression', expression: call, ...place }];
      return [...typeItems(build, node), ...declarationItems(build, node)];
    }
    case 'function_definition':
    case 'inline_method_definition': {
      const built = functionOf(build, node);
      return [...typeItems(build, node), ...(built === undefined ? [] : placed(build, built))];
    }
    case 'class_specifier':
    case 'struct_specifier':
    case 'union_specifier': {
      const built = classOf(build, node);
      return built === undefined ? [] : placed(build, built);
    }
    case 'enum_specifier': {
      const built = enumOf(build, node);
      return built === undefined ? [] : [built];
    }
    case 'template_declaration':
      return templateItems(build, node);
    case 'type_definition':
      return [...typeItems(build, node), ...typedefItems(build, node)];
    case 'alias_declaration': {
      const name = field(node, 'name');
      const type = field(node, 'type');
      if (name === undefined || type === undefined) return [];
      return [{ kind: 'alias', name: build.textOf(name), type: describedType(build, type), ...place }];
    }
    case 'namespace_definition': {
      const name = field(node, 'name');
      const items = itemsOf(build, field(node, 'body')?.children ?? []);
      return [{ kind: 'namespace', name: name === undefined ? '' : build.textOf(name), items, ...place }];
    }
    case 'namespace_alias_definition': {
      const [name, target] = node.children;
      if (name === undefined || target === undefined) return [];
      const type = {
        name: typeText(build, target),
        constant: false,
        pointers: 0,
        reference: false,
        sizes: [],
      };
      return [{ kind: 'alias', name: build.textOf(name), type, ...place }];
    }
    case 'linkage_specification': {
      const body = field(node, 'body');
      if (body === undefined) return [];
      return itemsOf(build, body.type === 'declaration_list' ? body.children : [body]);
    }
    case 'preproc_def':
    case 'preproc_function_def':
      return defineOf(build, node);
    case 'preproc_call':
      return undefOf(build, node);
    case 'preproc_include':
      return includeOf(build, node);
    case 'preproc_if':
    case 'preproc_ifdef':
      return [conditionalOf(build, node)];
    case 'compound_statement':
      return [{ kind: 'block', items: itemsOf(build, node.children), ...place }];
    case 'if_statement': {
      const test = decided(build, node, conditionIn(build, node));
      const yes = statementOf(build, field(node, 'consequence'), node);
      const other = field(node, 'alternative');
      if (other === undefined) return [{ kind: 'if', test, yes, ...place }];
      const no = statementOf(build, other.type === 'else_clause' ? statementChild(other) : other, other);
      return [{ kind: 'if', test, yes, no, ...place }];
    }
    case 'while_statement':
      return [
        {
          kind: 'while',
          test: decided(build, node, conditionIn(build, node)),
          body: statementOf(build, field(node, 'body'), node),
          ...place,
        },
      ];
    case 'do_statement':
      return [
        {
          kind: 'do',
          test: conditionIn(build, node),
          body: statementOf(build, field(node, 'body'), node),
          ...place,
        },
      ];
    case 'for_statement':
      return [forOf(build, node)];
    case 'for_range_loop': {
      const variable = loopVariable(build, node);
      const range = field(node, 'right');
      const body = statementOf(build, field(node, 'body'), node);
      if (variable === undefined || range === undefined) return [body];
      return [{ kind: 'each', variable, range: expressionOf(build, range), body, ...place }];
    }
    case 'switch_statement':
      // Before the first case stands nothing, unless the cases are still to be typed.
      return [
        ...itemsOf(
          build,
          (field(node, 'body')?.children ?? []).filter(({ type }) => type !== 'case_statement'),
        ),
        {
          kind: 'switch',
          test: conditionIn(build, node),
          cases: casesOf(build, field(node, 'body')),
          ...place,
        },
      ];
    case 'case_statement': // outside a switch: its statements still count
      return itemsOf(
        build,
        node.children.filter((child) => child.field !== 'value'),
      );
    case 'return_statement': {
      const [value] = node.children;
      return [
        value === undefined
          ? { kind: 'return', ...place }
          : { kind: 'return', value: expressionOf(build, value), ...place },
      ];
    }
    case 'break_statement':
      return [{ kind: 'break', ...place }];
    case 'continue_statement':
      return [{ kind: 'continue', ...place }];
    case 'labeled_statement':
    case 'attributed_statement':
      return itemsOf(
        build,
        node.children.filter((child) => child.field !== 'label'),
      );
    case 'try_statement':
    case 'catch_clause':
      return itemsOf(
        build,
        node.children.filter((child) => child.type !== 'parameter_list'),
      );
    case 'goto_statement':
    case 'using_declaration':
    case 'static_assert_declaration':
    case 'access_specifier':
    case 'friend_declaration':
    case 'type_identifier':
    case 'primitive_type':
      return [];
    case 'ERROR':
      return salvage(build, node.children, node.end);
    default:
      return [{ kind: 'expression', expression: expressionOf(build, node), ...place }];
  }
}

/** Where it stands, or at the top for what stands in a body. */
function placed(build: BuildContext, item: Item): readonly Item[] {
  if (build.bodies === 0) return [item];
  build.hoisted.push(item);
  return [];
}

function statementChild(clause: PlainNode): PlainNode | undefined {
  return clause.children.find((child) => child.type !== 'ERROR') ?? clause.children[0];
}

function forOf(build: BuildContext, node: PlainNode): Item {
  const first = field(node, 'initializer');
  const given = field(node, 'condition');
  const plain = given === undefined ? undefined : expressionOf(build, given);
  const isEndless = plain === undefined || plain.kind === 'number';
  const test = isEndless && isUnfinished(build, node) ? undecided(plain, node) : plain;
  const step = field(node, 'update');
  return {
    kind: 'for',
    ...(first === undefined ? {} : { first: statementOf(build, first, node) }),
    ...(test === undefined ? {} : { test }),
    ...(step === undefined ? {} : { step: expressionOf(build, step) }),
    body: statementOf(build, field(node, 'body'), node),
    ...placeOf(node),
  };
}

function casesOf(build: BuildContext, body: PlainNode | undefined): readonly Case[] {
  const cases: Case[] = [];
  for (const child of body?.children ?? []) {
    if (child.type !== 'case_statement') continue;
    const value = field(child, 'value');
    cases.push({
      value: value === undefined ? undefined : expressionOf(build, value),
      items: itemsOf(
        build,
        child.children.filter((part) => part.field !== 'value'),
      ),
    });
  }
  return cases;
}

/** Types that a declaration defines on the way: `struct Lamp { … } lamps[2];` */
function typeItems(build: BuildContext, node: PlainNode): readonly Item[] {
  const type = field(node, 'type');
  if (type === undefined || childOfType(type, 'field_declaration_list') === undefined) {
    return type?.type === 'enum_specifier' ? itemOf(build, type) : [];
  }
  return itemOf(build, type);
}

function typedefItems(build: BuildContext, node: PlainNode): Item[] {
  const items: Item[] = [];
  for (const child of node.children) {
    if (child.field !== 'declarator' || child.type !== 'type_identifier') continue;
    const type = describedType(build, { ...node, children: node.children.filter((one) => one !== child) });
    items.push({ kind: 'alias', name: build.textOf(child), type, ...placeOf(node) });
  }
  return items;
}

function templateItems(build: BuildContext, node: PlainNode): readonly Item[] {
  const names = templateNamesOf(build, node);
  const inner = node.children[node.children.length - 1];
  if (inner === undefined) return [];
  if (inner.type === 'function_definition') {
    const built = functionOf(build, inner, names);
    return built === undefined ? [] : [built];
  }
  if (/^(class|struct)_specifier$/.test(inner.type)) {
    const built = classOf(build, inner, names);
    return built === undefined ? [] : [built];
  }
  return itemOf(build, inner);
}
