/** Which pins of the board the bus terminals of parts are wired to, and whether the sketch opens the bus there. */
import type { Part } from '../../base/build';
import type { PinUse } from '../../base/pin-use';
import type { PinView, Subject } from '../subject';
import { isSignal } from './views';

/** A terminal of a part that belongs to a bus, and the one pin of the board that it is wired to. */
export interface BusEnd {
  readonly part: Part;
  readonly terminal: string;
  /** `i2c`, `spi`, `uart`. */
  readonly bus: string;
  /** `sda`, `mosi`, `tx`: what it is to the part. */
  readonly line: string;
  readonly pin: PinView;
}

const store = new WeakMap<Subject, readonly BusEnd[]>();

/** Bus terminals that a wire joins to exactly one pin that the sketch can use. */
export function busEnds(subject: Subject): readonly BusEnd[] {
  const kept = store.get(subject);
  if (kept) return kept;
  const parts = new Map(subject.build.parts.map((part) => [part.id, part]));
  const ends: BusEnd[] = [];
  for (const net of subject.build.nets) {
    const pins = subject.pins.filter((view) => net.pins.includes(view.pin.id) && isSignal(view));
    const [pin] = pins;
    if (!pin || pins.length > 1 || subject.rails[net.id] !== undefined) continue;
    for (const { part: id, terminal } of net.terminals) {
      const part = parts.get(id);
      const roles = part?.terminals.find((one) => one.id === terminal)?.roles ?? [];
      for (const role of roles) {
        const [, bus, line] = /^(i2c|spi|uart)\.(\w+)$/.exec(role) ?? [];
        if (part && bus !== undefined && line !== undefined) ends.push({ part, terminal, bus, line, pin });
      }
    }
  }
  store.set(subject, ends);
  return ends;
}

/** A bus of the board that the sketch opens on the pins the core gives it. */
export interface OpenBus {
  /** `i2c`, `i2c1`. */
  readonly name: string;
  /** The call that opens it. */
  readonly use: PinUse;
  /** Pin by line: `sda`, `scl`. */
  readonly lines: ReadonlyMap<string, PinView>;
}

/** Buses of one kind that are open on pins with their roles. */
export function openBuses(subject: Subject, kind: string): readonly OpenBus[] {
  const found = new Map<string, { readonly use: PinUse; readonly lines: Map<string, PinView> }>();
  for (const view of subject.pins) {
    for (const role of view.pin.roles) {
      const [, name, line] = /^([a-z]+\d*[a-z]?\d*)\.(\w+)$/.exec(role) ?? [];
      if (name === undefined || line === undefined || !isOf(kind, name)) continue;
      const use = view.uses.find((one) => one.action === 'bus');
      if (!use) continue;
      const bus = found.get(name) ?? { use, lines: new Map<string, PinView>() };
      bus.lines.set(line, view);
      found.set(name, bus);
    }
  }
  return [...found].map(([name, { use, lines }]) => ({ name, use, lines }));
}

/** `i2c1` is an i2c. */
function isOf(kind: string, name: string): boolean {
  return name.startsWith(kind) && /^\d*$/.test(name.slice(kind.length));
}

/** True where a bus may be opened in a way or at a place that cannot be seen. */
export function busesUnclear(subject: Subject): boolean {
  const { facts, unresolved } = subject;
  return (
    facts.damaged === true ||
    (facts.foreignHeaders ?? []).length > 0 ||
    unresolved.some(({ action }) => action === 'bus' || action === 'device' || action === 'transfer')
  );
}

/** A part whose bus terminals are wired past the bus. */
export interface Misplaced {
  readonly part: Part;
  readonly bus: OpenBus;
  readonly ends: readonly { readonly end: BusEnd; readonly right: PinView }[];
}

const misplacedStore = new WeakMap<Subject, readonly Misplaced[]>();

/** Parts on pins that the opened bus does not come to, or on its lines the wrong way round. */
export function misplacedParts(subject: Subject): readonly Misplaced[] {
  const kept = misplacedStore.get(subject);
  if (kept) return kept;
  const found: Misplaced[] = [];
  for (const kind of busesUnclear(subject) ? [] : ['i2c', 'spi']) {
    const buses = openBuses(subject, kind);
    const ends = busEnds(subject).filter((end) => end.bus === kind && end.line !== 'ss');
    for (const part of new Set(ends.map((end) => end.part))) {
      const own = ends.filter((end) => end.part === part);
      // Where one line is right, the part is on that bus; else the first open one is meant.
      const bus =
        buses.find(({ lines }) => own.some((end) => [...lines.values()].includes(end.pin))) ?? buses[0];
      if (!bus) continue;
      const wrong = own.flatMap((end) => {
        const right = bus.lines.get(end.line);
        if (!right || right === end.pin) return [];
        const crossed = [...bus.lines.values()].includes(end.pin);
        // A pin with a use of its own may serve a bus that the sketch makes by hand.
        return crossed || end.pin.uses.length === 0 ? [{ end, right }] : [];
      });
      if (wrong.length > 0) found.push({ part, bus, ends: wrong });
    }
  }
  misplacedStore.set(subject, found);
  return found;
}

/** What a pin does on the serial port that the sketch opens on it; undefined where that is not plain. */
export function serialDirection(view: PinView): 'sends' | 'receives' | undefined {
  const modes = view.uses
    .filter((use) => use.action === 'bus' || use.action === 'device')
    .flatMap((use) => use.modes ?? []);
  if (modes.length === 0) return undefined;
  if (modes.every((mode) => mode === 'output')) return 'sends';
  return modes.every((mode) => mode === 'input' || mode === 'input-pullup') ? 'receives' : undefined;
}

/** A serial part on a port of the chip, while the sketch speaks to the port of the USB socket alone. */
export interface WrongPort {
  readonly part: Part;
  /** The object that has the pins: `Serial1`. */
  readonly port: string;
  readonly use: PinUse;
  readonly pins: readonly PinView[];
}

const portStore = new WeakMap<Subject, readonly WrongPort[]>();

/** Serial parts whose port is never opened, on boards where `Serial` has no pins. */
export function wrongPorts(subject: Subject): readonly WrongPort[] {
  const kept = portStore.get(subject);
  if (kept) return kept;
  const found: WrongPort[] = [];
  const use = subject.facts.uses.find(
    ({ call, pins }) => call === 'Serial.begin' && pins.kind === 'known' && pins.values.length === 0,
  );
  if (use && !busesUnclear(subject)) {
    const ends = busEnds(subject).filter(({ bus, pin }) => bus === 'uart' && pin.uses.length === 0);
    for (const part of new Set(ends.map((end) => end.part))) {
      const pins = ends.filter((end) => end.part === part).map((end) => end.pin);
      const [role] = pins.flatMap((pin) => pin.pin.roles.filter((one) => /^uart\d\./.test(one)));
      const all = busEnds(subject).filter((end) => end.part === part && end.bus === 'uart');
      const port = role === undefined ? undefined : objectOf(subject, role);
      if (port === undefined || port === 'Serial' || all.length !== pins.length) continue;
      found.push({ part, port, use, pins });
    }
  }
  portStore.set(subject, found);
  return found;
}

/** The object of the core that has a serial port on this board: `Serial1` for `uart0.tx` of one chip, `uart1.tx` of another. */
function objectOf(subject: Subject, role: string): string | undefined {
  const { macros } = subject.build.board.platform;
  const port = subject.libraries
    .flatMap((library) => library.classes)
    .find(
      (one) =>
        one.objects !== undefined &&
        (one.macros?.some((macro) => macros[macro] !== undefined) ?? true) &&
        one.methods.some((method) => method.name === 'begin' && method.roles?.includes(role)),
    );
  return port?.objects?.[0];
}
