/** Which pins a call means, as the library data describes it: arguments, arrays, roles of the board, earlier calls. */
import type { CallFacts } from '../../base/platform';
import type { Span } from '../../base/span';
import type { Expression, Place, TypeName } from '../form/ast';
import { cellsOf, entryCells } from './arrays';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { spanAt } from './model';
import { readCell } from './names';
import { templateExpression } from './templates';
import { known, knownSet, type ObjectValue, unknown, type Value } from './value';

/** A call as the facts meet it. */
export interface FactCall {
  /** Its name as written. */
  readonly call: string;
  readonly list: readonly Expression[];
  readonly place: Place | Span;
  /** What a use without a pin argument points at: the name of the call. */
  readonly name: Place | Span;
  readonly node: object;
  /** Arguments in angle brackets. */
  readonly templates?: TypeName['arguments'];
  /** The object, where it is a method or a constructor. */
  readonly self?: ObjectValue;
  /** Names by which later calls speak of the pins given here, where it is not the fact's own. */
  readonly keys?: readonly string[];
  /** Values of the arguments, where they are known already. */
  readonly values?: readonly Value[];
}

/** Pins of one use. */
export interface Given {
  /** None: the use names no pin. Several: every one of them is touched. */
  readonly pins: readonly Value[];
  /** The argument that names the pin. */
  readonly expression?: Expression;
  /** Terminal of a part that it is meant for. */
  readonly terminal?: string;
}

/** The uses that one fact makes of one call; none where it takes no pin here. */
export function givenPins(
  machine: Machine,
  fact: CallFacts,
  call: FactCall,
  values: readonly Value[],
): readonly Given[] {
  const { list } = call;
  if (fact.pinsFrom !== undefined) {
    const found: Given[] = [];
    for (let at = fact.pinsFrom; at < list.length; at += 1) {
      const value = withoutNone(fact, values[at]);
      const expression = list[at];
      if (value === undefined || expression === undefined || !isNumber(value, expression)) continue;
      const terminal = fact.terminals?.[at - fact.pinsFrom];
      found.push({ pins: [value], expression, ...(terminal === undefined ? {} : { terminal }) });
    }
    return found;
  }
  if (fact.templatePin !== undefined) {
    const argument = templateExpression(call.templates?.[fact.templatePin]);
    if (argument === undefined) return [];
    return [{ pins: [evaluate(machine, argument)], expression: argument }];
  }
  if (fact.pin !== undefined) return argumentPins(machine, fact, call, values);
  if (fact.roles !== undefined) return [{ pins: pinsOfRoles(machine, fact.roles) }];
  if (fact.pinsOf !== undefined) return [{ pins: earlierPins(machine, fact.pinsOf, call.self) }];
  return [{ pins: [] }];
}

function argumentPins(
  machine: Machine,
  fact: CallFacts,
  call: FactCall,
  values: readonly Value[],
): readonly Given[] {
  const at = fact.pin ?? 0;
  const expression = call.list[at];
  if (expression === undefined) {
    // While a call is being typed its pin is still missing: it may be any.
    const mayBeLeftOut = fact.noPin !== undefined || (call.keys !== undefined && call.list.length === 0);
    if (!mayBeLeftOut) machine.damaged = true;
    return [];
  }
  const given = values[at] ?? unknown('the argument is missing');
  if (fact.pinIsArray === true) {
    const pins = entriesOf(given)
      .map((one) => withoutNone(fact, one))
      .filter((one) => one !== undefined);
    if (pins.length > 0) return [{ pins, expression }];
    const reason = given.kind === 'unknown' ? given.reason : 'the array is not known';
    return [{ pins: [unknown(reason, spanAt(machine.site, expression))], expression }];
  }
  const value = withoutNone(fact, pinOf(machine, fact, given, expression));
  const [terminal] = fact.terminals ?? [];
  return value === undefined
    ? []
    : [{ pins: [value], expression, ...(terminal === undefined ? {} : { terminal }) }];
}

/** Every entry of an array, from where a pointer points. */
function entriesOf(value: Value): readonly Value[] {
  if (value.kind === 'array') {
    return value.packed !== undefined && value.cells === undefined
      ? entryCells(value, unknown('any')).map(readCell)
      : cellsOf(value).map(readCell);
  }
  if (value.kind !== 'pointer') return [];
  const { array, index, cells } = value;
  return (array === undefined ? cells : cellsOf(array).slice(index ?? 0)).map(readCell);
}

/** The pin without the number that stands for no pin; undefined where nothing is left. */
function withoutNone(fact: CallFacts, value: Value | undefined): Value | undefined {
  const { noPin } = fact;
  if (value?.kind !== 'known' || noPin === undefined) return value;
  const isNone = (one: number) => one === noPin || (noPin === -1 && minusOnes.has(one));
  const values = value.values.filter((one) => !isNone(one));
  if (values.length === value.values.length) return value;
  return values.length === 0 ? undefined : knownSet(values, value.type, value.origins, value.direct);
}

/** -1 in types without a sign. */
const minusOnes = new Set([0xff, 0xffff, 0xffffffff]);

/** Texts and truth values behind the pins of a list are no pins. */
function isNumber(value: Value, expression: Expression): boolean {
  if (expression.kind === 'text') return false;
  return value.kind === 'known' ? !value.type.float : value.kind === 'unknown' && value.type?.float !== true;
}

function pinsOfRoles(machine: Machine, roles: readonly string[]): readonly Value[] {
  const { platform } = machine;
  const pins = new Set<number>();
  for (const role of roles) {
    for (const [name, pin] of Object.entries(platform.roles)) {
      if (name === role || name.startsWith(`${role}.`)) pins.add(pin);
    }
  }
  return [...pins].sort((a, b) => a - b).map((pin) => known(pin, machine.types.int));
}

function earlierPins(machine: Machine, name: string, self: ObjectValue | undefined): readonly Value[] {
  return (self?.given ?? machine.given).get(name) ?? [];
}

const mostKept = 64;

/** Keeps the pins of a call for those that speak of it later. */
export function keepPins(machine: Machine, fact: CallFacts, call: FactCall, pins: readonly Value[]): void {
  if (pins.length === 0) return;
  if (call.self !== undefined) call.self.given ??= new Map();
  const table = call.self?.given ?? machine.given;
  for (const name of call.keys ?? [fact.name]) {
    const list = table.get(name) ?? [];
    const more = pins.filter((pin) => !list.some((one) => samePin(one, pin)));
    if (more.length > 0 && list.length < mostKept) table.set(name, [...list, ...more]);
  }
}

function samePin(a: Value, b: Value): boolean {
  if (a.kind !== 'known' || b.kind !== 'known') return a.kind === b.kind;
  return a.values.length === b.values.length && a.values.every((one, index) => one === b.values[index]);
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
    const reason = `the board has no interrupt line ${line.values.join(' or ')}`;
    return { ...unknown(reason, spanAt(machine.site, expression)), lines: line.values };
  }
  const found = knownSet(pins, line.type, line.origins, 0);
  return found.kind === 'known' ? { ...found, lines: line.values } : found;
}
