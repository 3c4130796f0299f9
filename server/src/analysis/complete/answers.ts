/**
 * What an editor asks beside findings and hovers, as plain data: outline, folds, references, renames, colours, lenses,
 * hints and the list of pins. Nothing here runs while somebody types; each is made when it is asked for.
 */
import { type Build, numbersOf, type Part } from '../../base/build';
import { formatQuantity } from '../../base/quantity';
import { worst } from '../../base/range';
import type { Edit, Span } from '../../base/span';
import { renamePart } from '../../hardware';
import type { PinView, Subject } from '../../rules/subject';
import { isSignal, regionOf } from '../../rules/support/views';
import { findPlace } from '../places';
import { pinWords } from './complete';

export interface Outline {
  readonly name: string;
  readonly detail: string;
  readonly kind: 'section' | 'part' | 'wire';
  /** The whole entry, and the name in it. */
  readonly span: Span;
  readonly nameSpan: Span;
  readonly children: readonly Outline[];
}

/** A line over or beside a place: lenses stand over it, hints behind it. */
export interface Remark {
  readonly span: Span;
  readonly text: string;
}

export interface PinRow {
  readonly pin: string;
  /** What the sketch does with it. */
  readonly use: string;
  /** Parts on it. */
  readonly parts: readonly string[];
  /** Current in the worst state, in words; empty where none flows. */
  readonly current: string;
  /** What a free pin can do. */
  readonly can: string;
  readonly place?: Span;
}

export function outlineOf(build: Build): readonly Outline[] {
  const parts = build.parts.map(
    (part): Outline => ({
      name: part.id,
      detail: part.title,
      kind: 'part',
      span: part.entry,
      nameSpan: part.span,
      children: [],
    }),
  );
  const entries = [...new Set(build.wires.map(({ entry }) => entry))].flatMap((entry): Outline[] => {
    const pieces = build.wires.filter((wire) => wire.entry === entry);
    const [first] = pieces;
    if (!first) return [];
    const ends = pieces
      .flatMap(({ ends: own }) => own.map(endWords))
      .filter((end, index, all) => end !== all[index - 1]);
    return [
      {
        name: ends.join(' → '),
        detail: '',
        kind: 'wire',
        span: first.span,
        nameSpan: first.span,
        children: [],
      },
    ];
  });
  return [section('parts', parts), section('wires', entries)].filter(({ children }) => children.length > 0);
}

function section(name: string, children: readonly Outline[]): Outline {
  const first = children[0]?.span ?? { file: '', start: 0, end: 0 };
  const span = { ...first, end: children.reduce((end, child) => Math.max(end, child.span.end), first.end) };
  return {
    name,
    detail: `${children.length}`,
    kind: 'section',
    span,
    nameSpan: { ...first, end: first.start },
    children,
  };
}

function endWords(end: Build['wires'][number]['ends'][number]): string {
  return end.kind === 'pin' ? end.pin : `${end.part}.${end.terminal}`;
}

/** Every place that speaks of what stands at an offset, in both files. */
export function referencesOf(subject: Subject, file: string, offset: number): readonly Span[] {
  const place = findPlace(subject, file, offset);
  if (!place || place.kind === 'unresolved') return [];
  if (place.kind === 'part') return [place.part.span, ...partEnds(subject.build, place.part)];
  return place.views.flatMap((view) => [...usesOf(view), ...pinEnds(view)]);
}

function usesOf(view: PinView): readonly Span[] {
  const seen = new Set<string>();
  return view.uses.flatMap(({ span }) => {
    const key = `${span.file}:${span.start}`;
    return seen.has(key) || !seen.add(key) ? [] : [span];
  });
}

function pinEnds(view: PinView): readonly Span[] {
  return view.wires.flatMap(({ ends }) =>
    ends.flatMap((end) => (end.kind === 'pin' && end.pin === view.pin.id ? [end.span] : [])),
  );
}

function partEnds(build: Build, part: Part): readonly Span[] {
  const seen = new Set<number>();
  return build.wires.flatMap(({ ends }) =>
    ends.flatMap((end) => {
      if (end.kind !== 'terminal' || end.part !== part.id || seen.has(end.span.start)) return [];
      seen.add(end.span.start);
      return [end.span];
    }),
  );
}

/** The name that a rename at an offset would change; undefined where there is no part. */
export function renamable(subject: Subject, file: string, offset: number): Span | undefined {
  const place = file === subject.build.file ? findPlace(subject, file, offset) : undefined;
  if (place?.kind !== 'part') return undefined;
  const { span, part } = place;
  // An end says `part.terminal`; the name alone changes.
  return { ...span, end: Math.min(span.end, span.start + part.id.length) };
}

/** Edits that give the part another name everywhere, or a whole sentence that says why not. */
export function renameAt(
  subject: Subject,
  file: string,
  offset: number,
  name: string,
): readonly Edit[] | string {
  const place = file === subject.build.file ? findPlace(subject, file, offset) : undefined;
  if (place?.kind !== 'part') return 'Only parts of the manifest can be renamed.';
  const { build } = subject;
  if (!/^[^\s.@"\\]+$/.test(name)) return 'A name has no spaces, dots, quotes and @.';
  if (build.parts.some(({ id }) => id === name)) return `There is a part "${name}" already.`;
  const pin = build.board.pins.find((each) => [each.id, ...each.names].includes(name));
  if (pin) return `"${name}" is a pin of the board.`;
  return renamePart(subject.texts[file] ?? '', place.part.id, name, file);
}

/** Wire colours as written: the manifest's own words. */
export function coloursOf(
  build: Build,
  text: string,
): readonly { readonly span: Span; readonly colour: string }[] {
  const colours = new Set(build.wires.flatMap(({ colour }) => colour ?? []));
  const entries = [...new Map(build.wires.map((wire) => [wire.entry, wire.span])).values()];
  return entries.flatMap(({ file, start, end }) =>
    [...text.slice(start, end).matchAll(/"((?:[^"\\]|\\.)*)"(\s*:)?/g)].flatMap((match) => {
      const from = start + match.index + 1;
      const colour = match[1] ?? '';
      const lead = text.slice(start, from);
      const isColour =
        match[2] === undefined && /"colours?"\s*:\s*(?:\[[^\]]*)?"$/.test(lead) && colours.has(colour);
      return isColour ? [{ span: { file, start: from, end: from + colour.length }, colour }] : [];
    }),
  );
}

/** Over each part: how often the sketch uses its pins, and the most that flows. */
export function lensesOf(subject: Subject): readonly Remark[] {
  return subject.build.parts.flatMap((part) => {
    const views = viewsOfPart(subject, part.id);
    if (views.length === 0) return [];
    const uses = new Set(views.flatMap((view) => usesOf(view).map(({ file, start }) => `${file}:${start}`)))
      .size;
    const amps = views.map((view) => worstOf(subject, view)).filter((words) => words !== '');
    const pins = views.map((view) => view.pin.id).join(', ');
    const flows = amps.length > 0 ? ` · at most ${amps.join(', ')}` : '';
    return [{ span: part.span, text: `${pins} · ${uses} use${uses === 1 ? '' : 's'} in the sketch${flows}` }];
  });
}

/** Signal pins that have the part on their net, or behind what lies in series with it. */
function viewsOfPart(subject: Subject, part: string): readonly PinView[] {
  return subject.pins.filter(
    (view) =>
      isSignal(view) &&
      view.wires.length > 0 &&
      (view.net.terminals.some((end) => end.part === part) ||
        regionOf(subject, view.pin.id)?.elements.some((element) => element.part === part) === true),
  );
}

function ampsOf(subject: Subject, view: PinView) {
  const region = regionOf(subject, view.pin.id);
  const all = region
    ? subject.points(region).flatMap(({ point }) => point.amps[`pin:${view.pin.id}`] ?? [])
    : [];
  const [first, ...rest] = all;
  const most = first && rest.reduce((best, amps) => (worst(amps) > worst(best) ? amps : best), first);
  return most && worst(most) >= 1e-6 ? most : undefined;
}

function worstOf(subject: Subject, view: PinView): string {
  const amps = ampsOf(subject, view);
  return amps ? formatQuantity(worst(amps), 'A', 2) : '';
}

/** Behind each pin argument of the sketch: the part on it and the current that usually flows. */
export function hintsOf(subject: Subject, file: string, start: number, end: number): readonly Remark[] {
  const seen = new Set<number>();
  const hints: Remark[] = [];
  for (const use of subject.facts.uses) {
    const { span, pins } = use;
    if (span.file !== file || span.end < start || span.start > end || seen.has(span.start)) continue;
    if (pins.kind === 'unknown' || pins.values.length !== 1) continue;
    const view = subject.pins.find(({ pin }) =>
      numbersOf(pin).some((number) => pins.values.includes(number)),
    );
    const name = view && thingOn(subject, view);
    if (!view || name === undefined) continue;
    seen.add(span.start);
    const amps = ampsOf(subject, view);
    const flows = amps ? `, ${formatQuantity(Math.abs(amps.typ), 'A', 2)}` : '';
    hints.push({ span, text: `${name}${flows}` });
  }
  return hints;
}

/** The part that a person would name: the first that is no resistor. */
function thingOn(subject: Subject, view: PinView): string | undefined {
  const region = regionOf(subject, view.pin.id);
  const near = view.net.terminals.map(({ part }) => part);
  const all = [
    ...near,
    ...(region?.elements.filter(({ onBoard }) => !onBoard).map(({ part }) => part) ?? []),
  ];
  const helpers = new Set(['resistor', 'resistor-network', 'capacitor', 'wire-joint']);
  const kindOf = (id: string) => subject.build.parts.find((part) => part.id === id)?.kind ?? '';
  return all.find((id) => !helpers.has(kindOf(id))) ?? all[0];
}

/** All pins that a sketch can use, the free ones at the end. */
export function pinRows(subject: Subject): readonly PinRow[] {
  const rows = subject.pins.filter(isSignal).map((view): PinRow & { readonly free: boolean } => {
    const [place] = [...pinEnds(view), ...usesOf(view)];
    return {
      pin: view.pin.id,
      use: [...new Set(view.uses.map(({ call }) => call))].join(', '),
      parts: [...new Set(view.net.terminals.map(({ part }) => part))],
      current: worstOf(subject, view),
      can: pinWords(view.pin, undefined),
      ...(place && { place }),
      free: view.wires.length === 0 && view.uses.length === 0,
    };
  });
  return [...rows.filter(({ free }) => !free), ...rows.filter(({ free }) => free)].map(
    ({ free: _, ...row }) => row,
  );
}
