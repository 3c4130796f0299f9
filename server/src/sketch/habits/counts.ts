/** Edges counted in the running program, and bytes of transmissions. */
import type { EdgeHabit, TransmissionHabit } from '../../base/habit';
import type { Expression } from '../form/ast';
import type { Bodies, Body } from './bodies';
import { isStatic } from './handlers';

export function edgesOf(bodies: Bodies): EdgeHabit[] {
  const found: EdgeHabit[] = [];
  for (const body of bodies.all) {
    const { reads, sets } = body.notes;
    const [read, ...others] = reads;
    if (read === undefined || others.length > 0) continue;
    for (const set of sets) {
      const isLocal = body.item.locals.includes(set.name) && !isStatic(body, set.name);
      if (!set.edge || isLocal) continue;
      found.push({
        kind: 'counts-edges',
        name: set.name,
        function: body.name,
        span: bodies.span(body, set),
        read: bodies.span(body, read),
      });
    }
  }
  return found;
}

export function transmissionsOf(bodies: Bodies): TransmissionHabit[] {
  const found: TransmissionHabit[] = [];
  for (const body of bodies.all) {
    for (const one of body.notes.transmissions) {
      let sum = 0;
      for (const { bytes, loops } of one.writes) {
        let count = typeof bytes === 'number' ? bytes : (numberOf(bodies, body, bytes) ?? 0);
        for (const { first, test, step } of loops) count *= roundsOf(bodies, body, first, test, step);
        sum += count;
      }
      if (sum === 0) continue;
      const span = bodies.span(body, one);
      found.push({ kind: 'transmission', name: one.name, span, function: body.name, bytes: sum });
    }
  }
  return found;
}

type ForItem = Body['notes']['transmissions'][number]['writes'][number]['loops'][number];

/** Rounds of `for (int i = 0; i < 64; i++)`; 0 where they are not known. */
function roundsOf(
  bodies: Bodies,
  body: Body,
  first: ForItem['first'],
  test: ForItem['test'],
  step: ForItem['step'],
): number {
  const variable = first?.kind === 'variables' ? first.variables[0] : undefined;
  if (variable?.value === undefined || test?.kind !== 'binary' || test.left.kind !== 'name') return 0;
  if (test.left.name !== variable.name || step?.kind !== 'step' || step.by !== 1) return 0;
  const from = numberOf(bodies, body, variable.value);
  const to = numberOf(bodies, body, test.right);
  if (from === undefined || to === undefined) return 0;
  const rounds = test.operator === '<' ? to - from : test.operator === '<=' ? to - from + 1 : 0;
  return Math.max(0, rounds);
}

/** A plain number, or a constant with one. */
function numberOf(bodies: Bodies, body: Body, expression: Expression): number | undefined {
  if (expression.kind === 'number') return expression.value;
  if (expression.kind !== 'name' || body.item.locals.includes(expression.name)) return undefined;
  const { name } = expression;
  const macros = bodies.program.macros.find(name, body.site, expression.start);
  if (macros.length > 0) {
    const text = macros.length === 1 ? (macros[0]?.body.trim() ?? '') : '';
    return /^\(?\d+\)?$/.test(text) ? Number(text.replace(/[()]/g, '')) : undefined;
  }
  const [own, ...others] = bodies.globals.get(name) ?? [];
  if (own === undefined || others.length > 0 || !own.variable.type.constant) return undefined;
  return own.variable.value?.kind === 'number' ? own.variable.value.value : undefined;
}
