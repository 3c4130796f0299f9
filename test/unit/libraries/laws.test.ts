/** What every library file has to keep to, beyond its schema, so that the interpreter need not doubt them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import { callsOf, classes, libraries, names, type SourcedCall, schemas } from './library-files';

const schemaText = readFileSync(join(schemas, 'library.schema.json'), 'utf8');
const schema = JSON.parse(schemaText);
const validate = new Ajv({ allErrors: true }).compile(schema);
const base = join(import.meta.dirname, '../../../server/src/base');
const allNames = new Set(classes.map((one) => one.name));

/** Members of an interface in a TypeScript text. */
function membersOf(text: string, name: string): readonly string[] {
  const [, body = ''] = new RegExp(`interface ${name} \\{\\n([\\s\\S]*?)\\n\\}`).exec(text) ?? [];
  return [...body.matchAll(/^ {2}readonly (\w+)\??:/gm)].map(([, member = '']) => member).sort();
}

/** Methods of a class and of its bases. */
function methodNames(name: string): readonly string[] {
  const one = classes.find((candidate) => candidate.name === name);
  return [...(one?.methods ?? []).map((call) => call.name), ...(one?.bases ?? []).flatMap(methodNames)];
}

/** Classes reached over bases, in the order of the walk; a class that reaches itself stands there twice. */
function ancestors(name: string, seen: readonly string[] = []): readonly string[] {
  if (seen.includes(name)) return [...seen, name];
  const bases = classes.find((one) => one.name === name)?.bases ?? [];
  return bases.reduce<readonly string[]>((all, one) => ancestors(one, all), [...seen, name]);
}

/** What is wrong with one call by itself. */
function faultsOf(call: SourcedCall): readonly string[] {
  const { pin, pinsFrom, templatePin, roles, pinsOf, noPin, value, handler } = call;
  const { min = 0, max = Number.POSITIVE_INFINITY } = call.arguments ?? {};
  const ways = [pin, pinsFrom, templatePin, roles, pinsOf].filter((way) => way !== undefined).length;
  const wrong: [boolean, string][] = [
    [ways > 1, 'gets its pins in two ways'],
    [call.pinIsArray === true && pin === undefined, 'has an array of pins and no pin argument'],
    [call.pinIsInterruptLine === true && pin === undefined, 'counts lines and has no pin argument'],
    [noPin !== undefined && pin === undefined && pinsFrom === undefined, 'says what is no pin of none'],
    [min > max, 'wants more arguments than it allows'],
    [Math.max(pin ?? 0, pinsFrom ?? 0, value ?? 0, handler ?? 0) >= max && max > 0, 'counts past its last'],
    [pin !== undefined && (pin === value || pin === handler), 'takes one argument for two things'],
    [call.mode !== undefined && ways === 0, 'sets the mode of no pin'],
    [['write', 'read', 'touch', 'dac', 'servo'].includes(call.action) && ways === 0, 'touches no pin'],
    [call.source !== undefined && call.fromMemory !== true && !/\.h/.test(call.source), 'names no header'],
  ];
  return wrong.filter(([is]) => is).map(([, what]) => what);
}

describe('the schema', () => {
  const platform = readFileSync(join(base, 'platform.ts'), 'utf8');
  const ours = ['fromMemory', 'source'];
  it('has the members of the types, and where they come from', () => {
    const call = Object.keys(schema.definitions.call.properties).sort();
    expect(call).toEqual([...membersOf(platform, 'CallFacts'), ...ours].sort());
    expect(Object.keys(schema.definitions.class.properties).sort()).toEqual(
      membersOf(platform, 'ClassFacts'),
    );
    const file = ['$schema', 'format', 'title', ...ours, ...membersOf(platform, 'LibraryFacts')].sort();
    expect(Object.keys(schema.properties).sort()).toEqual(file);
  });
  it('has the actions and modes of the types', () => {
    const text = readFileSync(join(base, 'pin-use.ts'), 'utf8').replaceAll(/\/\/.*$/gm, '');
    const [, actions = ''] = /type PinAction =([^;]*);/.exec(text) ?? [];
    const { action, mode } = schema.definitions.call.properties;
    expect(action.enum).toEqual([...actions.matchAll(/'([\w-]+)'/g)].map(([, one]) => one));
    const [, modes = ''] = /type PinMode = (.*);/.exec(text) ?? [];
    expect([...mode.enum].sort()).toEqual([...modes.matchAll(/'([\w-]+)'/g)].map(([, one]) => one).sort());
  });
  it('refuses what is not agreed', () => {
    const file = (call: object) => ({
      format: 1,
      id: 'x',
      title: 'x',
      source: 'x',
      functions: [call],
      classes: [],
    });
    expect(validate(file({ name: 'f', action: 'read', pin: 0 }))).toBe(true);
    expect(validate(file({ name: 'f', action: 'read', pin: -1 }))).toBe(false);
    expect(validate(file({ name: 'f', action: 'blink', pin: 0 }))).toBe(false);
    expect(validate(file({ name: 'f', action: 'bus', roles: ['radio.tx'] }))).toBe(false);
    expect(validate(file({ name: 'f', action: 'bus', roles: ['i2c'] }))).toBe(false);
    expect(validate(file({ name: 'f', action: 'read', pin: 0, pins: 1 }))).toBe(false);
  });
});

describe('the library files', () => {
  it('cover the libraries people use', () => {
    const own = /^(core|wire$|spi$|eeprom$|keyboard$|mouse$)/;
    expect(names.filter((name) => !own.test(name)).length).toBeGreaterThanOrEqual(45);
  });
  it('name every class once', () => {
    const seen = classes.map((one) => one.name);
    expect(seen.filter((name, index) => seen.indexOf(name) !== index)).toEqual([]);
  });
  it('name bases that are there, and none that comes back to itself', () => {
    const missing = classes.flatMap((one) => (one.bases ?? []).filter((name) => !allNames.has(name)));
    expect(missing).toEqual([]);
    const rings = classes.filter((one) => {
      const all = ancestors(one.name);
      return new Set(all).size !== all.length;
    });
    expect(rings.map((one) => one.name)).toEqual([]);
  });
  it('give an object one class on every board', () => {
    const makers = new Map<string, (typeof classes)[number][]>();
    for (const one of classes) {
      for (const object of one.objects ?? []) makers.set(object, [...(makers.get(object) ?? []), one]);
    }
    const doubtful = [...makers].filter(([, list]) => {
      if (list.length === 1) return false;
      const macros = list.flatMap((one) => one.macros ?? ['']);
      return macros.includes('') || new Set(macros).size !== macros.length;
    });
    expect(doubtful.map(([object]) => object)).toEqual([]);
  });
});

describe.each(libraries)('$id', (library) => {
  it('keeps to the schema, under its own name', () => {
    validate(library);
    expect(validate.errors).toBeNull();
    expect(names).toContain(library.id);
  });
  it('says where it comes from', () => {
    expect(library.source).toMatch(/\w\.h(pp)?\b/);
    // A commit, or a version, or the open word that nobody looked.
    const dated = / at [0-9a-f]{7}\b|\b\d+\.(\d+|x)\b/.test(library.source);
    const open = /from memory|read in a copy of the header/.test(library.source);
    expect([dated, open]).toContain(true);
    if (library.fromMemory === true) expect(library.source).toMatch(/from memory/);
    // The core's own calls need no header; everything else is brought by one.
    if (!library.id.startsWith('core')) expect(library.headers?.length).toBeGreaterThan(0);
  });
  it('has calls that make sense by themselves', () => {
    const wrong = callsOf(library).flatMap(([where, call]) =>
      faultsOf(call).map((what) => `${where} ${what}`),
    );
    expect(wrong).toEqual([]);
  });
  it('says nothing twice', () => {
    const texts = callsOf(library).map(([where, call]) => `${where} ${JSON.stringify(call)}`);
    expect(texts.filter((text, index) => texts.indexOf(text) !== index)).toEqual([]);
  });
  it('takes pins of calls that are there', () => {
    for (const one of library.classes) {
      const known = [...methodNames(one.name), ...(one.constructors?.length ? [one.name] : [])];
      for (const call of one.methods) {
        if (call.pinsOf !== undefined) expect(known, `${one.name}.${call.name}`).toContain(call.pinsOf);
      }
      for (const call of one.constructors ?? []) expect(call.name).toBe(one.name);
    }
    const own = library.functions.map((call) => call.name);
    for (const call of library.functions) if (call.pinsOf !== undefined) expect(own).toContain(call.pinsOf);
  });
});
