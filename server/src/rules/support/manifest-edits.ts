/** The pieces that fixes of the manifest are made of: free rail positions, names, wires to ground, pulls, moves. */
import type { Part, Wire } from '../../base/build';
import type { Fix } from '../../base/finding';
import { freePosition, insertPart, insertWire, replaceValue } from '../../hardware';
import type { PinView, Subject } from '../subject';
import { draftManifest, type Step } from './draft';
import { viewOf } from './views';

/**
 * Where a new wire to a rail can be soldered: a free header position, else a terminal that is on that rail already.
 * Undefined where there is neither.
 */
export function railEnd(subject: Subject, rail: string): string | undefined {
  const position = freePosition(subject.build, rail);
  if (position) return `${rail}@${position.header}.${position.index}`;
  const terminal = viewOf(subject, rail)?.net.terminals[0];
  return terminal && `${terminal.part}.${terminal.terminal}`;
}

/** The id of the first ground pin that a wire can still go to. */
export function groundEnd(subject: Subject): string | undefined {
  for (const view of subject.pins) {
    const end = view.pin.type === 'ground' ? railEnd(subject, view.pin.id) : undefined;
    if (end !== undefined) return end;
  }
  return undefined;
}

/** `R1`, `R2` …: the first name with this prefix that no part has. */
export function nextName(subject: Subject, prefix: string): string {
  const taken = new Set(subject.build.parts.map((part) => part.id));
  for (let count = 1; ; count += 1) if (!taken.has(`${prefix}${count}`)) return `${prefix}${count}`;
}

/** The end of a wire as a step: replaces what the manifest says there. */
export function setEnd(wire: Wire, end: 0 | 1, value: string): Step {
  return (text, file) => replaceValue(text, endPath(wire, end), value, file);
}

/** Where the manifest says an end of a wire. */
function endPath(wire: Wire, end: 0 | 1): (string | number)[] {
  return isPath(wire)
    ? ['wires', wire.entry, 'path', wire.piece + end]
    : ['wires', wire.entry, end === 0 ? 'from' : 'to'];
}

/** True for a piece of a path; a wire with `from` and `to` has no piece number in its id. */
export function isPath(wire: Wire): boolean {
  return wire.id.includes('.');
}

/** A resistor from a pin's net to its rail, soldered at a part so that the pin's own position keeps one wire. */
export function addPull(subject: Subject, view: PinView, direction: 'up' | 'down'): Fix | undefined {
  const rail = direction === 'up' ? railEnd(subject, subject.build.board.logicRail) : groundEnd(subject);
  const at = view.net.terminals[0];
  const value = pullValue(subject);
  if (rail === undefined || !at || value === undefined) return undefined;
  const id = nextName(subject, 'R');
  const end = `${at.part}.${at.terminal}`;
  return {
    title: `Declare a ${value} pull-${direction} resistor on ${view.pin.id}`,
    trust: 'ask',
    edits: draftManifest(subject, [
      (text, file) => insertPart(text, id, { kind: 'resistor', value }, file),
      (text, file) => insertWire(text, { path: [rail, id, end] }, file),
    ]),
  };
}

/** The stock value nearest to 10 kilohm, the usual pull (common practice); undefined where none is sensible. */
export function pullValue(subject: Subject): string | undefined {
  const usual = subject.build.stock.resistors.filter((ohms) => ohms >= 2200 && ohms <= 100_000);
  const [first, ...rest] = usual;
  if (first === undefined) return undefined;
  const distance = (ohms: number) => Math.abs(Math.log(ohms / 10_000));
  return ohmsText(rest.reduce((best, ohms) => (distance(ohms) < distance(best) ? ohms : best), first));
}

/** A resistor's value as people write it in a list: 470, 4.7k, 1M. */
export function ohmsText(ohms: number): string {
  if (ohms >= 1e6) return `${trim(ohms / 1e6)}M`;
  return ohms >= 1000 ? `${trim(ohms / 1000)}k` : trim(ohms);
}

function trim(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** Takes a terminal to ground: an end that is on another rail moves, a bare terminal gets a wire. */
export function groundTerminal(subject: Subject, part: string, terminal: string): readonly Fix[] {
  const ground = groundEnd(subject);
  if (ground === undefined) return [];
  const wires = wiresAt(subject, part, terminal);
  const [first] = wires;
  const name = `${part}.${terminal}`;
  if (!first) {
    return [
      {
        title: `Declare a wire from ${name} to ${ground}`,
        trust: 'ask',
        edits: draftManifest(subject, [
          (text, file) => insertWire(text, { from: name, to: ground, colour: 'black' }, file),
        ]),
      },
    ];
  }
  const far = first.ends[0].kind === 'terminal' && first.ends[0].part === part ? 1 : 0;
  // Only an end of its own that lies on another rail can be taken over; anything else hangs between other parts.
  const rail = subject.rails[subject.build.nets.find((net) => net.wires.includes(first.id))?.id ?? ''];
  if (wires.length > 1 || rail === undefined || isInside(subject, first, far)) return [];
  return [
    {
      title: `Take the wire of ${name} to ${ground}`,
      trust: 'ask',
      edits: draftManifest(subject, [setEnd(first, far, ground)]),
    },
  ];
}

/** Wires that end on a terminal. */
export function wiresAt(subject: Subject, part: string, terminal: string): readonly Wire[] {
  return subject.build.wires.filter((wire) =>
    wire.ends.some((end) => end.kind === 'terminal' && end.part === part && end.terminal === terminal),
  );
}

/** Moves the end of a wire to the next free position of its pin, or to the part that the pin already goes to. */
export function movePosition(
  subject: Subject,
  detail: { readonly pin: string; readonly wire: string; readonly end: 0 | 1 },
): readonly Fix[] {
  const { build } = subject;
  const wire = build.wires.find((candidate) => candidate.id === detail.wire);
  if (!wire) return [];
  const fixes: Fix[] = [];
  const free = freePosition(build, detail.pin);
  if (free) {
    fixes.push({
      title: `Move this end to the free position ${free.words}`,
      trust: 'ask',
      edits: draftManifest(subject, [setEnd(wire, detail.end, `${detail.pin}@${free.header}.${free.index}`)]),
    });
  }
  const own = new Set(wire.ends.flatMap((end) => (end.kind === 'terminal' ? [end.part] : [])));
  const join = viewOf(subject, detail.pin)?.net.terminals.find((end) => !own.has(end.part));
  // Inside a path the end names the part it passes, so only the first and the last can be soldered elsewhere.
  if (join) {
    const name = `${join.part}.${join.terminal}`;
    fixes.push({
      title: `Join this end to the other wire at ${name}`,
      trust: 'ask',
      edits: draftManifest(subject, [setEnd(wire, detail.end, name)]),
    });
  }
  return fixes;
}

/** Wires a bare terminal to where the kind of part wants it: the second end of a divider or a minus to ground. */
export function connectTerminal(
  subject: Subject,
  partId: string,
  terminals: readonly string[],
): readonly Fix[] {
  const part = subject.build.parts.find((candidate) => candidate.id === partId);
  const [terminal] = terminals;
  if (!part || terminal === undefined || terminals.length !== 1) return [];
  return wantsGround(subject, part, terminal) ? groundTerminal(subject, partId, terminal) : [];
}

/** A minus terminal, or the far side of a part whose other side a pin, a supply or a plus already has. */
function wantsGround(subject: Subject, part: Part, terminal: string): boolean {
  const polarity = part.terminals.find((candidate) => candidate.id === terminal)?.polarity;
  if (polarity !== undefined) return polarity === '-';
  const elements = subject.placed.filter(
    (element) => element.part === part.id && element.primitive.ends.includes(terminal),
  );
  const grounded = elements.some((element) =>
    element.nets.some((net) =>
      subject.pins.some((view) => view.pin.type === 'ground' && view.net.id === net),
    ),
  );
  return elements.length > 0 && !grounded;
}

/** True where an end is a part that a path passes, not one written as `part.terminal`. */
export function isInside(subject: Subject, wire: Wire, end: 0 | 1): boolean {
  if (!isPath(wire)) return false;
  const last = subject.build.wires.filter((other) => other.entry === wire.entry).length - 1;
  return end === 0 ? wire.piece > 0 : wire.piece < last;
}
