/** The handful of mutators that the seeds are made with. Each returns edits and knows nothing of rules. */
import { parse } from 'jsonc-parser';
import { type CleanBuild, MANIFEST } from './builds';
import type { SeedEdit } from './seed';
import type { Signal } from './signals';

export interface WireEntry {
  readonly from?: string;
  readonly to?: string;
  readonly path?: readonly string[];
  readonly colours?: readonly string[];
  readonly [key: string]: unknown;
}

export interface Hardware {
  readonly board: string;
  readonly parts: Readonly<Record<string, { readonly kind: string; readonly [key: string]: unknown }>>;
  readonly wires: readonly WireEntry[];
}

export function hardwareOf(build: CleanBuild): Hardware {
  return parse(build.files[MANIFEST] ?? '') as Hardware;
}

export function endsOf(wire: WireEntry): readonly string[] {
  return wire.path ?? [wire.from ?? '', wire.to ?? ''];
}

/** Index of the first wire that names the end, with or without a header position. */
export function wireAt({ wires }: Hardware, end: string): number {
  const at = wires.findIndex((wire) => endsOf(wire).some((one) => one === end || one.startsWith(`${end}@`)));
  if (at < 0) throw new Error(`no wire names ${end}`);
  return at;
}

/** Sets a key of a part; no value removes it. */
export function set(part: string, key: string, value?: unknown): SeedEdit {
  return { path: ['parts', part, key], value };
}

export function addPart(id: string, entry: object): SeedEdit {
  return { path: ['parts', id], value: entry };
}

export function addWire(wire: object): SeedEdit {
  return { path: ['wires', 0], value: wire, insert: true };
}

function append({ wires }: Hardware, wire: object): SeedEdit {
  return { path: ['wires', wires.length], value: wire, insert: true };
}

/** Takes whole wires out, the last first, so that the indices hold. */
export function removeWires(hardware: Hardware, ...ends: readonly string[]): SeedEdit[] {
  const indices = [...new Set(ends.map((end) => wireAt(hardware, end)))].sort((a, b) => b - a);
  return indices.map((index) => ({ path: ['wires', index] }));
}

/** Moves every wire from one end to another: `moveEnd(h, 'D7', 'D6')`, `moveEnd(h, 'beacon.cathode', 'GND')`. */
export function moveEnd(hardware: Hardware, from: string, to: string, only?: number): SeedEdit[] {
  return hardware.wires.flatMap((wire, index): SeedEdit[] => {
    if (only !== undefined && only !== index) return [];
    const swap = (end: string): string => (end === from || end.startsWith(`${from}@`) ? to : end);
    if (wire.path) {
      return wire.path.flatMap((end, at) =>
        swap(end) === end ? [] : [{ path: ['wires', index, 'path', at], value: swap(end) }],
      );
    }
    return (['from', 'to'] as const).flatMap((key) => {
      const end = wire[key] ?? '';
      return swap(end) === end ? [] : [{ path: ['wires', index, key], value: swap(end) }];
    });
  });
}

/** Exchanges two ends wherever they are named. */
export function swapEnds(hardware: Hardware, a: string, b: string): SeedEdit[] {
  return [...moveEnd(hardware, a, b), ...moveEnd(hardware, b, a)];
}

/** Takes a part out of the path it stands in, with its entry; one colour goes with it. */
export function bridge(hardware: Hardware, part: string): SeedEdit[] {
  const index = hardware.wires.findIndex((wire) => wire.path?.includes(part));
  const wire = hardware.wires[index];
  if (!wire?.path) throw new Error(`${part} is in no path`);
  const path = wire.path.filter((end) => end !== part);
  return [
    { path: ['wires', index, 'path'], value: path },
    ...(wire.colours ? [{ path: ['wires', index, 'colours'], value: wire.colours.slice(1) }] : []),
    { path: ['parts', part] },
  ];
}

/** Turns a two-terminal part of a path round: `[D7, R1, lamp, GND]` becomes R1 to the cathode and the anode to GND. */
export function turn(hardware: Hardware, part: string, first: string, second: string): SeedEdit[] {
  const index = hardware.wires.findIndex((wire) => wire.path?.includes(part));
  const path = hardware.wires[index]?.path;
  if (!path) throw new Error(`${part} is in no path`);
  const at = path.indexOf(part);
  const others = hardware.wires.flatMap((_, other) =>
    other === index
      ? []
      : [
          ...moveEnd(hardware, `${part}.${first}`, `${part}.${second}`, other),
          ...moveEnd(hardware, `${part}.${second}`, `${part}.${first}`, other),
        ],
  );
  const head = [...path.slice(0, at), `${part}.${second}`];
  const tail = [`${part}.${first}`, ...path.slice(at + 1)];
  const piece = (ends: readonly string[]): object =>
    ends.length === 2 ? { from: ends[0], to: ends[1] } : { path: ends };
  return [
    ...others,
    { path: ['wires', index], value: piece(head) },
    ...(tail.length > 1 ? [append(hardware, piece(tail))] : []),
  ];
}

/** Gives a pin of the sketch another number. */
export function renumber({ define, number, file }: Signal, to: string): SeedEdit {
  return {
    find: define.replace('#', number),
    put: define.replace('#', to),
    ...(file !== undefined && { file }),
  };
}

/** Puts another text in the place of one in the sketch. */
export function rewrite(find: string, put: string, file?: string): SeedEdit {
  return { find, put, ...(file !== undefined && { file }) };
}

/** Takes the statement out that sets the pin's mode. */
export function dropMode({ mode, file }: Signal): SeedEdit {
  if (mode === undefined) throw new Error('the signal has no statement for its mode');
  return { find: mode, put: '', ...(file !== undefined && { file }) };
}

/** Sets another mode. */
export function setMode({ mode, file }: Signal, from: string, to: string): SeedEdit {
  if (mode === undefined) throw new Error('the signal has no statement for its mode');
  return { find: mode, put: mode.replace(from, to), ...(file !== undefined && { file }) };
}
