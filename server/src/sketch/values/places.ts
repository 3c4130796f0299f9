/** Where an expression points: the cells that it may name, so that they can be written, or bound to a reference. */
import type { Expression } from '../form/ast';
import { cellsOf, entryCells, targets } from './arrays';
import { evaluate } from './expressions';
import type { Machine } from './machine';
import { argumentAt, argumentsOf, macroSite, macrosAt } from './macro-uses';
import { bodyOf } from './macros';
import type { ClassModel } from './model';
import { variableCells } from './names';
import { lineOf } from './objects';
import {
  type ArrayValue,
  type Cell,
  newCell,
  type ObjectValue,
  type Pointer,
  single,
  type Value,
} from './value';

/** The cells of an expression that names a place; undefined for one that only has a value. */
export function placeCells(machine: Machine, expression: Expression): readonly Cell[] | undefined {
  if (!machine.enter()) return undefined;
  const cells = cellsAt(machine, expression);
  machine.leave();
  return cells;
}

function cellsAt(machine: Machine, expression: Expression): readonly Cell[] | undefined {
  switch (expression.kind) {
    case 'name': {
      const argument = argumentAt(machine, expression.name);
      if (argument !== undefined) {
        return machine.at(argument.site, machine.scope, () => placeCells(machine, argument.expression));
      }
      const [macro] = macrosAt(machine, expression.name, expression.start);
      if (macro === undefined || macro.parameters !== undefined)
        return variableCells(machine, expression.name);
      const body = bodyOf(macro).expression;
      if (body === undefined) return undefined;
      return machine.at(macroSite(machine, macro, expression), machine.scope, () =>
        placeCells(machine, body),
      );
    }
    case 'index': {
      const bases = basesOf(machine, expression.base);
      const index = evaluate(machine, expression.index);
      return bases.flatMap((base) => indexed(base, index));
    }
    case 'member': {
      const found: Cell[] = [];
      for (const object of objectsOf(machine, expression.base)) {
        const cell = object.fields.get(expression.name);
        if (cell !== undefined) found.push(cell);
        else if (object.model !== undefined)
          found.push(...staticCells(machine, object.model, expression.name));
      }
      return found.length === 0 ? undefined : found;
    }
    case 'unary': {
      if (expression.operator !== '*') return undefined;
      const value = evaluate(machine, expression.operand);
      return value.kind === 'pointer' || value.kind === 'array' ? targets(value) : undefined;
    }
    case 'cast':
      return placeCells(machine, expression.operand);
    case 'call':
      return macroCells(machine, expression);
    case 'comma':
      evaluate(machine, expression.left);
      return placeCells(machine, expression.right);
    case 'choice': {
      const yes = placeCells(machine, expression.yes);
      const no = placeCells(machine, expression.no);
      return yes === undefined || no === undefined ? undefined : [...yes, ...no];
    }
    default:
      return undefined;
  }
}

/** `_SFR_BYTE(DDRB)`: what a function-like macro with a place for its body names. */
function macroCells(
  machine: Machine,
  call: Extract<Expression, { kind: 'call' }>,
): readonly Cell[] | undefined {
  const { callee } = call;
  const macro = callee.kind === 'name' ? macrosAt(machine, callee.name, call.start)[0] : undefined;
  const body = macro?.parameters === undefined ? undefined : bodyOf(macro).expression;
  if (macro === undefined || body === undefined) return undefined;
  const inside = macroSite(machine, macro, call, argumentsOf(macro, call, machine.site));
  return machine.at(inside, machine.scope, () => placeCells(machine, body));
}

/** A static member, named through an object. */
function staticCells(machine: Machine, model: ClassModel, name: string): readonly Cell[] {
  for (const one of lineOf(machine, model)) {
    const cells = machine.globals.get(`${one.name}::${name}`);
    if (cells !== undefined) return cells;
  }
  return [];
}

/** Cells of `base[index]`; none where the index lies outside. */
export function indexed(base: ArrayValue | Pointer, index: Value): readonly Cell[] {
  if (base.kind === 'array') return entryCells(base, index);
  if (base.reach !== undefined && single(index) !== 0) return base.reach;
  if (base.array === undefined || base.index === undefined) return base.cells;
  if (index.kind !== 'known') return cellsOf(base.array);
  const from = base.index;
  return entryCells(base.array, { ...index, values: index.values.map((value) => value + from) });
}

/** The arrays and pointers that an expression may be, none joined into unknown. */
export function basesOf(machine: Machine, expression: Expression): readonly (ArrayValue | Pointer)[] {
  return possible(machine, expression).filter((value) => value.kind === 'array' || value.kind === 'pointer');
}

/** The objects that an expression may be, pointers to them followed. */
export function objectsOf(machine: Machine, expression: Expression): readonly ObjectValue[] {
  const objects: ObjectValue[] = [];
  const add = (value: Value, depth: number) => {
    if (value.kind === 'object' && !objects.includes(value)) objects.push(value);
    else if ((value.kind === 'pointer' || value.kind === 'array') && depth < 3) {
      for (const cell of targets(value)) add(cell.value, depth + 1);
    }
  };
  for (const value of possible(machine, expression)) add(value, 0);
  return objects;
}

function possible(machine: Machine, expression: Expression): readonly Value[] {
  if (expression.kind === 'name' || expression.kind === 'index' || expression.kind === 'member') {
    const cells = placeCells(machine, expression);
    if (cells !== undefined && cells.length > 0) return cells.map((cell) => cell.value);
    // Not evaluated a second time: its index may count.
    if (expression.kind !== 'name') return [];
  }
  return [evaluate(machine, expression)];
}

const selves = new WeakMap<ObjectValue, Pointer>();

/** What `this` is: a pointer, one for each object. */
export function pointerTo(object: ObjectValue): Pointer {
  let pointer = selves.get(object);
  if (pointer === undefined) {
    const cell = newCell(object);
    cell.serial = 0;
    pointer = { kind: 'pointer', cells: [cell] };
    selves.set(object, pointer);
  }
  return pointer;
}
