/** At which pin, part or wire of the picture each finding is told. */
import { type Build, numbersOf } from '../base/build';
import type { Finding } from '../base/finding';
import type { SketchFacts } from '../base/pin-use';
import type { Span } from '../base/span';
import type { Mark } from './model';

export interface Marks {
  readonly pins: ReadonlyMap<string, readonly Mark[]>;
  readonly parts: ReadonlyMap<string, readonly Mark[]>;
  readonly wires: ReadonlyMap<string, readonly Mark[]>;
  readonly others: readonly Mark[];
}

/** True where the spans have a character in common. */
const meets = (a: Span, b: Span) => a.file === b.file && a.start < b.end && b.start < a.end;
const within = (inner: Span, outer: Span) =>
  inner.file === outer.file && outer.start <= inner.start && inner.end <= outer.end;

/** Each finding once: at the pin or part it points at, else at the wire, else at what its related places name. */
export function placeMarks(build: Build, facts: SketchFacts, findings: readonly Finding[]): Marks {
  const kinds = {
    pins: new Map<string, Mark[]>(),
    parts: new Map<string, Mark[]>(),
    wires: new Map<string, Mark[]>(),
  };
  const others: Mark[] = [];
  for (const { rule, severity, message, span, related } of findings) {
    const mark = { rule, severity, message, span };
    const spans = [span, ...related.map((place) => place.span)];
    const target = spans.map((each) => targetOf(build, facts, each)).find((each) => each !== undefined);
    if (!target) {
      others.push(mark);
      continue;
    }
    const kind = kinds[target.kind];
    kind.set(target.id, [...(kind.get(target.id) ?? []), mark]);
  }
  return { ...kinds, others };
}

interface Target {
  readonly kind: 'pins' | 'parts' | 'wires';
  readonly id: string;
}

function targetOf(build: Build, facts: SketchFacts, span: Span): Target | undefined {
  if (span.file !== build.file) return pinOfSketch(build, facts, span);
  const part = build.parts.find(({ entry }) => within(span, entry));
  if (part) return { kind: 'parts', id: part.id };
  const wires = build.wires.filter((wire) => meets(span, wire.span));
  const end = wires.flatMap(({ ends }) => ends).find((each) => within(span, each.span));
  if (end) return end.kind === 'pin' ? { kind: 'pins', id: end.pin } : { kind: 'parts', id: end.part };
  const [wire] = wires;
  return wire && wires.length < build.wires.length ? { kind: 'wires', id: wire.id } : undefined;
}

function pinOfSketch(build: Build, facts: SketchFacts, span: Span): Target | undefined {
  const used = facts.uses.find(
    (use) => use.pins.kind === 'known' && use.pins.values.length > 0 && meets(use.span, span),
  );
  const named = facts.pinNames.find(({ definition, references }) =>
    [definition, ...references].some((place) => meets(place, span)),
  );
  const numbers = used?.pins.kind === 'known' ? used.pins.values : (named?.pins ?? []);
  const pin = build.board.pins.find((each) => numbersOf(each).some((number) => numbers.includes(number)));
  // A pin without a place at a header cannot be pointed at.
  const placed = pin && build.board.headers.some(({ positions }) => positions.includes(pin.id));
  return placed ? { kind: 'pins', id: pin.id } : undefined;
}
