/** Macros where they stand: which one a name is, what stands for its parameters, and what its body gives. */
import type { Expression } from '../form/ast';
import { expandedBody, needsText } from './expansion';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { bodyOf, type Macro, type MacroBody } from './macros';
import { type MacroArgument, type Program, type Site, spanAt } from './model';
import { runItems } from './statements';
import { known, readThrough, unknown, type Value } from './value';

const deepestMacro = 40;

/** The macros a name may be here, itself left out while it is being expanded. */
export function macrosAt(machine: Machine, name: string, offset: number): readonly (Macro | undefined)[] {
  const { site, program } = machine;
  const found = program.macros.find(name, site, offset);
  if (found.length === 0 || site.expanding === undefined) return found;
  return site.expanding.includes(name) || site.expanding.length >= deepestMacro ? [] : found;
}

export function argumentAt(machine: Machine, name: string): MacroArgument | undefined {
  return machine.site.macroArguments?.get(name);
}

/** What stands for a macro's parameters where it is used. */
export function argumentsOf(
  macro: Macro,
  call: Extract<Expression, { kind: 'call' }>,
  site: Site,
): ReadonlyMap<string, MacroArgument> {
  return new Map(
    (macro.parameters ?? []).flatMap((parameter, index) => {
      const expression = call.arguments[index];
      return expression === undefined ? [] : [[parameter, { expression, site }] as const];
    }),
  );
}

/** The site inside the body of a macro that stands at `expression`. */
export function macroSite(
  machine: Machine,
  macro: Macro,
  expression: Expression,
  macroArguments?: ReadonlyMap<string, MacroArgument>,
): Site {
  const { site } = machine;
  return {
    file: site.file,
    base: site.base,
    order: site.order,
    prefix: site.prefix,
    fixed: spanAt(site, expression),
    fixedOffset: site.fixedOffset ?? expression.start,
    expanding: [...(site.expanding ?? []), macro.name],
    expansion: machine.expansionOf(expression),
    ...(macroArguments === undefined ? {} : { macroArguments }),
  };
}

/** The value of a macro's body. */
export function expand(
  machine: Machine,
  macro: Macro,
  expression: Expression,
  macroArguments?: ReadonlyMap<string, MacroArgument>,
): Value {
  const ready = machine.literalMacros.get(macro);
  if (ready !== undefined) return ready;
  const body = expandedAt(machine, macro, expression) ?? bodyOf(macro);
  if (body.expression?.kind === 'number' && macro.parameters === undefined) {
    const { value, type } = body.expression;
    const literal = readThrough(known(value, machine.types.literal(type, value)), macro.definition);
    machine.literalMacros.set(macro, literal);
    return literal;
  }
  // Text that is replaced has its arguments put in.
  const list = body === bodyOf(macro) ? macroArguments : undefined;
  const inside = macroSite(machine, macro, expression, list);
  if (body.expression !== undefined) {
    const { expression: inner } = body;
    const value = machine.at(inside, machine.scope, () => evaluate(machine, inner));
    return value.kind === 'known' && macro.parameters === undefined
      ? readThrough(value, macro.definition)
      : value;
  }
  const { items } = body;
  if (items !== undefined) machine.at(inside, machine.scope, () => runItems(machine, items));
  return unknown(`the macro \`${macro.name}\` does not stand for a value`, spanAt(machine.site, expression));
}

/** The macro's use with its text replaced, where it can only be read so; undefined where its body is enough. */
function expandedAt(machine: Machine, macro: Macro, expression: Expression): MacroBody | undefined {
  const { site, program } = machine;
  const { macros } = program;
  const handsOn =
    expression.kind === 'call' &&
    expression.arguments.some(
      (one) => one.kind === 'name' && isFunctionLike(macros, one.name, site, one.start),
    );
  if (!handsOn && !needsText(macros, macro, site, expression.start)) return undefined;
  const ready = machine.expandedMacros.get(expression);
  if (ready !== undefined) return ready;
  const text = program.textAt(site, expression);
  if (text === undefined) return undefined;
  const body = expandedBody(macros, text, site, expression.start);
  machine.spend(Math.ceil(text.length / 8));
  machine.expandedMacros.set(expression, body);
  return body;
}

function isFunctionLike(macros: Program['macros'], name: string, site: Site, offset: number): boolean {
  return macros.find(name, site, offset)[0]?.parameters !== undefined;
}
