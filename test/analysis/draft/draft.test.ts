/** The draft on texts of every make, the board it is for, and what can be done about a guess. */
import { beforeAll, describe, expect, test } from 'vitest';
import { applyEdits } from '../../../server/src/base/span';
import { type Desk, openDesk } from './desk';

let desk: Desk;
beforeAll(async () => {
  desk = await openDesk();
});

const lamp = `const int beacon = 7;
void setup() { pinMode(beacon, OUTPUT); }
void loop() { digitalWrite(beacon, HIGH); }
`;

const drafted = (sketch: string, options?: { readonly text?: string; readonly board?: string }) => {
  const draft = desk.draft(sketch, options);
  if (!draft.ok) throw new Error(draft.why);
  return draft;
};

describe('a bare sketch', () => {
  test('gets a lamp with its resistor, each guess marked', () => {
    expect(drafted(lamp, { board: 'nano-v3' }).text).toBe(`{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": "E12" },
  "parts": {
    "beacon": { "kind": "led" }, // guessed: the word "beacon", pinMode, digitalWrite
    "R1": { "kind": "resistor", "value": "270" } // guessed: for beacon
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND@left.14"], "colours": ["red", "red", "black"] }
  ]
}
`);
  });

  test('that says nothing of its board is asked about, the likeliest first', () => {
    const draft = desk.draft(lamp);
    expect(draft.ok).toBe(false);
    if (!draft.ok) {
      expect(draft.boards.slice(0, 2).map(({ id }) => id)).toEqual(['uno-r3', 'nano-v3']);
      expect(draft.boards.length).toBe(desk.library.hardware.boardIds.length);
    }
  });

  test.each([
    ['#include <ESP8266WiFi.h>\n', 'nodemcu-esp8266'],
    ['#if defined(__AVR_ATmega2560__)\n#endif\n', 'mega-2560'],
    ['#ifdef ARDUINO_AVR_NANO\n#endif\n', 'nano-v3'],
  ])('names its board by %j', (head, board) => {
    expect(drafted(head + lamp)).toMatchObject({ board, boardBy: 'guessed' });
  });

  test('with errors, no setup and pins nobody knows is drafted as far as it can be read', () => {
    const broken = `${lamp}void other( { pinMode(Serial.read(), OUTPUT);`;
    expect(drafted(broken, { board: 'nano-v3' }).added.map(({ part }) => part)).toEqual(['beacon']);
    expect(drafted('int x;', { board: 'nano-v3' }).added).toEqual([]);
    expect(desk.draft('', { board: 'no-such-board' })).toMatchObject({
      ok: false,
      why: 'There is no board "no-such-board".',
    });
  });
});

describe('a manifest that is there', () => {
  const more = lamp
    .replace('void setup() {', 'const int horn = 9;\nvoid setup() {')
    .replace('HIGH);', 'HIGH); tone(horn, 440);');

  test.each([
    ['LF and spaces', (text: string) => text],
    ['CRLF', (text: string) => text.replaceAll('\n', '\r\n')],
    ['tabs', (text: string) => text.replaceAll('  ', '\t')],
    ['a byte order mark', (text: string) => `\uFEFF${text}`],
  ])('keeps what it says, with %s', (_, dress) => {
    const own = dress(`{
  // Käfers Horn 🙂
  "board": "nano-v3",
  "parts": {
    "beacon": { "kind": "led" }, // soldered
    "R9": { "kind": "resistor", "value": "470" }
  },
  "wires": [
    { "path": ["D7", "R9", "beacon", "GND"] } // mine
  ]
}
`);
    expect(drafted(lamp, { text: own }).edits).toEqual([]);
    const draft = drafted(more, { text: own });
    expect(draft.added.map(({ part, kind }) => [part, kind])).toEqual([['horn', 'buzzer']]);
    expect(applyEdits(own, draft.edits)).toBe(draft.text);
    for (const line of own.split(/\r?\n/).map((each) => each.trim())) {
      expect(draft.text.replaceAll(',', '')).toContain(line.replaceAll(',', ''));
    }
    if (own.includes('\r\n')) expect(draft.text).not.toMatch(/[^\r]\n/);
    if (own.includes('\t')) expect(draft.text).toContain('\t\t"horn"');
    expect(drafted(more, { text: draft.text }).edits).toEqual([]);
  });

  test('half typed is left alone', () => {
    expect(desk.draft(lamp, { text: '{ "board": "nano-v3", "parts": {' })).toMatchObject({
      ok: false,
      boards: [],
    });
  });
});

describe('a guess', () => {
  const open = () => {
    const { text } = drafted(lamp, { board: 'nano-v3' });
    const at = text.indexOf('"beacon"');
    return { text, actions: desk.look(lamp, text).ask?.guesses(at, at) ?? [] };
  };

  test('confirmed loses its marks and nothing else', () => {
    const { text, actions } = open();
    expect(actions.map(({ title }) => title)).toEqual([
      'Confirm the guess: beacon is a LED',
      'Change beacon to a relay module on D7',
      'Change beacon to an active buzzer from D7 to GND@left.14',
      'Change beacon to a dc-motor on D7 behind a transistor',
      'Change beacon to a solenoid on D7 behind a transistor',
      'Change beacon to a led-strip on D7 behind a transistor',
      'Confirm all 2 guesses',
    ]);
    expect(applyEdits(text, actions[0]?.edits ?? [])).toBe(text.replace(/ \/\/ guessed:.*/g, ''));
  });

  test('of the board is confirmed as those of parts are', () => {
    const { text } = drafted(`#include <ESP8266WiFi.h>\n${lamp.replace('= 7', '= 5')}`);
    const at = text.indexOf('"board"');
    const actions = desk.look(lamp, text).ask?.guesses(at, at) ?? [];
    expect(actions.map(({ title }) => title.replace(/is .*/, 'is'))).toEqual([
      'Confirm the guess: the board is',
      'Confirm all 3 guesses',
    ]);
    expect(applyEdits(text, actions[1]?.edits ?? [])).toBe(text.replace(/ \/\/ guessed:.*/g, ''));
  });

  test('changed takes its resistor and wires along', () => {
    const { text, actions } = open();
    const changed = applyEdits(text, actions[2]?.edits ?? []);
    const { build, findings } = desk.look(lamp, changed);
    expect(build?.parts.map(({ id, kind }) => [id, kind])).toEqual([['beacon', 'buzzer']]);
    expect(
      build?.wires.map(({ ends }) => ends.map((end) => (end.kind === 'pin' ? end.pin : end.terminal))),
    ).toEqual([
      ['D7', '+'],
      ['-', 'GND'],
    ]);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
