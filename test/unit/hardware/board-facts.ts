/**
 * Compares a board of the library with what the headers of its open core say. The facts lie in test/fixture/boards,
 * each file with the repository, path and commit of the headers it was taken from. One line a mismatch, so that a typo
 * in a board file is told by name.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Board, type BoardPin, numbersOf } from '../../../server/src/base/build';
import { root } from './library';

/** What the headers say of one pin. `pwm` is the timer and channel, or true where the header names none. */
export interface PinFacts {
  readonly number: number;
  readonly port?: string;
  readonly adc?: number;
  readonly adcUnit?: number;
  readonly pwm?: string | boolean;
  readonly interrupt?: number;
  readonly boot?: boolean;
  readonly inputOnly?: boolean;
  readonly flash?: boolean;
}

type Told = Exclude<keyof PinFacts, 'number'>;

export interface BoardFacts {
  readonly board: string;
  readonly sources: readonly { readonly repo: string; readonly path: string; readonly commit: string }[];
  /** Constants of the core by name. */
  readonly constants: Readonly<Record<string, number>>;
  /** Fields of which the headers give a full table: a pin without one must have none on the board either. */
  readonly tells?: readonly Told[];
  readonly pins?: readonly PinFacts[];
  /** What the maker's guide prints beside the positions, by the board's name of the header. */
  readonly headers?: Readonly<Record<string, readonly string[]>>;
}

export function readFacts(board: string): BoardFacts {
  return JSON.parse(readFileSync(join(root, 'test/fixture/boards', `${board}.json`), 'utf8')) as BoardFacts;
}

/** @returns One line for everything in which board and headers differ. */
export function mismatches(board: Board, facts: BoardFacts): string[] {
  return [...constantsOf(board, facts), ...pinsOf(board, facts), ...headersOf(board, facts)];
}

function constantsOf(board: Board, facts: BoardFacts): string[] {
  return Object.entries(facts.constants).flatMap(([name, value]) => {
    const known = board.platform.names[name];
    const told = known === value ? [] : [`constant ${name}: ${known}, header ${value}`];
    // A name that is printed on the board as well has to mean the same pin in the manifest.
    const printed = board.pins.find((pin) => pin.id === name || pin.names.includes(name));
    if (printed === undefined || numbersOf(printed).includes(value)) return told;
    return [...told, `name ${name}: ${printed.id} is ${numbersOf(printed).join(' and ')}, header ${value}`];
  });
}

function pinsOf(board: Board, facts: BoardFacts): string[] {
  if (facts.pins === undefined) return [];
  const rows = new Map(facts.pins.map((row) => [row.number, row]));
  const missing = facts.pins.filter(
    ({ number }) => !board.pins.some((pin) => numbersOf(pin).includes(number)),
  );
  return [
    ...missing.map(({ number }) => `pin ${number}: not on the board`),
    ...board.pins.flatMap((pin) => {
      if (pin.number === undefined) return [];
      const row = numbersOf(pin)
        .map((number) => rows.get(number))
        .find((one) => one !== undefined);
      if (row === undefined) return [`${pin.id}: ${pin.number} is in no header`];
      return (facts.tells ?? []).flatMap((field) => {
        const [ours, theirs] = [onBoard(pin, field, row), row[field] ?? false];
        return ours === theirs ? [] : [`${pin.id} ${field}: ${ours}, header ${theirs}`];
      });
    }),
  ];
}

/** The board's answer in the words of the facts; false where it has none. */
function onBoard(pin: BoardPin, field: Told, row: PinFacts): string | number | boolean {
  switch (field) {
    case 'boot':
      return pin.boot !== undefined;
    case 'flash':
      return pin.takenBy?.what === 'flash';
    case 'pwm':
      if (pin.pwm === undefined) return false;
      // The channel stands among the roles, behind the name of its timer.
      return row.pwm === true ? true : (pin.roles.find((role) => role.startsWith(`${pin.pwm}.`)) ?? pin.pwm);
    case 'interrupt':
      // Cores whose lines are the pin numbers take any number of the pin.
      return pin.interrupt !== undefined && numbersOf(pin).includes(pin.interrupt)
        ? (row.interrupt ?? pin.interrupt)
        : (pin.interrupt ?? false);
    default:
      return pin[field] ?? false;
  }
}

function headersOf(board: Board, facts: BoardFacts): string[] {
  return Object.entries(facts.headers ?? {}).flatMap(([id, printed]) => {
    const positions = board.headers.find((header) => header.id === id)?.positions ?? [];
    if (positions.length !== printed.length) {
      return [`header ${id}: ${positions.length} positions, guide ${printed.length}`];
    }
    return printed.flatMap((name, index) => {
      const pin = board.pins.find((one) => one.id === positions[index]);
      const names = pin === undefined ? [] : [pin.id, ...pin.names, ...numbersOf(pin).map(String)];
      return names.includes(name) ? [] : [`header ${id}.${index + 1}: ${pin?.id}, guide ${name}`];
    });
  });
}
