/** Calls that do something to pins, as the library data describes them. */
import type { CallFacts } from '../../base/platform';
import type { Expression, Place } from '../form/ast';
import { evaluate } from './expressions';
import { forgetChanged } from './interrupts';
import type { Machine } from './machine';
import { spanAt } from './model';
import { argumentAt } from './names';
import { knownSet, type Unknown, unknown, type Value } from './value';

const missing: Unknown = unknown('the argument is missing');

/** Evaluates the arguments and meets each use that the call makes. Gives the values of the arguments. */
export function meetFacts(
  machine: Machine,
  facts: readonly CallFacts[],
  call: string,
  list: readonly Expression[],
  place: Place,
  node: object,
): readonly Value[] {
  const values = list.map((argument) => evaluate(machine, argument));
  for (const fact of facts) {
    if (fact.pin === undefined) continue;
    const expression = list[fact.pin];
    // While a call is being typed its pin is still missing: it may be any.
    if (expression === undefined) {
      machine.damaged = true;
      continue;
    }
    const given = values[fact.pin] ?? missing;
    const pin = pinOf(machine, fact, given, expression);
    const valueExpression = fact.value === undefined ? undefined : list[fact.value];
    const value = fact.value === undefined ? undefined : values[fact.value];
    if (machine.use(node, fact, pin, value)) {
      machine.describe({
        call,
        span: pinSpan(machine, fact, expression),
        callSpan: spanAt(machine.site, place),
        valueSpan: valueExpression === undefined ? undefined : spanAt(machine.site, valueExpression),
      });
    }
    const handler = fact.handler === undefined ? undefined : values[fact.handler];
    if (handler?.kind === 'function') {
      machine.addHandlers(handler);
      for (const callable of handler.options) forgetChanged(machine, callable);
    }
  }
  return values;
}

/** The argument as written; of `digitalPinToInterrupt(2)`, the pin inside. */
function pinSpan(machine: Machine, fact: CallFacts, expression: Expression) {
  let at = expression;
  let { site } = machine;
  if (at.kind === 'name') {
    const argument = argumentAt(machine, at.name);
    if (argument !== undefined) {
      at = argument.expression;
      site = argument.site;
    }
  }
  if (fact.pinIsInterruptLine === true && at.kind === 'call' && at.callee.kind === 'name') {
    const [inner] = at.arguments;
    if (at.callee.name === 'digitalPinToInterrupt' && inner !== undefined) return spanAt(site, inner);
  }
  return spanAt(site, at);
}

/** The pin that an argument means to this call: some count interrupt lines or analogue inputs. */
function pinOf(machine: Machine, fact: CallFacts, given: Value, expression: Expression): Value {
  if (fact.pinIsInterruptLine === true) return pinOfLine(machine, given, expression);
  if (fact.action !== 'analog-read' || given.kind !== 'known') return given;
  const { analogNumbers } = machine.platform;
  const values = given.values.map((one) => analogNumbers[one] ?? one);
  if (values.every((one, index) => one === given.values[index])) return given;
  const pins = knownSet(values, given.type, given.origins, given.direct);
  return pins.kind === 'known' ? { ...pins, renumbered: true } : pins;
}

function pinOfLine(machine: Machine, line: Value, expression: Expression): Value {
  if ((line.kind === 'known' || line.kind === 'unknown') && line.pin !== undefined) return line.pin;
  if (line.kind !== 'known') return line;
  const { interruptPins } = machine.platform;
  const pins = line.values.map((one) => interruptPins[one]).filter((pin) => pin !== undefined);
  if (pins.length === 0) {
    return unknown(
      `the board has no interrupt line ${line.values.join(' or ')}`,
      spanAt(machine.site, expression),
    );
  }
  return knownSet(pins, line.type, line.origins, 0);
}
