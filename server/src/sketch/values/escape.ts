/** Values handed to calls that are not followed: what they point to may change, and functions may be called back. */
import type { Expression } from '../form/ast';
import { cellsOf } from './arrays';
import type { Machine } from './machine';
import { spanAt } from './model';
import { placeCells } from './places';
import { type Cell, unknownOf, type Value } from './value';

/** Calls that change a plain variable given to them, by the index of that argument. */
const changes: Readonly<Record<string, number>> = { get: 1 };

/** Calls that fill what they are given. */
const filling = /^(get|read\w*|memcpy\w*|memset\w*|receive\w*|eeprom_read_block)$/;

export function escape_(
  machine: Machine,
  name: string,
  index: number,
  value: Value,
  expression: Expression,
): void {
  const reason = `\`${name}\` may change it`;
  // What goes as bare bytes, or is filled by its name, changes inside too.
  const isWhole = expression.kind === 'cast' || filling.test(name);
  const forget = (cells: readonly Cell[], depth = 0) => {
    machine.spend(cells.length);
    for (const cell of cells) {
      const { value: held } = cell;
      if (isWhole && depth < 4 && held.kind === 'object') forget([...held.fields.values()], depth + 1);
      else if (isWhole && depth < 4 && held.kind === 'array') forget(cellsOf(held), depth + 1);
      else if (isPlain(held))
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
