/**
 * Calls and classes that nobody describes. What they do is not known, but where a number that can be a pin is handed to
 * them, a pin may be in use: one use with an unknown pin says so, and nothing is concluded from a pin that seems idle.
 */
import type { CallFacts } from '../../base/platform';
import type { Expression } from '../form/ast';
import type { FactCall } from './board-pins';
import { escape_ } from './escape';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { spanAt } from './model';
import { changeByCall } from './pin-states';
import { unknown, type Value } from './value';

/** Classes of the language and of networks: the numbers they take are none of pins. */
const plainClass = /^(std::|String$|Printable$|IPAddress$|DateTime$|TimeSpan$|File$|[A-Z]$)/;

/** Methods that make a device ready. */
const beginning = /^(begin|init|attach|setup|start|config|add|open|connect$)|pin/i;

/** Macros that are not expanded. */
const capitals = /^[A-Z][A-Z0-9_]+$/;

/** Functions whose name speaks of pins or of making something ready. */
const reaching =
  /pin(?!g)|gpio|attach|begin|init|setup|pwm|adc|dac|irq|interrupt|servo|motor|led|relay|port/i;

/** Of the language's library and the core, though their names look like the above. */
const harmless =
  /^(print\w*|snprintf\w*|sprintf\w*|F|PSTR|assert|ASSERT|min|max|F_CPU|MIN|MAX|ABS|random\w*|map\w*)$/i;

/** Registers by which chips drive pins, of families whose ports are not known here (common practice in names). */
const register = /^(PORT|DDR|GPIO|PIO|LAT|TRIS|VPORT)[A-Z0-9_]*$/;

const facts: CallFacts = { name: 'device', action: 'device', pin: 0 };

const registerFacts: CallFacts = { name: 'register', action: 'write', pin: 0 };

/** An object made or begun, of a class that is not known. */
export function meetStranger(machine: Machine, call: FactCall, reason: string): void {
  const { list } = call;
  const values = call.values ?? list.map((one) => evaluate(machine, one));
  for (const [index, value] of values.entries()) {
    const expression = list[index];
    if (expression !== undefined) escape_(machine, call.call, index, value, expression);
  }
  if (!plainClass.test(call.call)) meetUnknown(machine, call, values, reason);
}

/** A method of something that is not known. */
export function meetStrangeMethod(
  machine: Machine,
  method: string,
  className: string,
  call: FactCall,
  values: readonly Value[],
): void {
  if (!beginning.test(method) || plainClass.test(className)) return;
  meetUnknown(machine, call, values, `\`${call.call}\` is not known here`);
}

/** A function or macro that is not known. */
export function meetStrangeFunction(
  machine: Machine,
  name: string,
  call: FactCall,
  values: readonly Value[],
): void {
  if (!reaching.test(name) && !capitals.test(name)) return;
  if (harmless.test(name) || plainClass.test(name)) return;
  meetUnknown(machine, call, values, `\`${name}\` is not known here`);
}

/** An assignment to a register that nothing is known of. */
export function meetStrangeRegister(
  machine: Machine,
  expression: Extract<Expression, { kind: 'assign' }>,
): void {
  const { target, value } = expression;
  let root = target;
  while (root.kind === 'member' || root.kind === 'index') root = root.base;
  if (root.kind !== 'name' || !register.test(root.name)) return;
  const place = spanAt(machine.site, expression);
  const pin = unknown(`\`${root.name}\` is a register that is not known here`, place);
  changeByCall(machine, registerFacts, pin, undefined);
  if (!machine.use(expression, registerFacts, pin, undefined)) return;
  const span = spanAt(machine.site, target);
  machine.describe({ call: root.name, span, callSpan: place, valueSpan: spanAt(machine.site, value) });
}

function meetUnknown(machine: Machine, call: FactCall, values: readonly Value[], reason: string): void {
  const index = values.findIndex((value, at) => canBePin(machine, value, call.list[at]));
  const expression = call.list[index];
  if (index === -1 || expression === undefined) return;
  const place = 'file' in call.place ? call.place : spanAt(machine.site, call.place);
  const pin = unknown(reason, place);
  changeByCall(machine, facts, pin, undefined);
  if (!machine.use(call.node, facts, pin, undefined)) return;
  const span = spanAt(machine.site, expression);
  machine.describe({ call: call.call, span, callSpan: place, valueSpan: undefined });
}

/** Whether a value may be the number of one of the board's pins. */
function canBePin(machine: Machine, value: Value, expression: Expression | undefined): boolean {
  if (expression === undefined || expression.kind === 'text') return false;
  if (value.kind === 'unknown') return value.type !== undefined && !value.type.float;
  if (value.kind === 'array') return value.entryType !== undefined && value.all === undefined;
  if (value.kind !== 'known' || value.type.float || value.type.bits === 1) return false;
  return value.values.some((one) => machine.pinNumbers.has(one));
}
