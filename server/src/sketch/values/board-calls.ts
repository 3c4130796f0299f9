/** Calls that do something to pins, as the library data describes them. */
import type { CallFacts } from '../../base/platform';
import type { Span } from '../../base/span';
import type { Expression, Place } from '../form/ast';
import { type FactCall, type Given, givenPins, keepPins } from './board-pins';
import { escape_ } from './escape';
import { evaluate } from './expressions';
import { forgetChanged } from './interrupts';
import type { Machine } from './machine';
import { argumentAt } from './macro-uses';
import { spanAt } from './model';
import { asNumber } from './operator-calls';
import { changeByCall } from './pin-states';
import type { Value } from './value';

/** Evaluates the arguments and meets each use that the call makes. Gives the values of the arguments. */
export function meetFacts(machine: Machine, facts: readonly CallFacts[], call: FactCall): readonly Value[] {
  const { list } = call;
  const values =
    call.values ?? list.map((argument) => asNumber(machine, evaluate(machine, argument), argument));
  // Indices of arguments as bits; nothing that is described has more than 32.
  let taken = 0;
  const dot = call.call.lastIndexOf('.');
  const bare = dot === -1 ? call.call : call.call.slice(dot + 1);
  for (const fact of facts) {
    const { arguments: count, pin, value, handler } = fact;
    taken |= bitOf(pin) | bitOf(value) | bitOf(handler);
    if (list.length < (count?.min ?? 0) || list.length > (count?.max ?? list.length)) continue;
    for (const given of givenPins(machine, fact, call, values)) meetGiven(machine, fact, call, values, given);
    const run = handler === undefined ? undefined : values[handler];
    if (run?.kind === 'function') {
      machine.addHandlers(run);
      for (const callable of run.options) forgetChanged(machine, callable);
    }
  }
  for (let index = 0; index < values.length; index += 1) {
    const value = values[index];
    const expression = list[index];
    if ((taken & bitOf(index)) === 0 && value !== undefined && expression !== undefined)
      escape_(machine, bare, index, value, expression);
  }
  return values;
}

function bitOf(index: number | undefined): number {
  return index === undefined ? 0 : 1 << index;
}

function meetGiven(
  machine: Machine,
  fact: CallFacts,
  call: FactCall,
  values: readonly Value[],
  given: Given,
): void {
  const { pins, expression, terminal } = given;
  const valueExpression = fact.value === undefined ? undefined : call.list[fact.value];
  const value = fact.value === undefined ? undefined : values[fact.value];
  // A list of pins is one use for each argument; all other pins of a fact are one use.
  const node = fact.pinsFrom === undefined ? call.node : (expression ?? call.node);
  for (const pin of pins.length === 0 ? [undefined] : pins) {
    if (pin !== undefined) changeByCall(machine, fact, pin, value);
    if (!machine.use(node, fact, pin, value)) continue;
    machine.describe({
      call: call.call,
      span: expression === undefined ? spanIn(machine, call.name) : pinSpan(machine, fact, expression),
      callSpan: spanIn(machine, call.place),
      valueSpan: valueExpression === undefined ? undefined : spanAt(machine.site, valueExpression),
      ...(terminal === undefined ? {} : { terminal }),
    });
  }
  if (fact.pinsOf === undefined) keepPins(machine, fact, call, pins);
}

function spanIn(machine: Machine, place: Place | Span): Span {
  return 'file' in place ? place : spanAt(machine.site, place);
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
