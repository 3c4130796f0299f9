/**
 * Which hole of which header an end is soldered into. A pin with several holes gets the first free one where the
 * manifest names none: the same build always gives the same holes, and words to count along by.
 */
import type { Board, BoardPin, Build, Header, Position, Wire } from '../base/build';

export interface Hole {
  readonly header: string;
  /** Counted from the landmark, the first is 1. */
  readonly index: number;
}

/** "GND, left header, 4th from the USB end". */
export function positionWords(pin: string, header: Header, index: number): string {
  return `${pin}, ${header.title}, ${ordinal(index)} from ${header.landmark}`;
}

/** 1st, 2nd, 3rd, 4th, 11th, 21st. */
export function ordinal(number: number): string {
  const tens = number % 100;
  if (tens >= 11 && tens <= 13) return `${number}th`;
  return `${number}${['th', 'st', 'nd', 'rd'][number % 10] ?? 'th'}`;
}

/** All holes of a pin in header order. */
export function holesOf(board: Board, pin: string): Hole[] {
  return board.headers.flatMap((header) =>
    header.positions.flatMap((id, place) => (id === pin ? [{ header: header.id, index: place + 1 }] : [])),
  );
}

export function makePosition(board: Board, pin: string, hole: Hole, declared: boolean): Position | undefined {
  const header = board.headers.find((one) => one.id === hole.header);
  return header && { ...hole, declared, words: positionWords(pin, header, hole.index) };
}

/** An end of a wire at a pin, before its hole is known. One object may be an end of two wires: then both share it. */
export interface PinPlace {
  readonly pin: string;
  readonly declared?: Hole;
}

/** Gives every place its hole: the declared ones first, then the others in the order given. */
export function assignPositions(
  board: Board,
  places: readonly PinPlace[],
): Map<PinPlace, Position | undefined> {
  const taken = new Set<string>();
  const positions = new Map<PinPlace, Position | undefined>();
  for (const place of places) {
    if (place.declared === undefined) continue;
    taken.add(holeKey(place.declared));
    positions.set(place, makePosition(board, place.pin, place.declared, true));
  }
  const holesByPin = new Map<string, readonly Hole[]>();
  for (const place of places) {
    if (positions.has(place)) continue;
    const holes = holesByPin.get(place.pin) ?? holesOf(board, place.pin);
    holesByPin.set(place.pin, holes);
    const hole = chooseHole(holes, taken);
    if (hole !== undefined) taken.add(holeKey(hole));
    positions.set(place, hole && makePosition(board, place.pin, hole, false));
  }
  return positions;
}

/** Where a pin has a single hole every wire goes there, free or not: a rule tells it when that is one too many. */
function chooseHole(holes: readonly Hole[], taken: ReadonlySet<string>): Hole | undefined {
  return holes.length === 1 ? holes[0] : holes.find((hole) => !taken.has(holeKey(hole)));
}

function holeKey(hole: Hole): string {
  return `${hole.header}.${hole.index}`;
}

function takenHoles(wires: readonly Wire[]): Set<string> {
  const ends = wires.flatMap((wire) => wire.ends);
  return new Set(ends.flatMap((end) => (end.kind === 'pin' && end.position ? [holeKey(end.position)] : [])));
}

/** The first hole of a pin that no wire sits in, undefined where none is free. */
export function freePosition(build: Build, pin: string): Position | undefined {
  const taken = takenHoles(build.wires);
  const hole = holesOf(build.board, pin).find((one) => !taken.has(holeKey(one)));
  return hole && makePosition(build.board, pin, hole, false);
}

/** The pins a sketch can use that no wire hangs on, in the order of the board. */
export function freePins(build: Build): BoardPin[] {
  const wired = new Set(build.nets.flatMap((net) => net.pins));
  return build.board.pins.filter(
    (pin) => (pin.type === 'io' || pin.type === 'analog-input') && !wired.has(pin.id),
  );
}
