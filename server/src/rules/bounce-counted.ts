/** A mechanical contact is counted edge by edge, and it bounces. */

import type { Span } from '../base/span';
import { defineRule } from './rule';
import type { PinView, Subject } from './subject';
import { habitsOf } from './support/habits';
import { regionOf, relatedOf } from './support/views';

interface Detail {
  readonly pin: string;
  readonly part: string;
  readonly name: string;
  readonly handler: boolean;
}

export default defineRule<Detail>({
  id: 'bounce-counted',
  title: 'Edges of a mechanical contact are counted as they come.',
  why: 'A contact bounces for some milliseconds when it closes and opens: one press counts as several.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    if (subject.facts.damaged) return;
    const told = new Set<string>();
    for (const { view, name, span, handler } of counted(subject)) {
      const contact = contactAt(subject, view);
      if (contact === undefined || told.has(view.pin.id)) continue;
      told.add(view.pin.id);
      const use = view.uses[0];
      yield {
        identity: view.pin.id,
        span,
        related: use ? relatedOf(view, use) : [],
        detail: { pin: view.pin.id, part: contact, name, handler },
      };
    }
  },
  message: ({ pin, part, name, handler }) =>
    `${part} at ${pin} bounces, and each bounce changes ${name}: one press counts as several. ` +
    (handler
      ? 'Leave out what comes within 20 ms of the last one by millis(), or put a capacitor across the contact.'
      : 'Take a change only when it has lasted for 20 ms, or put a capacitor across the contact.'),
  examples: [
    counter('a button counted in a handler', 'uno-r3', 'push-button', 'presses = presses + 1;', 'presses'),
    counter('one that adds in the short way', 'mega-2560', 'tact-switch', 'presses++;', 'presses'),
    counter('a handler that turns a flag over', 'uno-r3', 'push-button', 'presses = !presses;'),
    counter(
      'a handler that looks at the clock',
      'uno-r3',
      'push-button',
      'if (millis() - last > 20) presses = presses + 1;',
    ),
    counter('an optical sensor', 'uno-r3', 'open-collector-sensor', 'presses = presses + 1;'),
    counter(
      'a capacitor across the contact',
      'nano-v3',
      'push-button',
      'presses = presses + 1;',
      undefined,
      true,
    ),
  ],
});

interface Counted {
  readonly view: PinView;
  readonly name: string;
  readonly span: Span;
  readonly handler: boolean;
}

function* counted(subject: Subject): Iterable<Counted> {
  const { uses } = subject.facts;
  const at = (span: Span, action: string) => {
    const pins = uses.flatMap((use) =>
      use.action === action &&
      use.callSpan.file === span.file &&
      use.callSpan.start === span.start &&
      use.pins.kind === 'known'
        ? use.pins.values
        : [],
    );
    const [pin, ...others] = new Set(pins);
    return others.length > 0
      ? undefined
      : subject.pins.find((view) => pin !== undefined && view.pin.number === pin);
  };
  for (const { attached, counts, looksTwice } of habitsOf(subject, 'handler')) {
    const [count] = counts;
    if (looksTwice || !count) continue;
    for (const span of attached) {
      const view = at(span, 'interrupt');
      if (view) yield { view, name: count.name, span: count.span, handler: true };
    }
  }
  // Any wait or look at the clock in loop may be what lets the contact come to rest.
  if (uses.some((use) => use.phase === 'loop' && (use.action === 'wait' || use.action === 'clock'))) return;
  for (const { name, span, read } of habitsOf(subject, 'counts-edges')) {
    const view = at(read, 'read');
    if (view) yield { view, name, span, handler: false };
  }
}

/** The part whose contact alone makes the level of a pin; undefined where a capacitor or a circuit smooths it. */
function contactAt(subject: Subject, view: PinView): string | undefined {
  const region = regionOf(subject, view.pin.id);
  if (!region || region.limit !== undefined || view.wires.length === 0) return undefined;
  const own = region.elements.filter(({ onBoard }) => !onBoard);
  if (!own.every(({ primitive: { type } }) => type === 'switch' || type === 'resistor')) return undefined;
  const contacts = own.filter(
    ({ primitive }) => primitive.type === 'switch' && primitive.operatedBy === undefined,
  );
  const [contact, ...others] = new Set(contacts.map(({ part }) => part));
  return others.length > 0 ? undefined : contact;
}

function counter(about: string, board: string, kind: string, line: string, wrong?: string, soft = false) {
  const mark =
    wrong === undefined
      ? ''
      : `\n//             ${'^'.repeat(line.length - 1)} bounce-counted: each bounce changes ${wrong}`;
  const sensor = kind === 'open-collector-sensor';
  const wires = sensor
    ? `{ "from": "D2", "to": "gate.signal" },
    { "from": "5V", "to": "gate.+" },
    { "from": "GND", "to": "gate.-" }`
    : `{ "path": ["D2", "gate", "GND"] }${soft ? ',\n    { "path": ["gate.1", "C1", "gate.2"] }' : ''}`;
  return {
    about,
    build: `
//- sketch.ino
volatile byte presses = 0;
unsigned long last = 0;
void count() { ${line} }${mark}
void setup() {
  pinMode(2, INPUT_PULLUP);
  attachInterrupt(digitalPinToInterrupt(2), count, FALLING);
}
void loop() { if (presses > 9) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "${board}",
  "parts": { "gate": { "kind": "${kind}" }${soft ? ', "C1": { "kind": "capacitor", "value": "100n" }' : ''} },
  "wires": [
    ${wires}
  ]
}
`,
  };
}
