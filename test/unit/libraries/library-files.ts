/**
 * The library files for the tests, and a reader of single calls: it says which of the written arguments a call's facts
 * take for pins. It knows nothing of values, so that a table of calls can be compared with the headers by name.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CallFacts, ClassFacts, LibraryFacts } from '../../../server/src/base/platform';

/** A call as its file has it: where its facts come from stands beside them. */
export interface SourcedCall extends CallFacts {
  readonly source?: string;
  readonly fromMemory?: true;
}

export interface LibraryFile extends LibraryFacts {
  readonly format: number;
  readonly title: string;
  readonly source: string;
  readonly fromMemory?: true;
}

export const schemas = join(import.meta.dirname, '../../../hardware-schemas');
export const folder = join(schemas, 'libraries');
export const names = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.slice(0, -5));

export function readText(name: string): string {
  return readFileSync(join(folder, `${name}.json`), 'utf8');
}

export const libraries: readonly LibraryFile[] = names.map((name) => JSON.parse(readText(name)));
export const classes: readonly ClassFacts[] = libraries.flatMap((library) => library.classes);

/** Every call of a file with the words to find it by. */
export function callsOf(library: LibraryFacts): readonly (readonly [string, SourcedCall])[] {
  return [
    ...library.functions.map((call) => [call.name, call] as const),
    ...library.classes.flatMap((one) => [
      ...(one.constructors ?? []).map((call) => [`${one.name}()`, call] as const),
      ...one.methods.map((call) => [`${one.name}.${call.name}`, call] as const),
    ]),
  ];
}

/** The facts of a method, from the class or else from its bases. */
function methodFacts(name: string, method: string): readonly CallFacts[] {
  const one = classes.find((candidate) => candidate.name === name);
  const own = one?.methods.filter((call) => call.name === method) ?? [];
  if (own.length > 0) return own;
  return (one?.bases ?? []).flatMap((base) => methodFacts(base, method));
}

/**
 * The pins of a call with what is done to them, as in `trigger: device output, echo: device input`.
 * @param text `function(a, b)`, `Class(a, b)`, `Class.method(a, b)`, with `<a, b>` before the bracket where there is a
 *   template.
 * @throws Error where the text is none of these.
 */
export function pinsOfCall(text: string): string {
  const [, owner, name, template = '', list = ''] =
    /^(?:([*\w:]+)\.)?([*\w:]+)(?:<(.*)>)?\((.*)\)$/.exec(text) ?? [];
  if (name === undefined) throw new Error(`not a call: ${text}`);
  const split = (part: string) => (part === '' ? [] : part.split(/,\s*/));
  const given = split(list);
  const facts =
    owner === undefined
      ? [
          ...libraries.flatMap((library) => library.functions.filter((call) => call.name === name)),
          ...classes.flatMap((one) => (one.name === name ? (one.constructors ?? []) : [])),
        ]
      : methodFacts(owner, name);
  const found = facts
    .filter(
      ({ arguments: { min = 0, max = Number.POSITIVE_INFINITY } = {} }) =>
        given.length >= min && given.length <= max,
    )
    .flatMap((call) => {
      const what = [call.action, ...(call.mode === undefined ? [] : [call.mode])].join(' ');
      const pins = [
        ...(call.pin === undefined ? [] : given.slice(call.pin, call.pin + 1)),
        ...(call.pinsFrom === undefined ? [] : given.slice(call.pinsFrom)),
        ...(call.templatePin === undefined
          ? []
          : split(template).slice(call.templatePin, call.templatePin + 1)),
        ...(call.roles ?? []),
      ];
      return pins.map((pin) => `${pin}: ${what}`);
    });
  return found.join(', ');
}
