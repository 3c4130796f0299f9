/** What stands at a place in the sketch or the manifest: the question behind hover and definition. */
import { numbersOf, type Part } from '../base/build';
import type { PinUse } from '../base/pin-use';
import { type Span, touches } from '../base/span';
import type { PinView, Subject } from '../rules/subject';

export type Place =
  | { readonly kind: 'pins'; readonly span: Span; readonly views: readonly PinView[]; readonly use?: PinUse }
  | { readonly kind: 'unresolved'; readonly span: Span; readonly use: PinUse }
  | { readonly kind: 'part'; readonly span: Span; readonly part: Part };

/** The pin argument, constant, wire end or part at an offset. */
export function findPlace(subject: Subject, file: string, offset: number): Place | undefined {
  return file === subject.build.file ? inManifest(subject, offset) : inSketch(subject, file, offset);
}

function holds(span: Span, file: string, offset: number): boolean {
  return span.file === file && touches(span, offset);
}

function viewsOf(subject: Subject, numbers: readonly number[]): PinView[] {
  return subject.pins.filter((view) => numbersOf(view.pin).some((number) => numbers.includes(number)));
}

function inSketch(subject: Subject, file: string, offset: number): Place | undefined {
  // A call that names no pin (a read from the serial port) must not hide the call around it.
  const uses = subject.facts.uses.filter(
    (use) => holds(use.span, file, offset) && (use.pins.kind === 'unknown' || use.pins.values.length > 0),
  );
  const first = uses[0];
  if (first) {
    // One argument can mean different pins on different call paths: all of them are told.
    const numbers = uses.flatMap((use) => (use.pins.kind === 'known' ? use.pins.values : []));
    if (numbers.length === 0) return { kind: 'unresolved', span: first.span, use: first };
    const use = uses.find((candidate) => candidate.pins.kind === 'known') ?? first;
    return { kind: 'pins', span: first.span, views: viewsOf(subject, numbers), use };
  }
  for (const name of subject.facts.pinNames) {
    const span = [name.definition, ...name.references].find((place) => holds(place, file, offset));
    if (span) return { kind: 'pins', span, views: viewsOf(subject, name.pins) };
  }
  return undefined;
}

function inManifest(subject: Subject, offset: number): Place | undefined {
  const { build } = subject;
  for (const part of build.parts) {
    if (holds(part.span, build.file, offset)) return { kind: 'part', span: part.span, part };
  }
  for (const wire of build.wires) {
    for (const end of wire.ends) {
      if (!holds(end.span, build.file, offset)) continue;
      if (end.kind === 'pin') {
        return {
          kind: 'pins',
          span: end.span,
          views: subject.pins.filter((view) => view.pin.id === end.pin),
        };
      }
      const part = build.parts.find((candidate) => candidate.id === end.part);
      if (part) return { kind: 'part', span: end.span, part };
    }
  }
  return undefined;
}

/** Where the other file speaks of what stands at a place: wire ends for a pin, uses for a wire end, the part's entry. */
export function findDefinition(subject: Subject, file: string, offset: number): readonly Span[] {
  const place = findPlace(subject, file, offset);
  if (!place || place.kind === 'unresolved') return [];
  if (place.kind === 'part') {
    return file === subject.build.file && place.span.start !== place.part.span.start ? [place.part.span] : [];
  }
  if (file === subject.build.file) {
    return place.views.flatMap((view) => view.uses.map((use) => use.span)).slice(0, 50);
  }
  return place.views.flatMap((view) =>
    view.wires.flatMap((wire) =>
      wire.ends.filter((end) => end.kind === 'pin' && end.pin === view.pin.id).map((end) => end.span),
    ),
  );
}
