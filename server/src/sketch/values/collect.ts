/**
 * Reads all items of all files in the order a compiler would: decides conditional branches, notes macros, functions,
 * classes and types, and lists what has to be done before setup().
 */
import type { Platform } from '../../base/platform';
import type {
  ClassItem,
  ConditionalItem,
  Directive,
  FunctionItem,
  Item,
  Parameter,
  Place,
  Variable,
} from '../form/ast';
import { itemsOfUnit } from '../form/program';
import type { FileForm } from '../syntax/plain-tree';
import { Conditions } from './conditions';
import { enumMeant, wholeEnum } from './enum-lists';
import { expandedBody } from './expansion';
import { includedFile, onlyIncluded } from './includes';
import { Macros } from './macros';
import { type ClassModel, type Program, type Site, type Start, spanAt } from './model';
import type { Callable } from './value';

interface SourceFile {
  readonly file: string;
  readonly text: string;
  readonly form: FileForm;
}

/** Function-like heads by which the C library of the chip defines an interrupt handler. */
const handlerHeads = new Set(['ISR', 'SIGNAL', 'INTERRUPT']);

const mostNamespaces = 50;

class Collector {
  readonly macros = new Macros();
  readonly functions = new Map<string, Callable[]>();
  readonly prototypes = new Map<string, readonly Parameter[]>();
  readonly classes = new Map<string, ClassModel>();
  readonly aliases: Program['aliases'] = new Map();
  readonly enums = new Set<string>();
  readonly namespaces = new Set<string>();
  readonly headers = new Set<string>();
  readonly starts: Start[] = [];
  readonly handlers: Callable[] = [];
  private readonly decided = new Map<ConditionalItem, Map<number, number | undefined>>();
  private readonly conditions: Conditions;
  private readonly read = new Set<SourceFile>();
  private readonly loose: { readonly item: FunctionItem; readonly site: Site }[] = [];
  private order = 0;

  constructor(
    private readonly files: readonly SourceFile[],
    platform: Platform,
  ) {
    this.conditions = new Conditions(this.macros, platform);
    for (const [name, body] of Object.entries(platform.macros)) {
      const definition = { name, kind: 'board' as const };
      this.macros.add(name, -1, 0, { name, parameters: undefined, body, definition }, false);
    }
    // Access macros of avr-libc (avr/sfr_defs.h): a register as itself. Elsewhere nobody writes them.
    for (const name of ['_SFR_BYTE', '_SFR_WORD']) {
      const definition = { name, kind: 'board' as const };
      this.macros.add(name, -1, 0, { name, parameters: ['sfr'], body: 'sfr', definition }, false);
    }
  }

  all(): void {
    const included = onlyIncluded(this.files);
    for (const source of this.files) if (!included.has(source)) this.file(source);
    for (const { item, site } of this.loose) this.attachMethod(item, site);
  }

  branchOf(item: ConditionalItem, site: Site): number | undefined {
    return this.decided.get(item)?.get(site.order);
  }

  private file(source: SourceFile): void {
    if (this.read.has(source)) return;
    this.read.add(source);
    for (const { start, unit } of source.form.units) {
      const place = { file: source.file, base: start, prefix: '' };
      for (const item of itemsOfUnit(unit)) this.item(item, place, '', false);
    }
  }

  /** @param owner class that the item is a member of, with `::` behind it. */
  private item(item: Item, place: Omit<Site, 'order'>, owner: string, perhaps: boolean): void {
    this.order += 1;
    const site: Site = { ...place, order: this.order };
    switch (item.kind) {
      case 'define':
      case 'undef':
      case 'include':
        this.directive(item, site, perhaps);
        break;
      case 'conditional': {
        const chosen = this.decide(item, site);
        item.branches.forEach((branch, index) => {
          if (chosen !== undefined && chosen !== index) return;
          for (const inner of branch.items) this.item(inner, place, owner, perhaps || chosen === undefined);
        });
        break;
      }
      case 'function':
        for (const directive of item.directives) this.directive(directive, site, perhaps);
        this.function(item, site, owner);
        break;
      case 'class':
        this.class(item, site, owner, perhaps);
        break;
      case 'enum':
        this.enums.add(site.prefix + owner + item.name);
        this.starts.push({ kind: 'enum', item: wholeEnum(this, item, site), site, owner });
        break;
      case 'alias':
        this.aliases.set(site.prefix + owner + item.name, { type: item.type, site });
        break;
      case 'namespace': {
        const prefix = item.name === '' ? place.prefix : `${place.prefix}${item.name}::`;
        if (prefix !== '' && this.namespaces.size < mostNamespaces) this.namespaces.add(prefix);
        for (const inner of item.items) this.item(inner, { ...place, prefix }, owner, perhaps);
        break;
      }
      case 'variables':
        this.starts.push({ kind: 'variables', variables: item.variables, site, owner });
        break;
      case 'prototype': {
        const name = site.prefix + owner + (item.owner === '' ? '' : `${item.owner}::`) + item.variable.name;
        if (!this.prototypes.has(name)) this.prototypes.set(name, item.parameters);
        if (owner === '' && item.owner === '') {
          this.starts.push({ kind: 'loose', item, site });
        }
        break;
      }
      default: {
        const meant = item.kind === 'expression' ? enumMeant(this, item, site) : undefined;
        if (meant !== undefined) this.starts.push({ kind: 'enum', item: meant, site, owner });
        else if (!this.expanded(item, site, owner, perhaps)) this.starts.push({ kind: 'loose', item, site });
      }
    }
  }

  /** Reads what a macro declares where it stands by itself. */
  private expanded(item: Item, site: Site, owner: string, perhaps: boolean): boolean {
    if (item.kind !== 'expression' || item.expression.kind !== 'call') return false;
    const { callee } = item.expression;
    const macro = callee.kind === 'name' ? this.macros.find(callee.name, site, item.start)[0] : undefined;
    const text = macro?.parameters === undefined ? undefined : this.textAt(site, item.expression);
    if (macro === undefined || text === undefined) return false;
    const { items } = expandedBody(this.macros, text, site, item.start);
    if (items === undefined) return false;
    const { order: _, ...place } = site;
    const inside = { ...place, fixed: spanAt(site, item), fixedOffset: item.start, expansion: item };
    for (const inner of items) this.item(inner, inside, owner, perhaps);
    return true;
  }

  textAt(site: Site, { start, end }: Place): string | undefined {
    if (site.fixed !== undefined) return undefined;
    const source = this.files.find(({ file }) => file === site.file);
    return source?.text.slice(site.base + start, site.base + end);
  }

  private decide(item: ConditionalItem, site: Site): number | undefined {
    let chosen: number | undefined = -1;
    for (const [index, branch] of item.branches.entries()) {
      const answer =
        branch.condition === undefined || this.conditions.decide(branch.condition, site, item.start);
      if (answer === false) continue;
      chosen = answer === true ? index : undefined;
      break;
    }
    let places = this.decided.get(item);
    if (places === undefined) {
      places = new Map();
      this.decided.set(item, places);
    }
    places.set(site.order, chosen);
    return chosen;
  }

  private directive(item: Directive, site: Site, perhaps: boolean): void {
    if (item.kind === 'undef') this.macros.add(item.name, site.order, item.start, undefined, perhaps);
    else if (item.kind === 'define') {
      const { name, parameters, body } = item;
      const definition = { name, kind: 'macro' as const, span: spanAt(site, item.namePlace) };
      this.macros.add(name, site.order, item.start, { name, parameters, body, definition }, perhaps);
    } else if (item.kind === 'include') this.include(item.path, site, item.start);
    else {
      const chosen = this.decide(item, site);
      item.branches.forEach((branch, index) => {
        if (chosen !== undefined && chosen !== index) return;
        for (const inner of branch.directives) this.directive(inner, site, perhaps || chosen === undefined);
      });
    }
  }

  /** A header that is a file of the sketch is read where it is included. */
  private include(named: string, site: Site, offset: number): void {
    const body = this.macros.find(named, site, offset)[0]?.body.trim();
    const path = body === undefined || !/^["<]/.test(body) ? named : body.slice(1, -1);
    const source = includedFile(this.files, path, site.file);
    if (source !== undefined) this.file(source);
    else this.headers.add(path);
  }

  private function(item: FunctionItem, site: Site, owner: string): void {
    if (handlerHeads.has(item.name) && item.owner === '' && owner === '') {
      this.handlers.push({ item: { ...item, parameters: [] }, site });
      return;
    }
    if (item.owner !== '') {
      this.loose.push({ item, site });
      return;
    }
    const name = site.prefix + owner + item.name;
    const list = this.functions.get(name);
    if (list === undefined) this.functions.set(name, [{ item, site }]);
    else list.push({ item, site });
  }

  /** `void Probe::begin() {}`: a method where Probe is a class, else a function of a namespace. */
  private attachMethod(item: FunctionItem, site: Site): void {
    const model = this.classes.get(site.prefix + item.owner) ?? this.classes.get(item.owner);
    if (model === undefined) {
      const prefix = `${site.prefix}${item.owner}::`;
      this.functions.set(prefix + item.name, [{ item, site: { ...site, prefix } }]);
      return;
    }
    addMethod(model, { item, site: { ...site, prefix: model.site.prefix }, owner: model });
  }

  private class(item: ClassItem, site: Site, owner: string, perhaps: boolean): void {
    const name = site.prefix + owner + item.name;
    const fields: Variable[] = [];
    const model: ClassModel = {
      name,
      item,
      site,
      bases: item.bases,
      fields,
      methods: new Map(),
      prototypes: new Map(),
    };
    this.classes.set(name, model);
    const inner = `${owner}${item.name}::`;
    for (const member of this.flat(item.members, site, perhaps)) {
      if (member.kind === 'variables') {
        fields.push(...member.variables.filter((variable) => !variable.isStatic));
        const statics = member.variables.filter((variable) => variable.isStatic);
        if (statics.length > 0) this.item({ ...member, variables: statics }, site, inner, perhaps);
      } else if (member.kind === 'function' && member.owner === '') {
        for (const directive of member.directives) this.directive(directive, site, perhaps);
        addMethod(model, { item: member, site, owner: model });
      } else if (member.kind === 'prototype') {
        const { name: method } = member.variable;
        if (!model.prototypes.has(method)) model.prototypes.set(method, member.parameters);
      } else if (member.kind === 'enum' || member.kind === 'class' || member.kind === 'alias') {
        this.item(member, site, inner, perhaps);
      }
    }
  }

  /** The members of the branches that are compiled. */
  private flat(items: readonly Item[], site: Site, perhaps: boolean): Item[] {
    const members: Item[] = [];
    for (const item of items) {
      if (item.kind === 'conditional') {
        const chosen = this.decide(item, site);
        item.branches.forEach((branch, index) => {
          if (chosen === undefined || chosen === index)
            members.push(...this.flat(branch.items, site, perhaps));
        });
      } else if (item.kind === 'define' || item.kind === 'undef') this.directive(item, site, perhaps);
      else members.push(item);
    }
    return members;
  }
}

function addMethod(model: ClassModel, method: Callable): void {
  const list = model.methods.get(method.item.name);
  if (list === undefined) model.methods.set(method.item.name, [method]);
  else list.push(method);
}

/** Collects a program out of its files, the main file first. */
export function collectProgram(files: readonly SourceFile[], platform: Platform): Program {
  const collector = new Collector(files, platform);
  collector.all();
  return collector;
}
