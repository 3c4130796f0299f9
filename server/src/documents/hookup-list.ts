/**
 * The hookup list: one row a wire, in an order that suits the hand. Rails come first, since everything else hangs on
 * them; then the signals in the order of the headers; then what goes from part to part.
 */
import type { Build, End, Wire } from '../base/build';
import { formatQuantity } from '../base/quantity';

/** One wire as somebody solders it. */
export interface HookupRow {
  readonly from: string;
  readonly to: string;
  readonly colour: string;
  /** "20 cm", or empty where the manifest does not say. */
  readonly length: string;
  /** Which way round matters at an end. */
  readonly watch: string;
}

/** Rows in soldering order. */
export function listHookup(build: Build): readonly HookupRow[] {
  const rank = rankOf(build);
  return [...build.wires]
    .map((wire, index) => ({ wire, index, rank: rank(wire) }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ wire }) => rowOf(build, wire));
}

function rowOf(build: Build, wire: Wire): HookupRow {
  const [from, to] = boardFirst(wire);
  const watch = [from, to].flatMap((end) => polarityOf(build, end));
  return {
    from: endWords(from),
    to: endWords(to),
    colour: wire.colour ?? '',
    length: wire.length === undefined ? '' : formatQuantity(wire.length, 'm'),
    watch: watch.join('; '),
  };
}

/** The board's end first, so that a finger finds every row from the header. */
function boardFirst(wire: Wire): readonly [End, End] {
  const [a, b] = wire.ends;
  return a.kind !== 'pin' && b.kind === 'pin' ? [b, a] : [a, b];
}

function endWords(end: End): string {
  if (end.kind === 'terminal') return `${end.part}.${end.terminal}`;
  return end.position ? end.position.words : `${end.pin} (no free position)`;
}

function polarityOf(build: Build, end: End): string[] {
  if (end.kind !== 'terminal') return [];
  const part = build.parts.find((candidate) => candidate.id === end.part);
  const terminal = part?.terminals.find((candidate) => candidate.id === end.terminal);
  if (!terminal?.polarity) return [];
  return [`${end.part}.${end.terminal}${terminal.tell === undefined ? '' : `: ${terminal.tell}`}`];
}

/** Ground, supplies, signals by header position, the rest. */
function rankOf(build: Build): (wire: Wire) => number {
  const pins = new Map(build.board.pins.map((pin) => [pin.id, pin]));
  const order = new Map(build.board.headers.map((header, index) => [header.id, index]));
  return (wire) => {
    const ranks = wire.ends.flatMap((end) => {
      if (end.kind !== 'pin') return [];
      const type = pins.get(end.pin)?.type;
      if (type === 'ground') return [0];
      if (type === 'supply') return [1];
      const header = order.get(end.position?.header ?? '') ?? 9;
      return [10 + header * 100 + (end.position?.index ?? 99)];
    });
    return ranks.length > 0 ? Math.min(...ranks) : 10_000;
  };
}

/** The list as Markdown, with a box to tick. Ends with a line feed; the same build gives the same bytes. */
export function writeHookup(build: Build): string {
  const rows = listHookup(build);
  const title = [build.title, build.revision && `revision ${build.revision}`].filter(Boolean).join(', ');
  const lines = [
    `# Hookup list${title ? `: ${cell(title)}` : ''}`,
    '',
    `Board: ${cell(build.board.title)}. Switch every supply off and take batteries out before soldering.`,
    '',
    '| done | from | to | colour | length | mind |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows.map((row) => {
      const cells = [row.from, row.to, row.colour, row.length, row.watch].map(cell);
      return `| ☐ | ${cells.join(' | ')} |`;
    }),
    '',
    `${rows.length} wires.`,
  ];
  return `${lines.join('\n')}\n`;
}

/** Text that neither breaks the table nor becomes markup. */
function cell(text: string): string {
  return text
    .replace(/[\r\n]+/g, ' ')
    .replace(/[\\`*_[\]<>|~]/g, (sign) => (sign === '<' ? '&lt;' : sign === '>' ? '&gt;' : `\\${sign}`));
}
