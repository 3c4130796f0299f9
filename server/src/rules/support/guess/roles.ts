/** Pins served by hand that are one part: their names have one stem and the roles of its terminals. */
import type { Evidence } from './evidence';
import { rolesByHand, wordsOf } from './words';

/** Puts pieces together whose names are one stem and the roles of one part. */
export function byRoles(single: readonly Evidence[]): Evidence[] {
  const left = new Set(single);
  const joined: Evidence[] = keypad([...left]).flatMap(({ piece, of }) => {
    for (const each of of) left.delete(each);
    return [piece];
  });
  for (const { kind, needs, terminals } of rolesByHand) {
    const stems = new Map<string, Map<string, Evidence>>();
    for (const piece of left) {
      const match = roleOf(piece, terminals, kind);
      if (match === undefined) continue;
      const stem = stems.get(match.stem) ?? new Map<string, Evidence>();
      if (!stem.has(match.terminal)) stem.set(match.terminal, piece);
      stems.set(match.stem, stem);
    }
    for (const [stem, found] of stems) {
      if (!needs.every((terminal) => found.has(terminal))) continue;
      const pieces = [...found].map(([terminal, piece]) => ({ terminal, piece }));
      for (const { piece } of pieces) left.delete(piece);
      const [first] = pieces;
      if (!first) continue;
      joined.push({
        ...first.piece,
        name: stem === '' ? (shortName[kind] ?? kind) : stem,
        pins: pieces.flatMap(({ terminal, piece }) => piece.pins.map(({ pin }) => ({ pin, terminal }))),
        calls: [...new Set(pieces.flatMap(({ piece }) => piece.calls))],
        fixed: {
          kind,
          parameters: undefined,
          why: `the names ${pieces.map(({ piece }) => piece.name).join(', ')}`,
        },
      });
    }
  }
  return [...joined, ...left];
}

const shortName: Readonly<Record<string, string>> = {
  'ultrasonic-ranger': 'ranger',
  'shift-register': 'register',
  'rgb-led': 'rgb',
  'h-bridge': 'bridge',
};

/** Directions in which the terminals of the parts by roles are used, where a wrong one would say it is not that part. */
const readTerminals: ReadonlySet<string> = new Set(['echo', 'a', 'b', 'x', 'y', 'switch']);

function roleOf(piece: Evidence, terminals: Readonly<Record<string, readonly string[]>>, kind: string) {
  const words = wordsOf(piece.name.replace(/([A-Za-z])(\d)$/, '$1$2'));
  const whole = piece.name
    .toLowerCase()
    .replace(/_?pins?$|^pin_?/g, '')
    .split(/[_\s]/);
  for (const [terminal, marks] of Object.entries(terminals)) {
    const reads = piece.way === 'in' || piece.way === 'analog';
    if (readTerminals.has(terminal) !== reads) continue;
    if (kind === 'joystick' && terminal !== 'switch' && piece.way !== 'analog') continue;
    if (kind === 'rotary-encoder' && piece.way !== 'in') continue;
    const mark = marks.find((each) => words.includes(each) || whole.includes(each));
    if (mark === undefined) continue;
    const stem = words.filter((word) => word !== mark && !mark.startsWith(word)).join('-');
    return { terminal, stem };
  }
  return undefined;
}

/** Four rows and three or four columns, one side driven and the other read: a matrix of keys. */
function keypad(
  single: readonly Evidence[],
): readonly { readonly piece: Evidence; readonly of: readonly Evidence[] }[] {
  const named = (words: readonly string[]) =>
    single.filter((piece) => wordsOf(piece.name).some((word) => words.includes(word)));
  const rows = named(['row', 'rows']);
  const columns = named(['col', 'cols', 'column', 'columns']);
  const [row] = rows;
  const [column] = columns;
  const sized = rows.length === 4 && (columns.length === 3 || columns.length === 4);
  if (!sized || !row || !column || (row.way === 'out') === (column.way === 'out')) return [];
  const ends = (pieces: readonly Evidence[], side: string) =>
    pieces.flatMap(({ pins }, index) => pins.map(({ pin }) => ({ pin, terminal: `${side}-${index + 1}` })));
  const fixed = {
    kind: 'keypad-matrix',
    parameters: { size: `4x${columns.length}` },
    why: `the names ${row.name} and ${column.name}`,
  };
  const piece = { ...row, name: 'keypad', pins: [...ends(rows, 'row'), ...ends(columns, 'column')], fixed };
  return [{ piece, of: [...rows, ...columns] }];
}
