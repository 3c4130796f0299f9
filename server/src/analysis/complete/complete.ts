/** What can be written where the cursor is: keys, kinds, choices, wire ends, colours, values; pins in the sketch. */
import type { BoardPin, Build } from '../../base/build';
import { freePins, manifestKeys, type WritingPlace, writingPlaceAt } from '../../hardware';
import { rules } from '../../rules/generated/registry';
import type { Subject } from '../../rules/subject';
import type { OpenLibrary } from '../library';
import { wireColours } from './colours';

export interface Completion {
  readonly label: string;
  /** In a word or two, beside the label. */
  readonly detail: string;
  readonly about?: string;
  readonly kind: 'key' | 'value' | 'pin' | 'part' | 'colour' | 'snippet';
  /** What is written for the characters from `start` to `end`. */
  readonly text: string;
  /** `text` holds tab stops in the form of the protocol's snippets: a number and a word. */
  readonly snippet: boolean;
  readonly start: number;
  readonly end: number;
}

/**
 * @param text The manifest as it stands, half typed or not.
 * @param build The last good build, for names and pins; absent where there never was one.
 */
export function completeManifest(
  library: OpenLibrary,
  text: string,
  offset: number,
  build: Build | undefined,
  subject: Subject | undefined,
): readonly Completion[] {
  const place = writingPlaceAt(text, offset);
  if (place.isKey) return keysAt(library, text, place);
  const [section, which, key] = place.path;
  const value = (label: string, detail: string, about?: string, kind: Completion['kind'] = 'value') =>
    write(place, label, detail, kind, about);
  if (section === 'board' && place.path.length === 1) {
    return library.hardware.boardIds.map((id) =>
      value(id, library.hardware.board(id, '')?.value?.title ?? ''),
    );
  }
  if (section === 'severity')
    return ['error', 'warning', 'information', 'hint', 'off'].map((word) => value(word, ''));
  if (section === 'stock' && which === 'resistors') {
    return ['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192'].map((word) => value(word, 'preferred numbers'));
  }
  if (section === 'policy') return ['recommended', 'absolute', '10 mA'].map((word) => value(word, ''));
  if (section === 'parts' && key === 'kind') {
    return [...library.hardware.partKinds.keys()].map((kind) => {
      const known = library.hardware.partKinds.get(kind);
      return value(kind, known?.title ?? '', known?.about);
    });
  }
  if (section === 'parts' && typeof which === 'string' && typeof key === 'string') {
    return parameterValues(library, text, which, key, build, value);
  }
  if (section !== 'wires') return [];
  if (key === 'colour' || key === 'colours')
    return wireColours.map((word) => value(word, '', undefined, 'colour'));
  if (key === 'from' || key === 'to' || key === 'path') return endsAt(place, key === 'path', build, subject);
  return typeof which === 'number' && key === undefined ? runs(place) : [];
}

function write(
  { start, end }: WritingPlace,
  label: string,
  detail: string,
  kind: Completion['kind'],
  about?: string,
): Completion {
  const more = about === undefined || about === '' ? {} : { about };
  return { label, detail, kind, text: JSON.stringify(label), snippet: false, start, end, ...more };
}

/** The kind that the text says of a part, also where the build has not got it yet. */
function kindIn(text: string, part: string): string | undefined {
  const entry = text.slice(Math.max(0, text.indexOf(`${JSON.stringify(part)}`)));
  return /^"[^"]*"\s*:\s*\{[^}]*?"kind"\s*:\s*"([^"]*)"/.exec(entry)?.[1];
}

function keysAt(library: OpenLibrary, text: string, place: WritingPlace): readonly Completion[] {
  const path = place.path.slice(0, -1);
  const [section, part] = path;
  const make = (key: string, detail: string, about: string): Completion => ({
    ...write(place, key, detail, 'key', about),
    text: place.hasColon ? JSON.stringify(key) : `${JSON.stringify(key)}: `,
  });
  if (section === 'severity') return rules.map((rule) => make(rule.id, rule.severity, rule.title));
  if (section === 'parts' && path.length === 1) return place.hasColon ? [] : partSnippets(place);
  const keys = manifestKeys(path).map(({ key, about }) => make(key, '', about));
  if (section !== 'parts' || typeof part !== 'string') return keys;
  const kind = library.hardware.partKinds.get(kindIn(text, part) ?? '');
  const own = Object.entries(kind?.parameters ?? {}).map(([key, parameter]) =>
    make(key, parameter.choices?.join(', ') ?? parameter.unit ?? '', parameter.about ?? ''),
  );
  return [...own, ...keys];
}

function partSnippets({ start, end }: WritingPlace): readonly Completion[] {
  const snippet = snippetAt(start, end);
  return [
    snippet('part', 'a part of any kind', '"<1:name>": { "kind": "<2:led>" }'),
    snippet('lamp', 'a lamp', '"<1:lamp>": { "kind": "led", "colour": "<2:red>" }'),
    snippet('resistor', 'a resistor', '"<1:R1>": { "kind": "resistor", "value": "<2:330>" }'),
    snippet('button', 'a push-button', '"<1:button>": { "kind": "push-button" }'),
  ];
}

function runs({ start, end, typed }: WritingPlace): readonly Completion[] {
  if (typed !== '') return [];
  const snippet = snippetAt(start, end);
  return [
    snippet(
      'wire',
      'from one end to another',
      '{ "from": "<1:D2>", "to": "<2:GND>", "colour": "<3:black>" }',
    ),
    snippet(
      'run through a lamp',
      'pin, resistor, lamp, ground',
      '{ "path": ["<1:D2>", "<2:R1>", "<3:lamp>", "GND"], "colours": ["red", "red", "black"] }',
    ),
    snippet(
      'run through a button',
      'pin, button, ground',
      '{ "path": ["<1:D2>", "<2:button>", "GND"], "colours": ["white", "black"] }',
    ),
  ];
}

function parameterValues(
  library: OpenLibrary,
  text: string,
  part: string,
  key: string,
  build: Build | undefined,
  value: (label: string, detail: string, about?: string) => Completion,
): readonly Completion[] {
  const kind = kindIn(text, part) ?? build?.parts.find(({ id }) => id === part)?.kind ?? '';
  const parameter = library.hardware.partKinds.get(kind)?.parameters?.[key];
  if (parameter?.choices)
    return parameter.choices.map((choice) => value(choice, choice === parameter.default ? 'usual' : ''));
  if (parameter?.type === 'flag')
    return [true, false].map((flag) => ({ ...value(String(flag), ''), text: String(flag) }));
  if (kind !== 'resistor' || key !== 'value') return [];
  return (build?.stock.resistors ?? []).map((ohms) => value(ohmsText(ohms), 'ohm, from stock'));
}

function ohmsText(ohms: number): string {
  const [scale, letter] = ohms >= 1e6 ? [1e6, 'M'] : ohms >= 1000 ? [1000, 'k'] : [1, ''];
  return `${Number((ohms / scale).toPrecision(6))}${letter}`;
}

/** Ends for a wire: free pins first, with what each can do; then parts and their terminals; then the pins in use. */
function endsAt(
  place: WritingPlace,
  inPath: boolean,
  build: Build | undefined,
  subject: Subject | undefined,
): readonly Completion[] {
  if (build === undefined) return [];
  const free = new Set(freePins(build).map(({ id }) => id));
  const pin = (each: BoardPin) => write(place, each.id, pinWords(each, subject), 'pin');
  const ordered = [...build.board.pins.filter(({ id }) => free.has(id)), ...build.board.pins.filter(isRail)];
  const used = build.board.pins.filter((each) => !free.has(each.id) && !isRail(each));
  const parts = build.parts.flatMap((part) => [
    ...(inPath && part.series ? [write(place, part.id, part.title, 'part')] : []),
    ...part.terminals.map(({ id, tell }) => write(place, `${part.id}.${id}`, part.title, 'part', tell)),
  ]);
  return [...ordered.map(pin), ...parts, ...used.map(pin)];
}

const isRail = ({ type }: BoardPin) => type === 'supply' || type === 'ground';

/** "PWM, interrupt 0" of a free pin, the part of a wired one. */
export function pinWords(pin: BoardPin, subject: Subject | undefined): string {
  const view = subject?.pins.find((each) => each.pin.id === pin.id);
  const [part] = view?.net.terminals ?? [];
  if (part && !isRail(pin)) return `wired to ${part.part}`;
  const can = [
    pin.pwm !== undefined && 'PWM',
    pin.adc !== undefined && 'analog input',
    pin.interrupt !== undefined && `interrupt ${pin.interrupt}`,
    ...pin.roles,
  ].filter((word): word is string => typeof word === 'string');
  return can.join(', ');
}

/** Makes snippets; `<1:word>` in their text is the first place to fill in. */
function snippetAt(start: number, end: number) {
  return (label: string, detail: string, text: string): Completion => ({
    label,
    detail,
    kind: 'snippet',
    text: text.replace(/<(\d):([^>]*)>/g, (_, number, word) => `\${${number}:${word}}`),
    snippet: true,
    start,
    end,
  });
}
