/** What sketches do to pins, for programs and for a person at a terminal. */

import type { ArgumentCounts, SketchUses, UseRow, UsesResult } from '../uses';
import { harmless } from './excerpt';

/** A column of the text is not made wider than this for one long entry. */
const WIDEST_COLUMN = 44;

/** One JSON object and a line end. The shape is a promise: keys are added, none changes its meaning. */
export function printUsesJson(result: UsesResult): string {
  const { sketches, problems } = result;
  const output = {
    uses: sketches.flatMap(({ name, rows }) => rows.map((row) => ({ sketch: name, ...row }))),
    stats: {
      sketches: sketches.length,
      files: sum(sketches, (sketch) => sketch.files),
      calls: sum(sketches, (sketch) => sketch.calls),
      arguments: sumArguments(sketches),
      limits: sketches.flatMap(({ name, limits }) => limits.map((limit) => ({ sketch: name, ...limit }))),
      boards: sketches.map(({ name, board, by }) => ({ sketch: name, board: board.id, by })),
      problems: problems.map(({ path, why }) => ({ path, why })),
    },
  };
  return `${JSON.stringify(output, undefined, 2)}\n`;
}

/** Sketch by sketch, pin by pin, one line a use; the counts last. */
export function printUsesText(result: UsesResult): string {
  const { sketches } = result;
  const blocks = sketches.map((sketch) => printSketch(sketch).map(harmless).join('\n'));
  if (sketches.length !== 1) {
    const total = `${count(sketches.length, 'sketch', 'sketches')}: ${countsOf(
      sum(sketches, (sketch) => sketch.calls),
      sumArguments(sketches),
    )}`;
    blocks.push(total);
  }
  return `${blocks.join('\n\n')}\n`;
}

function printSketch(sketch: SketchUses): readonly string[] {
  const { name, folder, board, rows, limits } = sketch;
  const chosen = {
    asked: '',
    manifest: ', from its manifest',
    assumed: ', assumed: neither a manifest nor --board names one',
  }[sketch.by];
  const lines = [`${name}: ${count(sketch.files, 'file', 'files')}, board ${board.id}${chosen}`];
  const cells = new Map(rows.map((row) => [row, cellsOf(row, folder)]));
  const widths = [0, 0, 0, 0];
  for (const each of cells.values()) {
    for (const [column, width] of widths.entries()) {
      widths[column] = Math.min(WIDEST_COLUMN, Math.max(width, each[column]?.length ?? 0));
    }
  }
  for (const [title, group] of groupByPin(rows, sketch.pinNames)) {
    lines.push('', title);
    for (const row of group) {
      const padded = (cells.get(row) ?? []).map((text, column) => text.padEnd(widths[column] ?? 0));
      lines.push(`  ${padded.join('  ')}`.trimEnd());
    }
  }
  if (limits.length > 0) {
    lines.push('', 'not followed to the end');
    lines.push(...limits.map((each) => `  ${within(each.file, folder)}:${each.line}  ${each.message}`));
  }
  lines.push('', countsOf(sketch.calls, sketch.arguments));
  return lines;
}

/** Place, way to it, call, value, and what else there is to say. */
function cellsOf(row: UseRow, folder: string): readonly string[] {
  const entry = row.function === '' ? 'globals' : row.phase;
  const steps = row.path.map((step) => step.function);
  const way = steps.length === 0 && row.function !== '' && row.function !== entry ? [row.function] : steps;
  const value =
    row.action === 'mode' && row.modes !== undefined && row.modes.length > 0
      ? row.modes.join(' or ')
      : (row.value?.join(' or ') ?? (row.valueReason === undefined ? '' : '?'));
  // The title says the number already.
  const how = row.pins?.length === 1 ? row.how?.replace(`${row.pins[0]}, `, '') : row.how;
  const said = [
    row.certain ? '' : 'perhaps',
    row.reason ?? how ?? '',
    row.valueReason === undefined ? '' : `value: ${row.valueReason}`,
  ];
  return [
    `${within(row.file, folder)}:${row.line}:${row.column}`,
    [entry, ...way].join(' > '),
    row.call,
    value,
    said.filter((text) => text !== '').join('; '),
  ];
}

/** A file as it is called inside its sketch. */
function within(file: string, folder: string): string {
  return file.startsWith(`${folder}/`) ? file.slice(folder.length + 1) : file;
}

/** Titles with their rows: each pin, then sets of pins, then the chip alone, then what is not known. */
function groupByPin(
  rows: readonly UseRow[],
  names: ReadonlyMap<number, string>,
): readonly (readonly [string, readonly UseRow[]])[] {
  const groups = new Map<string, { readonly pins: readonly number[] | null; readonly rows: UseRow[] }>();
  for (const row of rows) {
    const key = row.pins === null ? '?' : row.pins.join(' ');
    const group = groups.get(key) ?? { pins: row.pins, rows: [] };
    group.rows.push(row);
    groups.set(key, group);
  }
  const rank = (pins: readonly number[] | null) =>
    pins === null ? 3 : pins.length === 0 ? 2 : pins.length === 1 ? 0 : 1;
  const ordered = [...groups.values()].sort(
    (a, b) => rank(a.pins) - rank(b.pins) || comparePins(a.pins ?? [], b.pins ?? []),
  );
  return ordered.map((group) => [titleOf(group.pins, names), group.rows]);
}

function titleOf(pins: readonly number[] | null, names: ReadonlyMap<number, string>): string {
  if (pins === null) {
    return 'pin not known';
  }
  if (pins.length === 0) {
    return 'no pin';
  }
  const named = pins.map((pin) => {
    const name = names.get(pin);
    return name === undefined ? `${pin} (not on this board)` : `${pin} (${name})`;
  });
  return `${pins.length === 1 ? 'pin' : 'pins'} ${named.join(', ')}`;
}

function comparePins(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((pin, index) => pin !== b[index]);
  return at === -1 ? a.length - b.length : (a[at] ?? 0) - (b[at] ?? Number.POSITIVE_INFINITY);
}

function countsOf(calls: number, { exact, set, unresolved }: ArgumentCounts): string {
  const all = count(exact + set + unresolved, 'pin argument', 'pin arguments');
  return `${count(calls, 'call', 'calls')}, ${all}: ${exact} exact, ${set} as a set, ${unresolved} unresolved`;
}

function count(amount: number, one: string, many: string): string {
  return `${amount} ${amount === 1 ? one : many}`;
}

function sum(sketches: readonly SketchUses[], of: (sketch: SketchUses) => number): number {
  return sketches.reduce((total, sketch) => total + of(sketch), 0);
}

function sumArguments(sketches: readonly SketchUses[]): ArgumentCounts {
  return {
    exact: sum(sketches, (sketch) => sketch.arguments.exact),
    set: sum(sketches, (sketch) => sketch.arguments.set),
    unresolved: sum(sketches, (sketch) => sketch.arguments.unresolved),
  };
}
