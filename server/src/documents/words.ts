/** Words that several papers share: ends of wires, thicknesses, what a wire is, and lists. */
import type { Build, End, Gauge, Part, Terminal, Wire } from '../base/build';
import { formatQuantity } from '../base/quantity';
import type { Piece } from './paper';

/** "GND, left header, 4th from the USB end" or "beacon.cathode". */
export function endWords(end: End): string {
  if (end.kind === 'terminal') return `${end.part}.${end.terminal}`;
  return end.position ? end.position.words : `${end.pin} (no free position)`;
}

/** The end without its place: "GND", "beacon.cathode". */
export function endName(end: End): string {
  return end.kind === 'terminal' ? `${end.part}.${end.terminal}` : end.pin;
}

/** "AWG 24", "AWG 2/0", "0.25 mm²". */
export function gaugeWords(gauge: Gauge): string {
  if ('squareMillimetres' in gauge) return `${gauge.squareMillimetres} mm\u00b2`;
  return `AWG ${gauge.awg < 0 ? `${1 - gauge.awg}/0` : gauge.awg}`;
}

export function gaugeOf(build: Build, wire: Wire): Gauge | undefined {
  return wire.gauge ?? build.wire?.gauge;
}

/** Metres stripped at each end; common practice for pin headers and board holes where nobody says. */
export const USUAL_STRIP = 0.005;

export function stripOf(build: Build, wire: Wire): number {
  return wire.strip ?? build.wire?.strip ?? USUAL_STRIP;
}

/** The board's end first, so that a finger finds every row from the header. */
export function boardFirst(wire: Wire): readonly [End, End] {
  const [a, b] = wire.ends;
  return a.kind !== 'pin' && b.kind === 'pin' ? [b, a] : [a, b];
}

export function findTerminal(build: Build, end: End): { part: Part; terminal: Terminal } | undefined {
  if (end.kind !== 'terminal') return undefined;
  const part = build.parts.find((candidate) => candidate.id === end.part);
  const terminal = part?.terminals.find((candidate) => candidate.id === end.terminal);
  return part && terminal && { part, terminal };
}

/** "red wire, 20 cm, AWG 24", with what is known of it. */
export function wireWords(build: Build, wire: Wire): readonly Piece[] {
  const gauge = gaugeOf(build, wire);
  const rest = [
    ...(wire.length === undefined ? [] : [formatQuantity(wire.length, 'm')]),
    ...(gauge ? [gaugeWords(gauge)] : []),
  ];
  const tail = rest.map((word) => `, ${word}`).join('');
  return wire.colour === undefined ? [`wire${tail}`] : [{ wire: wire.colour }, ` wire${tail}`];
}

/** "D7" for one, "D7 and D8" for two, "D7, D8 and D9" for more. */
export function listWords(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** "1 wire", "2 wires". */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** A name for a section: lower-case ASCII letters, figures and hyphens, not yet in `taken`, which it joins. */
export function sectionId(text: string, taken: Set<string>): string {
  const plain = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{Mark}/gu, '')
    .replace(/[^a-z0-9]+/g, (run) => (/[^\s\p{P}]/u.test(run) ? hexOf(run) : '-'))
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  const base = plain === '' ? 'part' : plain;
  let id = base;
  for (let number = 2; taken.has(id); number++) id = `${base}-${number}`;
  taken.add(id);
  return id;
}

function hexOf(run: string): string {
  return [...run].map((sign) => (sign.codePointAt(0) ?? 0).toString(16)).join('-');
}
