/** Rows of the test sheet that the change touches: those that the old sheet did not hold, with renames seen through. */
import type { BuildChanges } from './compare-builds';
import type { Rename } from './match-parts';
import { type Block, type PaperInput, tableOf } from './paper';
import { continuityRows, partRows, shortRows, type TestRow } from './power-off-tests';
import { type FigureRow, listFigures } from './power-on-tests';
import { switchRows } from './switch-tests';
import { offTable, onTable } from './tests-paper';

/** Tables of the rows to test again; none where every old measurement still stands. */
export function changedTests(before: PaperInput, after: PaperInput, changes: BuildChanges): readonly Block[] {
  const renamed = renamer(changes.renames);
  const touched = touchedBy(changes);
  const off = (list: (input: PaperInput) => readonly TestRow[]) => {
    const known = new Set(list(before).map((row) => renamed(offKey(row))));
    return list(after).filter((row) => !known.has(offKey(row)) || row.about.some((id) => touched.has(id)));
  };
  const conductors = off(({ build }) => continuityRows(build));
  const resistances = [...off(shortRows), ...off(partRows)];
  const known = new Set(listFigures(before).flatMap(({ rows }) => rows.map((row) => renamed(onKey(row)))));
  const figures = listFigures(after).flatMap(({ rows }) => rows.filter((row) => !known.has(onKey(row))));
  const old = new Set(
    switchRows(before).map((row) => renamed(JSON.stringify([row.part, row.act, row.expect]))),
  );
  const switches = switchRows(after).filter(
    ({ part, act, expect }) => !old.has(JSON.stringify([part, act, expect])),
  );
  return [
    ...titled('Power off: conductors', offTable(conductors, 'from')),
    ...titled('Power off: resistances', offTable(resistances, 'between')),
    ...titled('Power on', onTable(figures)),
    ...titled(
      'Buttons and switches',
      tableOf(
        ['part', 'do', 'what must happen'],
        switches.map(({ part, act, expect }) => [part, act, expect]),
        true,
      ),
    ),
  ];
}

/** Ids of wires and parts that an iron came near: what holds them is measured again though it should read the same. */
function touchedBy({ changed, come, wires }: BuildChanges): ReadonlySet<string> {
  const exchanged = changed.filter(({ figures }) => figures.length > 0).map(({ after }) => after);
  const moved = [...wires.moved, ...wires.replaced].map(({ after }) => after);
  return new Set([...exchanged, ...come, ...moved, ...wires.come].map(({ id }) => id));
}

function titled(title: string, blocks: readonly Block[]): readonly Block[] {
  return blocks.length === 0 ? [] : [{ kind: 'heading', text: title }, ...blocks];
}

function offKey({ between, expect }: TestRow): string {
  return JSON.stringify([between, expect]);
}

function onKey({ state, measure, expect }: FigureRow): string {
  return JSON.stringify([state, measure, expect]);
}

/** Puts new names for old ones where they stand as whole names: alone, or in front of a terminal. */
function renamer(renames: readonly Rename[]): (text: string) => string {
  if (renames.length === 0) return (text) => text;
  const names = new Map(renames.map(({ from, to }) => [from, to]));
  const any = renames
    .map(({ from }) => from.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&'))
    .sort((a, b) => b.length - a.length)
    .join('|');
  const whole = new RegExp(`(?<![\\p{L}\\p{N}_.-])(?:${any})(?![\\p{L}\\p{N}_-])`, 'gu');
  return (text) => text.replace(whole, (name) => names.get(name) ?? name);
}
