/** Loops with nothing in them that wait for something from outside. */
import type { WaitHabit } from '../../base/habit';
import type { Expression, Item } from '../form/ast';
import type { Bodies } from './bodies';
import type { LoopItem } from './notes';
import { walkExpression, walkItems } from './walk';

const idleCalls: ReadonlySet<string> = new Set([
  'delay',
  'delayMicroseconds',
  'yield',
  'wdt_reset',
  'wdtFeed',
  'vTaskDelay',
]);
const clocks: ReadonlySet<string> = new Set(['millis', 'micros']);

const empty = new WeakMap<LoopItem, boolean>();

/** Whether a loop does nothing but wait. */
export function emptyLoop(item: LoopItem): boolean {
  const known = empty.get(item);
  if (known !== undefined) return known;
  const is = isIdle(item.body) && (item.kind !== 'for' || item.step === undefined);
  empty.set(item, is);
  return is;
}

function isIdle(item: Item): boolean {
  if (item.kind === 'block') return item.items.every(isIdle);
  if (item.kind !== 'expression') return false;
  const { expression } = item;
  if (expression.kind === 'opaque') return expression.parts.length === 0;
  if (expression.kind !== 'call') return false;
  const { callee } = expression;
  return (callee.kind === 'name' || callee.kind === 'member') && idleCalls.has(callee.name);
}

/** Names and calls in the test of a loop. */
export function namesIn(item: LoopItem): ReadonlySet<string> {
  const names = new Set<string>();
  if (item.test !== undefined)
    walkExpression(item.test, {
      expression(expression) {
        if (expression.kind === 'name' || expression.kind === 'member') names.add(expression.name);
        return undefined;
      },
    });
  return names;
}

/** The object in `!Serial`, `Serial == false`. */
function awaited(test: Expression): string | undefined {
  if (test.kind === 'unary' && test.operator === '!' && test.operand.kind === 'name')
    return test.operand.name;
  if (test.kind !== 'binary' || test.operator !== '==' || test.left.kind !== 'name') return undefined;
  return test.right.kind === 'number' && test.right.value === 0 ? test.left.name : undefined;
}

export function waitsOf(bodies: Bodies): WaitHabit[] {
  const waits: WaitHabit[] = [];
  for (const body of bodies.all) {
    for (const item of body.notes.loops) {
      if (item.test === undefined) continue;
      const name = awaited(item.test);
      const console = name !== undefined && /^Serial(?:USB)?\d?$/.test(name);
      if (console ? leaves(item.body) : !emptyLoop(item)) continue;
      const names = namesIn(item);
      if (names.size === 0 || [...clocks].some((clock) => names.has(clock))) continue;
      waits.push({
        kind: 'wait-loop',
        span: bodies.span(body, console ? { start: item.start, end: item.end } : item.test),
        function: body.name,
        waitsFor: console ? 'console' : names.has('digitalRead') ? 'pin' : 'other',
        ...(console && { name }),
      });
    }
  }
  return waits;
}

/** Whether a body can leave its loop by itself. */
function leaves(item: Item): boolean {
  let found = false;
  walkItems([item], {
    item(one) {
      if (one.kind === 'break' || one.kind === 'return') found = true;
      return undefined;
    },
  });
  return found;
}
