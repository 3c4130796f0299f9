/** Variables that a handler writes and the running program reads. */
import type { SharedHabit } from '../../base/habit';
import type { Item, Place } from '../form/ast';
import { spanAt } from '../values/model';
import type { Bodies, Body } from './bodies';
import type { HandlerFound } from './handlers';
import { emptyLoop, namesIn } from './loops';
import type { BinaryExpression } from './notes';
import { walkItems } from './walk';

const stops =
  /\b(?:noInterrupts|cli|ATOMIC_BLOCK|detachInterrupt|SREG|EIMSK|PCICR|TIMSK\d|__disable_irq|\w*ENTER_CRITICAL\w*|save_and_disable_interrupts)\b/;

const readIn = new WeakMap<
  readonly Item[],
  ReadonlyMap<string, readonly (Place & { readonly again: boolean })[]>
>();

/** Places of a body that read a name, and whether a loop reads it until two readings are the same. */
function readsOf(body: Body) {
  const items = body.item.body ?? [];
  const known = readIn.get(items);
  if (known !== undefined) return known;
  const reads = new Map<string, (Place & { readonly again: boolean })[]>();
  walkItems(items, {
    expression(expression, above) {
      // A plain assignment reads its value only.
      if (expression.kind === 'assign' && expression.operator === '' && expression.target.kind === 'name') {
        targets.add(expression.target);
      }
      if (expression.kind === 'binary' && needsOneByte(expression)) narrow.add(expression.left);
      if (expression.kind !== 'name' || targets.has(expression)) return undefined;
      const again = narrow.has(expression) || above.some((item) => item.kind === 'do');
      const list = reads.get(expression.name) ?? [];
      reads.set(expression.name, [...list, { start: expression.start, end: expression.end, again }]);
      return undefined;
    },
  });
  readIn.set(items, reads);
  return reads;
}
const targets = new WeakSet<object>();
const narrow = new WeakSet<object>();

/** `x & 0xFF` takes the lowest byte alone, and a sign lies in the highest. */
function needsOneByte({ operator, right }: BinaryExpression): boolean {
  if (right.kind !== 'number') return false;
  if (operator === '&') return right.value >= 0 && right.value <= 0xff;
  return (operator === '<' || operator === '>=') && right.value === 0;
}

export function sharedOf(bodies: Bodies, handlers: readonly HandlerFound[]): SharedHabit[] {
  const shared = new Map<string, SharedHabit>();
  if (handlers.length === 0) return [];
  const inHandlers = new Set(handlers.flatMap(({ reached }) => [...reached]));
  const loop = bodies.closure(bodies.of('loop'));
  const running = bodies.closure([...bodies.of('setup'), ...bodies.of('loop')]);
  for (const { habit, reached } of handlers) {
    for (const body of reached) {
      for (const set of body.notes.sets) {
        const { name } = set;
        const declarations = bodies.globals.get(name);
        if (!set.whole || shared.has(name) || declarations === undefined || body.item.locals.includes(name))
          continue;
        const [own, ...others] = declarations.filter(({ variable }) => !variable.isExtern);
        if (own === undefined || others.length > 0) continue;
        const { variable, site, alone } = own;
        const { type } = variable;
        const number =
          bodies.types.named(type.name) ??
          (bodies.program.enums.has(type.name) ? bodies.types.int : undefined);
        if (number === undefined || type.pointers > 0 || type.reference || type.sizes.length > 0) continue;
        const outside = [...loop].filter((one) => !inHandlers.has(one));
        const reads = outside.flatMap((one) => readsIn(bodies, one, name));
        const waited = [...running].flatMap((one) =>
          one.item.locals.includes(name)
            ? []
            : one.notes.loops
                .filter((item) => emptyLoop(item) && namesIn(item).has(name))
                .map((at) => bodies.span(one, headOf(at))),
        );
        if (reads.length === 0 && waited.length === 0) continue;
        const span = spanAt(site, variable.namePlace);
        const before = declarationStart(bodies, own.site, variable.namePlace);
        shared.set(name, {
          kind: 'shared-variable',
          name,
          type: type.name,
          bits: number.bits,
          isVolatile: declarations.some((one) => one.variable.isVolatile),
          span,
          ...(alone && before !== undefined && { volatileAt: before }),
          handler: habit.name,
          written: bodies.span(body, set),
          reads,
          ...(waited[0] !== undefined && { waitedFor: waited[0] }),
        });
      }
    }
  }
  return [...shared.values()];
}

function headOf(item: Place & { readonly test?: Place }): Place {
  return item.test ?? item;
}

function readsIn(bodies: Bodies, body: Body, name: string): SharedHabit['reads'] {
  if (body.item.locals.includes(name)) return [];
  const places = readsOf(body).get(name) ?? [];
  if (places.length === 0) return [];
  const isStopped = (one: Body) => stops.test(bodies.textOf(one.site, one.item));
  const guarded =
    isStopped(body) || bodies.all.some((one) => one.notes.called.has(body.name) && isStopped(one));
  return places.map(({ again, ...place }) => ({
    function: body.name,
    span: bodies.span(body, place),
    guarded: guarded || again,
  }));
}

/** Where the type of a declaration begins, if nothing but a type stands before the name on its line. */
function declarationStart(
  bodies: Bodies,
  site: Parameters<Bodies['textOf']>[0],
  name: Place,
): number | undefined {
  const from = Math.max(-site.base, name.start - 80);
  const before =
    /(?:^|[;}\n])[ \t]*((?:static[ \t]+)?)((?:unsigned[ \t]+|signed[ \t]+|long[ \t]+|short[ \t]+)*\w+[ \t]+)$/.exec(
      bodies.textOf(site, { start: from, end: name.start }),
    );
  const type = before?.[2];
  return type === undefined ? undefined : site.base + name.start - type.length;
}
