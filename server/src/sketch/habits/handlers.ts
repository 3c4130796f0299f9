/** Which bodies an interrupt runs, and what they do there. */
import type { HandlerHabit } from '../../base/habit';
import type { FunctionItem } from '../form/ast';
import type { Bodies, Body } from './bodies';

export interface HandlerFound {
  readonly habit: HandlerHabit;
  readonly body: Body;
  /** It and all it calls. */
  readonly reached: ReadonlySet<Body>;
}

// Attributes that put code into memory the chip reaches while its flash is busy: cores for ESP8266 and ESP32.
const attribute = /\b(?:IRAM_ATTR|ICACHE_RAM_ATTR)\b/;
const looks =
  /\b(?:millis|micros|delay\w*|_delay_\w+|digitalRead\w*|PIN[A-L]|TCNT\d\w?|gpio_get\w*|esp_timer_get_time)\b/;

export function handlersOf(bodies: Bodies): HandlerFound[] {
  const attached = new Map<FunctionItem, { body: Body; at: HandlerHabit['attached'][number][] }>();
  for (const from of bodies.all) {
    for (const { handler, start, end } of from.notes.attaches) {
      const at = bodies.span(from, { start, end });
      const named = handler.kind === 'unary' && handler.operator === '&' ? handler.operand : handler;
      const lambda =
        named.kind === 'lambda' ? bodies.bodyOf({ item: named.definition, site: from.site }) : undefined;
      const found = lambda ?? (named.kind === 'name' ? bodies.of(last(named.name)).at(0) : undefined);
      if (found === undefined) continue;
      const known = attached.get(found.item);
      if (known === undefined) attached.set(found.item, { body: found, at: [at] });
      else known.at.push(at);
    }
  }
  const own = bodies.program.handlers.flatMap((callable) => bodies.bodyOf(callable) ?? []);
  if (own.length === 0 && attached.size === 0) return [];
  const marked = bodies.hasText(attribute);
  const hidden = marked && bodies.hasText(/^[ \t]*#[ \t]*define\b.*\b(?:IRAM_ATTR|ICACHE_RAM_ATTR)\b/m);
  const handlers = [...attached.values()].map(({ body, at }) => {
    const { item } = body;
    const inMemory = hidden || (marked && isMarked(bodies, item, body)) || bodies.hasText(/\.iram/);
    return found(bodies, body, item.name, at, inMemory, item.name !== '');
  });
  for (const body of own) {
    const { namePlace, bodyStart } = body.item;
    const head = bodies.textOf(body.site, { start: namePlace.start, end: (bodyStart ?? namePlace.end) - 1 });
    handlers.push(found(bodies, body, head.replace(/\s+/g, '').replace(/,.*\)$/, ')'), [], true, false));
  }
  return handlers;
}

function last(name: string): string {
  return name.slice(name.lastIndexOf(':') + 1);
}

/** The word stands before the name, in a definition or a prototype, or behind the parameters of the definition. */
function isMarked(bodies: Bodies, item: FunctionItem, body: Body): boolean {
  if (item.name === '') return attribute.test(bodies.textOf(body.site, item));
  const name = item.name.replace(/\$/g, '\\$&');
  return (
    bodies.hasText(new RegExp(`\\b(?:IRAM_ATTR|ICACHE_RAM_ATTR)\\b[\\s\\w*&:]*\\b${name}\\s*\\(`)) ||
    bodies.hasText(new RegExp(`\\b${name}\\s*\\([^()]*\\)\\s*(?:IRAM_ATTR|ICACHE_RAM_ATTR)\\b`))
  );
}

function found(
  bodies: Bodies,
  body: Body,
  name: string,
  attached: HandlerHabit['attached'],
  inMemory: boolean,
  canMark: boolean,
): HandlerFound {
  const reached = bodies.closure([body]);
  const span = bodies.span(body, body.item.namePlace);
  const counts: HandlerHabit['counts'][number][] = [];
  for (const one of reached) {
    for (const set of one.notes.sets) {
      const isLocal = one.item.locals.includes(set.name) && !isStatic(one, set.name);
      if (!set.counts || isLocal) continue;
      counts.push({ name: set.name, function: one.name, span: bodies.span(one, set) });
    }
  }
  const habit: HandlerHabit = {
    kind: 'handler',
    name,
    span,
    body: bodies.span(body, body.item),
    attached,
    inMemory,
    ...(canMark && { attributeAt: span.start }),
    counts,
    looksTwice: [...reached].some((one) => looks.test(bodies.textOf(one.site, one.item))),
  };
  return { habit, body, reached };
}

export function isStatic(body: Body, name: string): boolean {
  return body.notes.variables.some((variable) => variable.name === name && variable.isStatic);
}
