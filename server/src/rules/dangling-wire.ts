/** A wire that leads to a header position with nothing behind it, or back to where it came from. */
import { defineRule } from './rule';

interface Detail {
  readonly pin: string;
  readonly same: boolean;
}

export default defineRule<Detail>({
  id: 'dangling-wire',
  title: 'A wire leads nowhere.',
  why: 'It joins nothing: a slip in the list that somebody will solder.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'settled',
  needs: 'hardware',
  *check(subject) {
    const types = new Map(subject.build.board.pins.map((pin) => [pin.id, pin.type]));
    for (const wire of subject.build.wires) {
      const [from, to] = wire.ends;
      for (const end of wire.ends) {
        if (end.kind === 'pin' && types.get(end.pin) === 'not-connected') {
          yield { identity: wire.id, span: end.span, detail: { pin: end.pin, same: false } };
        }
      }
      if (from.kind === 'pin' && to.kind === 'pin' && from.pin === to.pin) {
        yield { identity: wire.id, span: to.span, detail: { pin: to.pin, same: true } };
      }
    }
  },
  message: ({ pin, same }) =>
    same
      ? `This wire joins ${pin} with ${pin}: it leads nowhere.`
      : `${pin} is connected to nothing on the board: this wire leads nowhere.`,
  examples: [
    {
      about: 'a wire from ground to ground',
      build: `
//- sketch.ino board:nano-v3
void setup() {}
void loop() {}
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "wires": [
    { "from": "GND@left.14", "to": "GND", "colour": "black" }
//                                  ^^^ dangling-wire: This wire joins GND with GND
  ]
}
`,
    },
    {
      about: 'a wire that leads to a part',
      build: `
//- sketch.ino
void setup() { pinMode(2, INPUT_PULLUP); }
void loop() { if (digitalRead(2) == LOW) delay(1); }
//- hardware.jsonc
{
  "format": 1,
  "board": "nano-v3",
  "parts": { "call": { "kind": "push-button" } },
  "wires": [{ "path": ["D2", "call", "GND"] }]
}
`,
    },
  ],
});
