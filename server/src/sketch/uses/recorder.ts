/**
 * Gathers what the analysis meets into pin uses: one for each call expression and call path, with everything that its
 * rounds and passes did.
 */

import type { Amount, PinMode, PinUse } from '../../base/pin-use';
import type { CallFacts, Platform } from '../../base/platform';
import type { Span } from '../../base/span';
import type { MetUse, Path, UseDetails, UseSink } from '../values/machine';
import { type Definition, join, joinOrigins, single, type Value } from '../values/value';
import type { Texts } from './texts';

interface Gathered {
  details: UseDetails;
  readonly facts: CallFacts;
  readonly path: Path;
  readonly order: number;
  pin: Value | undefined;
  value: Value | undefined;
  /** Pins that every run reaches here. */
  readonly certainPins: Set<number>;
  /** Reached by every run, with a pin that is not known. */
  certain: boolean;
}

export interface OriginUse {
  readonly definition: Definition;
  readonly pins: readonly number[];
}

const noPins: Amount = { kind: 'known', values: [] };

/** Stands until the use is described, which is at once. */
const undescribed: UseDetails = {
  call: '',
  span: { file: '', start: 0, end: 0 },
  callSpan: { file: '', start: 0, end: 0 },
  valueSpan: undefined,
  function: '',
  phase: 'setup',
};

export class Recorder implements UseSink {
  private readonly gathered: Gathered[] = [];
  private readonly byPath = new Map<Path, Map<object, Gathered[]>>();

  constructor(
    private readonly platform: Platform,
    private readonly texts: Texts,
  ) {}

  meet(use: MetUse): 'first' | 'more' | 'same' {
    const list = this.listOf(use);
    // What is known is kept beside what is not: an entry that is unknown must not hide the others of its array.
    const isKnown = use.pin?.kind === 'known';
    let here = list.find((one) => one.facts === use.facts && (one.pin?.kind === 'known') === isKnown);
    let news: 'first' | 'more' | 'same' = 'same';
    if (here === undefined) {
      const { facts, path, pin, value } = use;
      const order = this.gathered.length;
      here = { details: undescribed, facts, path, order, pin, value, certainPins: new Set(), certain: false };
      list.push(here);
      this.gathered.push(here);
      news = 'first';
    } else {
      const pin = here.pin === undefined || use.pin === undefined ? here.pin : join(here.pin, use.pin);
      if (pin !== here.pin && sizeOf(pin) !== sizeOf(here.pin)) news = 'more';
      here.pin = pin;
      here.value =
        here.value === undefined || use.value === undefined ? use.value : join(here.value, use.value);
    }
    if (use.certain) {
      here.certain = true;
      const pin = use.pin === undefined ? undefined : single(use.pin);
      if (pin !== undefined) here.certainPins.add(pin);
    }
    return news;
  }

  describe(details: UseDetails): void {
    const last = this.gathered[this.gathered.length - 1];
    if (last !== undefined) last.details = details;
  }

  private listOf({ path, node }: MetUse): Gathered[] {
    let nodes = this.byPath.get(path);
    if (nodes === undefined) {
      nodes = new Map();
      this.byPath.set(path, nodes);
    }
    let list = nodes.get(node);
    if (list === undefined) {
      list = [];
      nodes.set(node, list);
    }
    return list;
  }

  /** All uses in the order of execution. */
  uses(): PinUse[] {
    return this.gathered.map((one) => this.useOf(one));
  }

  /** Names that gave pin numbers directly, each time one did. */
  originUses(): OriginUse[] {
    const found: OriginUse[] = [];
    for (const { pin } of this.gathered) {
      if (pin?.kind !== 'known') continue;
      for (const definition of pin.origins.slice(0, pin.direct)) found.push({ definition, pins: pin.values });
    }
    return found;
  }

  private useOf(gathered: Gathered): PinUse {
    const { details: first, facts, path, order, pin, value } = gathered;
    const pins = pin === undefined ? noPins : amountOf(pin);
    const how = pin === undefined ? undefined : this.howOf(pin, first.span);
    const modes = this.modesOf(facts, value);
    const lines = pin?.kind === 'known' || pin?.kind === 'unknown' ? pin.lines : undefined;
    const certain =
      pins.kind === 'known' && pin !== undefined
        ? pins.values.every((one) => gathered.certainPins.has(one))
        : gathered.certain;
    return {
      call: first.call,
      action: facts.action,
      pins,
      ...(value === undefined ? {} : { value: amountOf(value) }),
      ...(facts.valueIsAddress === undefined ? {} : { valueIsAddress: facts.valueIsAddress }),
      ...(modes === undefined ? {} : { modes }),
      span: first.span,
      callSpan: first.callSpan,
      ...(first.valueSpan === undefined ? {} : { valueSpan: first.valueSpan }),
      ...(lines === undefined ? {} : { lines }),
      ...(facts.drivesOnly === undefined ? {} : { drivesOnly: facts.drivesOnly }),
      ...(facts.mayStayOpen === undefined ? {} : { mayStayOpen: facts.mayStayOpen }),
      ...(first.terminal === undefined ? {} : { terminal: first.terminal }),
      pinText: pin === undefined ? '' : this.pinTextOf(pin, first.span),
      origins: pin === undefined ? [] : originsOf(pin),
      ...(how === undefined ? {} : { how }),
      function: first.function,
      path: path.steps,
      phase: first.phase,
      order,
      certain,
    };
  }

  private modesOf(facts: CallFacts, value: Value | undefined): readonly PinMode[] | undefined {
    if (facts.mode !== undefined) return [facts.mode];
    if (facts.action !== 'mode') return undefined;
    if (value?.kind !== 'known') return [];
    const { modes } = this.platform;
    return [...new Set(value.values.map((one) => modes[one]).filter((mode) => mode !== undefined))];
  }

  /** A global constant that holds the number, or the number; where it is unknown, the argument as written. */
  private pinTextOf(pin: Value, span: Span): string {
    if (pin.kind !== 'known') return this.texts.of(span);
    if (pin.values.length === 1 && pin.renumbered !== true) {
      const constant = pin.origins.slice(0, pin.direct).find(isGlobalConstant);
      if (constant !== undefined) return constant.qualified ?? constant.name;
    }
    return pin.values.join(', ');
  }

  /** "7, from `beacon`, line 3" */
  private howOf(pin: Value, argument: Span): string | undefined {
    if (pin.kind !== 'known' || pin.origins.length === 0) return undefined;
    const numbers = pin.values.map(String);
    const last = numbers.pop() ?? '';
    const text = numbers.length === 0 ? last : `${numbers.join(', ')} or ${last}`;
    const written = this.texts.of(argument);
    const from = pin.origins.slice(0, 3).map((definition, index) => {
      const word = index < pin.direct && pin.renumbered !== true ? 'from' : 'reckoned from';
      const { span, name } = definition;
      return span === undefined
        ? `${word} the board's \`${name}\``
        : `${word} \`${elementOf(name, written)}\`, line ${this.texts.line(span)}`;
    });
    return `${text}, ${from.join(', ')}`;
  }
}

/** An array's name with the index, where the argument is an element of it as it stands: `pins[2]`. */
function elementOf(name: string, written: string): string {
  const plain = /^\w+(?:\[[\w+\-* ]+\])+$/.test(written) && written.length <= 40;
  return plain && written.startsWith(`${name}[`) ? written : name;
}

/** How many pins a value stands for; none where it is unknown. */
function sizeOf(value: Value | undefined): number {
  return value?.kind === 'known' ? value.values.length : 0;
}

function originsOf(pin: Value): readonly Span[] {
  if (pin.kind !== 'known') return [];
  const spans: Span[] = [];
  for (const { span } of joinOrigins(pin.origins, [])) if (span !== undefined) spans.push(span);
  return spans;
}

/** Holds the same number wherever setup() could name it. */
function isGlobalConstant(definition: Definition): boolean {
  const { kind, cell } = definition;
  if (kind === 'macro' || kind === 'board') return true;
  if (kind === 'entry') return definition.scoped !== true;
  return kind === 'global' && cell !== undefined && !cell.written && cell.value.kind === 'known';
}

function amountOf(value: Value): Amount {
  if (value.kind === 'known') return { kind: 'known', values: value.values };
  if (value.kind === 'unknown') {
    const { reason, span } = value;
    return { kind: 'unknown', reason, ...(span === undefined ? {} : { span }) };
  }
  return { kind: 'unknown', reason: 'it is not a number' };
}
