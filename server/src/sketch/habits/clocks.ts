/** Clocks kept in few bits, and clocks compared with a moment in their future. */
import type { DeadlineHabit, NarrowTimeHabit } from '../../base/habit';
import type { Span } from '../../base/span';
import type { Expression, Place, Variable } from '../form/ast';
import { type Site, spanAt } from '../values/model';
import type { Bodies, Body } from './bodies';

type Clock = 'millis' | 'micros';

interface Kept {
  readonly clock: Clock;
  /** A moment ahead of the clock: `millis() + 500`. */
  readonly later: boolean;
  readonly set: Span;
  readonly declared: { readonly variable: Variable; readonly site: Site; readonly item?: Place } | undefined;
  /** Bits of a time; 32 where the type is unknown. */
  readonly bits: number;
}

type Names = Map<string, Kept>;

export function clocksOf(bodies: Bodies): (NarrowTimeHabit | DeadlineHabit)[] {
  const asking = bodies.all.filter(({ notes }) => notes.called.has('millis') || notes.called.has('micros'));
  if (asking.length === 0) return [];
  const globals: Names = new Map();
  const locals = new Map<Body, Names>();
  for (const body of asking) {
    const own: Names = new Map();
    locals.set(body, own);
    // Twice, for what is set from a variable that is set further down.
    for (let round = 0; round < 2; round += 1) {
      for (const set of body.notes.sets) {
        if (set.operator !== '' || !set.whole || set.value === undefined) continue;
        const names = body.item.locals.includes(set.name) ? own : globals;
        const from = clockIn(set.value, own, globals);
        const before = names.get(set.name);
        if (from === undefined || (before !== undefined && (before.later || !from.later))) continue;
        names.set(set.name, keptIn(bodies, body, set.name, from, bodies.span(body, set)));
      }
    }
  }
  const found = new Map<string, NarrowTimeHabit | DeadlineHabit>();
  for (const body of asking) {
    const own = locals.get(body) ?? new Map<string, Kept>();
    for (const { operator, left, right, start, end } of body.notes.pairs) {
      const span = bodies.span(body, { start, end });
      for (const [one, other] of [
        [left, right],
        [right, left],
      ] as const) {
        const whole = wholeClock(other, own, globals);
        if (whole === undefined) continue;
        for (const name of leaves(one)) {
          const kept = own.get(name) ?? (body.item.locals.includes(name) ? undefined : globals.get(name));
          if (kept === undefined || kept.clock !== whole) continue;
          note(found, name, kept, operator, one, span);
        }
      }
    }
  }
  return [...found.values()];
}

function note(
  found: Map<string, NarrowTimeHabit | DeadlineHabit>,
  name: string,
  { bits, clock, declared, later, set }: Kept,
  operator: string,
  side: Expression,
  span: Span,
): void {
  if (declared !== undefined && bits < 31) {
    const key = `narrow ${name}`;
    const { variable, site } = declared;
    const at = spanAt(site, variable.namePlace);
    const type = variable.type.name;
    if (!found.has(key))
      found.set(key, { kind: 'time-narrow', name, type, bits, clock, span: at, set, used: span });
  } else if (later && operator !== '-' && side.kind === 'name') {
    const key = `later ${name}`;
    if (!found.has(key)) found.set(key, { kind: 'time-compared', name, clock, span, set });
  }
}

function keptIn(
  bodies: Bodies,
  body: Body,
  name: string,
  { clock, later }: { readonly clock: Clock; readonly later: boolean },
  set: Span,
): Kept {
  const local = body.notes.variables.find((variable) => variable.name === name);
  const field = body.fields.find((variable) => variable.name === name);
  const [global, ...others] = bodies.globals.get(name) ?? [];
  const declared = body.item.locals.includes(name)
    ? local && { variable: local, site: body.site }
    : field !== undefined
      ? { variable: field, site: body.site }
      : others.length === 0
        ? global
        : undefined;
  const type = declared?.variable.type;
  const number =
    type === undefined || type.pointers > 0 || type.sizes.length > 0
      ? undefined
      : bodies.types.named(type.name);
  const isTime = number !== undefined && !number.float && number.bits > 1;
  const bits = isTime ? number.bits - (number.signed ? 1 : 0) : 32;
  return { clock, later, set, declared, bits };
}

/** The clock that a value is: `millis()`, `now`, `now + 500`. */
function clockIn(
  value: Expression,
  own: Names,
  globals: Names,
): { clock: Clock; later: boolean } | undefined {
  const plain = wholeClock(value, own, globals);
  if (plain !== undefined) return { clock: plain, later: false };
  if (value.kind !== 'binary' || value.operator !== '+') return undefined;
  const ahead = wholeClock(value.left, own, globals) ?? wholeClock(value.right, own, globals);
  return ahead === undefined ? undefined : { clock: ahead, later: true };
}

/** A clock in all its bits: the call, or a variable that holds it. */
function wholeClock(expression: Expression, own: Names, globals: Names): Clock | undefined {
  if (expression.kind === 'call') {
    const { callee } = expression;
    if (callee.kind !== 'name' || expression.arguments.length > 0) return undefined;
    return callee.name === 'millis' || callee.name === 'micros' ? callee.name : undefined;
  }
  if (expression.kind !== 'name') return undefined;
  const kept = own.get(expression.name) ?? globals.get(expression.name);
  return kept === undefined || kept.later || kept.bits < 31 ? undefined : kept.clock;
}

/** Names that a sum is made of. */
function leaves(expression: Expression): readonly string[] {
  if (expression.kind === 'name') return [expression.name];
  if (expression.kind !== 'binary' || (expression.operator !== '+' && expression.operator !== '-')) return [];
  return [...leaves(expression.left), ...leaves(expression.right)];
}
