/** Values handed to calls that are not followed: what they point to may change, and functions may be called back. */
import type { Expression } from '../form/ast';
import { cellsOf } from './arrays';
import type { Machine } from './machine';
import { spanAt } from './model';
import { placeCells } from './places';
import { type Cell, unknownOf, type Value } from './value';

/** Calls that change a plain variable given to them, by the index of that argument. */
const changes: Readonly<Record<string, number>> = { get: 1 };

export function escape_(
  machine: Machine,
  name: string,
  index: number,
  value: Value,
  expression: Expression,
): void {
  const reason = `\`${name}\` may change it`;
  const forget = (cells: readonly Cell[]) => {
    machine.spend(cells.length);
    for (const cell of cells) {
      if (isPlain(cell.value))
        machine.state.write(cell, unknownOf(cell.type, reason, spanAt(machine.site, expression)));
    }
  };
  if (value.kind === 'function') machine.addHandlers(value);
  else if (value.kind === 'pointer') forget(value.cells);
  else if (value.kind === 'array' && !isConstant(value)) forget(cellsOf(value));
  else if (changes[name] === index) forget(placeCells(machine, expression) ?? []);
}

function isPlain(value: Value): boolean {
  return value.kind === 'known' || value.kind === 'unknown';
}

/** A table of plain numbers that nothing wrote so far is taken for a constant one: printing it must not lose it. */
function isConstant(value: Extract<Value, { kind: 'array' }>): boolean {
  return value.cells === undefined && value.packed !== undefined;
}
