/** From a type as written to what a value of it is. */
import type { TypeName } from '../form/ast';
import type { Machine } from './machine';
import type { ClassModel, Site } from './model';
import type { NumberType } from './number-types';

export interface ResolvedType {
  readonly number?: NumberType;
  readonly model?: ClassModel;
  /** Name of a class that the sketch does not define. */
  readonly foreign?: string;
  readonly auto: boolean;
  readonly pointers: number;
  readonly arguments?: TypeName['arguments'];
}

const longestChain = 16;

/** Tries a name in the namespaces around a place, the innermost first. */
export function inNamespaces<T>(
  name: string,
  prefix: string,
  find: (qualified: string) => T | undefined,
): T | undefined {
  let at = prefix;
  while (at !== '') {
    const found = find(at + name);
    if (found !== undefined) return found;
    const cut = at.slice(0, -2).lastIndexOf('::');
    at = cut === -1 ? '' : at.slice(0, cut + 2);
  }
  return find(name.startsWith('::') ? name.slice(2) : name);
}

export function findClass(machine: Machine, name: string, site: Site): ClassModel | undefined {
  const owner = machine.frame?.callable.owner;
  const inner = owner === undefined ? undefined : machine.program.classes.get(`${owner.name}::${name}`);
  return inner ?? inNamespaces(name, site.prefix, (one) => machine.program.classes.get(one));
}

/** True for a name that is a type in the sketch or the language. */
export function isTypeName(machine: Machine, name: string, site: Site): boolean {
  const { program, types } = machine;
  return (
    types.named(name) !== undefined ||
    findClass(machine, name, site) !== undefined ||
    machine.tables.classNamed(name) !== undefined ||
    inNamespaces(name, site.prefix, (one) =>
      program.aliases.has(one) || program.enums.has(one) ? true : undefined,
    ) === true
  );
}

const nothing: ResolvedType = { foreign: 'void', auto: false, pointers: 0 };
const plain = new Map<NumberType, ResolvedType>();

/** The type of a plain number, made once: most names are of such a type. */
function plainNumber(number: NumberType): ResolvedType {
  let type = plain.get(number);
  if (type === undefined) {
    type = { number, auto: false, pointers: 0 };
    plain.set(number, type);
  }
  return type;
}

export function resolveType(machine: Machine, type: TypeName, site: Site): ResolvedType {
  let { pointers } = type;
  if (pointers === 0) {
    if (type.name === 'void') return nothing;
    const number = machine.types.named(type.name);
    if (number !== undefined) return plainNumber(number);
  }
  let at = type;
  let place = site;
  for (let step = 0; step < longestChain; step += 1) {
    const name = at.name.replace(/^(const|struct|class|enum) /, '');
    if (name === 'auto' || name === '') return { auto: true, pointers };
    const number = machine.types.named(name);
    if (number !== undefined) return { number, auto: false, pointers };
    const model = findClass(machine, name, place);
    const list = at.arguments === undefined ? {} : { arguments: at.arguments };
    if (model !== undefined) return { model, auto: false, pointers, ...list };
    const { program } = machine;
    const bound = machine.frame?.self?.types?.get(name);
    if (bound !== undefined && bound.type !== at) {
      pointers += bound.type.pointers;
      at = bound.type;
      place = bound.site;
      continue;
    }
    if (
      inNamespaces(name, place.prefix, (one) => (program.enums.has(one) ? true : undefined)) ||
      isInnerEnum(machine, name)
    ) {
      return { number: machine.types.int, auto: false, pointers };
    }
    const alias = inNamespaces(name, place.prefix, (one) => program.aliases.get(one));
    if (alias === undefined) {
      const word = /^\w+_t$/.test(name) ? undefined : name;
      return { auto: false, pointers, ...list, ...(word === undefined ? {} : { foreign: word }) };
    }
    pointers += alias.type.pointers;
    at = alias.type;
    place = alias.site;
  }
  return { auto: true, pointers };
}

function isInnerEnum(machine: Machine, name: string): boolean {
  const owner = machine.frame?.callable.owner;
  return owner !== undefined && machine.program.enums.has(`${owner.name}::${name}`);
}

/** Bytes of a number type, as sizeof counts them. */
export function bytesOf(type: NumberType | undefined): number | undefined {
  if (type === undefined) return undefined;
  return type.bits === 1 ? 1 : type.bits / 8;
}
