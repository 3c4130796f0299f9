/**
 * What the sketch tells of the thing on a pin: the calls, the library object, the names, and the remark beside the
 * definition. Pins that one object uses, or whose names have one stem and the roles of one part, are one piece.
 */
import { numbersOf } from '../../../base/build';
import type { PinUse } from '../../../base/pin-use';
import type { PinView, Subject } from '../../subject';
import { isSignal } from '../views';
import { type ClassPart, partOfClass } from './classes';
import { byRoles } from './roles';
import { type Way, wordsOf } from './words';

export interface Evidence {
  /** Pin ids in the order of use, each with its terminal where that is known. */
  readonly pins: readonly { readonly pin: string; readonly terminal?: string }[];
  readonly way: Way;
  /** Name for the part: that of the object or of the first pin. */
  readonly name: string;
  /** Words of names, then of remarks. */
  readonly words: readonly string[];
  readonly remarks: readonly string[];
  /** The library's class or the roles say the kind. */
  readonly fixed?: {
    readonly kind: string;
    readonly parameters: ClassPart['parameters'];
    readonly why: string;
  };
  /** Set for an object whose class no row knows: there is nothing to guess. */
  readonly unknownClass?: string;
  /** Calls on it, for the reason that is given. */
  readonly calls: readonly string[];
  /** Some of its pins are those of a bus, which other parts may be on. */
  readonly bus?: true;
  readonly pulledUp: boolean;
  readonly duty: boolean;
}

const quiet = new Set(['tone-off', 'release', 'interrupt-off', 'reference', 'transfer']);

/**
 * The pieces on these pins. A pin is in one piece at the most, but those of a bus, which come with every object on it.
 * An object on a bus without a pin of its own is left out where as many parts are on the bus as objects.
 */
export function gatherEvidence(subject: Subject, wanted: (view: PinView) => boolean): readonly Evidence[] {
  const done = new Set<string>();
  const views = subject.pins.filter((view) => isSignal(view));
  const isOpen = (pin: string) => {
    const view = views.find((each) => each.pin.id === pin);
    return view !== undefined && !done.has(pin) && wanted(view);
  };
  const pieces: Evidence[] = [];
  const onBus: Evidence[] = [];
  for (const piece of objectPieces(subject, views)) {
    const own = piece.pins.filter((each) => !isBusTerminal(each.terminal, piece));
    if (own.length === 0) {
      onBus.push(piece);
      continue;
    }
    const open = own.filter(({ pin }) => isOpen(pin));
    for (const { pin } of piece.pins) done.add(pin);
    const bus = piece.pins.filter((each) => isBusTerminal(each.terminal, piece));
    if (open.length > 0)
      pieces.push({ ...piece, pins: open.length === own.length ? piece.pins : [...open, ...bus] });
  }
  pieces.push(...undeclared(subject, onBus));
  const alone = views.filter(
    (view) => isOpen(view.pin.id) && view.uses.some((use) => !quiet.has(use.action)),
  );
  pieces.push(...byRoles(alone.map((view) => singlePiece(subject, view))));
  return pieces;
}

function isBusTerminal(terminal: string | undefined, piece: Evidence): boolean {
  return piece.bus === true && /^(sda|scl|sck|mosi|miso)$/.test(terminal ?? '');
}

/** Objects on a bus for which no part is there: those of a part's name first, then as many as there are parts. */
function undeclared(subject: Subject, pieces: readonly Evidence[]): readonly Evidence[] {
  const parts = subject.build.parts.filter((part) =>
    part.terminals.some(({ roles }) => roles?.includes('i2c.sda')),
  );
  const names = new Set(parts.map((part) => part.id.toLowerCase()));
  const without = pieces.filter((piece) => !names.has(piece.name.toLowerCase()));
  const spare = parts.length - (pieces.length - without.length);
  return without.slice(Math.max(0, spare));
}

/** The object's name in front of a call or of a constructor's bracket. */
function objectOf(subject: Subject, use: PinUse): string | undefined {
  const text = subject.texts[use.callSpan.file]?.slice(use.callSpan.start, use.callSpan.end) ?? '';
  return /^([A-Za-z_]\w*)/.exec(text)?.[1];
}

function objectPieces(subject: Subject, views: readonly PinView[]): Evidence[] {
  const groups = new Map<
    string,
    { readonly className: string; readonly object: string; readonly uses: PinUse[] }
  >();
  for (const use of subject.facts.uses) {
    if (use.pins.kind === 'unknown' || quiet.has(use.action)) continue;
    const className = use.call.split('.')[0] ?? '';
    const isObject =
      use.action === 'device' || use.action === 'servo' || use.action === 'bus' || partOfClass(className, 1);
    if (!isObject || /^(Serial|Wire|SPI)\d*$|^SPIClass/.test(className)) continue;
    const object = objectOf(subject, use) ?? className;
    const key = object === className ? `${className}:${use.callSpan.start}` : object;
    const group = groups.get(key) ?? { className, object, uses: [] };
    group.uses.push(use);
    groups.set(key, group);
  }
  return [...groups.values()].flatMap((group) => eachOf(objectPiece(group, views)));
}

/** A list of objects that have one pin each: as many pieces as pins. */
function eachOf(piece: Evidence | undefined): readonly Evidence[] {
  const [first] = piece?.pins ?? [];
  if (piece === undefined || !first) return [];
  const many = piece.pins.length > 1 && piece.pins.every(({ terminal }) => terminal === first.terminal);
  return many && piece.fixed !== undefined ? piece.pins.map((pin) => ({ ...piece, pins: [pin] })) : [piece];
}

function objectPiece(
  {
    className,
    object,
    uses,
  }: { readonly className: string; readonly object: string; readonly uses: readonly PinUse[] },
  views: readonly PinView[],
): Evidence | undefined {
  const pinOf = (number: number) => views.find((view) => numbersOf(view.pin).includes(number));
  const given = uses.filter((use) => use.action !== 'bus');
  const numbers = [...new Set(given.flatMap(({ pins }) => (pins.kind === 'known' ? pins.values : [])))];
  const known = partOfClass(className, numbers.length);
  const named = given.find((use) => use.pins.kind === 'known' && use.pins.values.length === 1);
  const base = {
    way: 'out' as const,
    name: object === className ? (named?.pinText ?? object) : object,
    words: wordsOf(object),
    remarks: [],
    calls: [...new Set(uses.map((use) => use.call))],
    pulledUp: uses.some((use) => use.modes?.includes('input-pullup') === true),
    duty: false,
    ...(known?.bus !== undefined && { bus: true as const }),
  };
  // In the order of the arguments; the method that begins names them all again.
  const pins = numbers.flatMap((number, index) => {
    const view = pinOf(number);
    const told = given.find(
      (use) => use.terminal && use.pins.kind === 'known' && use.pins.values.includes(number),
    );
    const only = known?.terminals.length === 1 && known.bus === undefined ? known.terminals[0] : undefined;
    const terminal = told?.terminal ?? known?.terminals[index] ?? only;
    return view && terminal !== '-'
      ? [{ pin: view.pin.id, ...(terminal !== undefined && { terminal }) }]
      : [];
  });
  if (known?.bus !== undefined) {
    for (const [terminal, role] of busTerminals[known.bus]) {
      const view = views.find(({ pin }) => pin.roles.includes(role));
      if (view && !pins.some(({ pin }) => pin === view.pin.id)) pins.push({ pin: view.pin.id, terminal });
    }
  }
  if (known === undefined) {
    return pins.length === 0 ? undefined : { ...base, pins, unknownClass: className };
  }
  const wired = pins.filter(({ terminal }) => terminal !== undefined);
  const fixed = { kind: known.kind, parameters: known.parameters, why: `an object of ${className}` };
  return wired.length === 0 ? undefined : { ...base, pins: wired, fixed };
}

const busTerminals: Readonly<Record<'i2c' | 'spi', readonly (readonly [string, string])[]>> = {
  i2c: [
    ['sda', 'i2c.sda'],
    ['scl', 'i2c.scl'],
  ],
  spi: [
    ['sck', 'spi.sck'],
    ['mosi', 'spi.mosi'],
    ['miso', 'spi.miso'],
  ],
};

function singlePiece(subject: Subject, view: PinView): Evidence {
  const uses = view.uses.filter((use) => !quiet.has(use.action));
  const names = namesOf(subject, view);
  const has = (...actions: readonly string[]) => uses.some((use) => actions.includes(use.action));
  const written = has('write', 'pwm') || view.modes.includes('output');
  const way: Way = has('tone') ? 'tone' : written ? 'out' : has('analog-read') ? 'analog' : 'in';
  const select = selectOf(subject, view, names);
  return {
    pins: select ?? [{ pin: view.pin.id }],
    ...(select && { bus: true as const, fixed: selected }),
    way,
    name: names[0] ?? uses[0]?.pinText ?? view.pin.id,
    words: [...new Set(names.flatMap(wordsOf))],
    remarks: remarksOf(subject, view).flatMap(wordsOf),
    calls: [...new Set(uses.map((use) => use.call))],
    pulledUp: view.modes.includes('input-pullup'),
    duty: has('pwm'),
  };
}

const selected = { kind: 'spi-device', parameters: undefined, why: 'a select line and the SPI bus' };

/** The pins of a device on the SPI bus, where a pin is named as its select line and the sketch opens the bus. */
function selectOf(subject: Subject, view: PinView, names: readonly string[]): Evidence['pins'] | undefined {
  const isSelect = names.some((name) =>
    /(^|_|[a-z])(cs|ss|csn|CS|SS|CSN|chipSelect|CHIP_SELECT)(_?pin)?$/i.test(name),
  );
  if (!isSelect || !subject.facts.uses.some(({ call }) => /^SPI\d?\./.test(call))) return undefined;
  const bus = busTerminals.spi.flatMap(([terminal, role]) => {
    const found = subject.pins.find(({ pin }) => pin.roles.includes(role));
    return found ? [{ pin: found.pin.id, terminal }] : [];
  });
  return [{ pin: view.pin.id, terminal: 'select' }, ...bus];
}

/** Names the sketch has for a pin, those for it alone before those of a whole list. */
function namesOf(subject: Subject, view: PinView): string[] {
  const numbers = numbersOf(view.pin);
  const own = subject.facts.pinNames.filter(({ pins }) => pins.some((pin) => numbers.includes(pin)));
  const names = own.sort((a, b) => a.pins.length - b.pins.length).map(({ name }) => name);
  const texts = view.uses
    .map((use) => use.pinText)
    .filter((text) => /^[a-z_]\w*$/i.test(text) && !/^A\d+$/.test(text));
  return [...new Set([...names, ...texts])].slice(0, 4);
}

/** Remarks at the end of the lines that define the pin's names. */
function remarksOf(subject: Subject, view: PinView): string[] {
  const numbers = numbersOf(view.pin);
  const places = subject.facts.pinNames
    .filter(({ pins }) => pins.length === 1 && pins.some((pin) => numbers.includes(pin)))
    .map(({ definition }) => definition);
  return places.flatMap(({ file, start }) => {
    const line = /^[^\r\n]*/.exec(subject.texts[file]?.slice(start) ?? '')?.[0] ?? '';
    return /\/\/(.*)$/.exec(line)?.[1] ?? /\/\*(.*?)\*\//.exec(line)?.[1] ?? [];
  });
}
