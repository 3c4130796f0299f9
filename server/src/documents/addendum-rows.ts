/**
 * What the hand does from one revision to the next, as rows of text: enough to make the new hookup list out of the old
 * one with nothing else at hand.
 */
import type { Build, End, Wire } from '../base/build';
import { formatQuantity } from '../base/quantity';
import type { BuildChanges, Difference } from './compare-builds';
import { boardFirst, endWords, gaugeOf, gaugeWords, stripOf } from './words';

export interface WireRow {
  readonly from: string;
  readonly to: string;
  readonly colour: string;
  readonly gauge: string;
  readonly length: string;
  readonly strip: string;
  readonly note: string;
}

/** One wire that gets other ends. Ends are named as they are called once renamed. */
export interface MoveRow {
  /** The wire as it is found. */
  readonly was: WireRow;
  /** The wire as it is to be. */
  readonly is: WireRow;
  /** "unsolder it at A0, solder it to A1". */
  readonly how: string;
}

export interface AddendumRows {
  readonly takeAway: readonly WireRow[];
  readonly move: readonly MoveRow[];
  readonly replace: readonly MoveRow[];
  readonly reword: readonly MoveRow[];
  readonly add: readonly WireRow[];
}

export function wireRow(build: Build, wire: Wire, rename: (id: string) => string = (id) => id): WireRow {
  const [from, to] = boardFirst(wire).map((end) => endWords(renamed(end, rename)));
  const gauge = gaugeOf(build, wire);
  return {
    from: from ?? '',
    to: to ?? '',
    colour: wire.colour ?? '',
    gauge: gauge ? gaugeWords(gauge) : '',
    length: wire.length === undefined ? '' : formatQuantity(wire.length, 'm', 6),
    strip: formatQuantity(stripOf(build, wire), 'm', 6),
    note: wire.note ?? '',
  };
}

function renamed(end: End, rename: (id: string) => string): End {
  return end.kind === 'terminal' ? { ...end, part: rename(end.part) } : end;
}

export function addendumRows(before: Build, after: Build, changes: BuildChanges): AddendumRows {
  const names = new Map(changes.renames.map(({ from, to }) => [from, to]));
  const rename = (id: string) => names.get(id) ?? id;
  const was = (wire: Wire) => wireRow(before, wire, rename);
  const is = (wire: Wire) => wireRow(after, wire);
  const pair = (change: { readonly before: Wire; readonly after: Wire }): MoveRow => {
    const [old, fresh] = [was(change.before), is(change.after)];
    return { was: old, is: fresh, how: howWords(old, fresh) };
  };
  const { wires } = changes;
  return {
    takeAway: wires.gone.map(was),
    move: wires.moved.map(pair),
    replace: wires.replaced.map(pair),
    reword: wires.reworded.map(pair),
    add: wires.come.map(is),
  };
}

/** What differs, end for end and figure for figure. */
function howWords(was: WireRow, is: WireRow): string {
  const left = [was.from, was.to].filter((end) => ![is.from, is.to].includes(end));
  const reached = [is.from, is.to].filter((end) => ![was.from, was.to].includes(end));
  const moves = left.map((end, index) => `unsolder it at ${end}, solder it to ${reached[index] ?? ''}`);
  const figures = (['colour', 'gauge', 'length', 'strip', 'note'] as const)
    .filter((key) => was[key] !== is[key])
    .map((key) => `${key} ${changeWords({ key, was: was[key], is: is[key] })}`);
  return [...moves, ...figures].join('; ');
}

/** "470 instead of 330", "none any more", "470". */
export function changeWords({ was, is }: Difference): string {
  if (is === '') return `no longer ${was}`;
  return was === '' ? is : `${is} instead of ${was}`;
}
