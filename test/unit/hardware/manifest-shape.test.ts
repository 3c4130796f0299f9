// Mistakes in the form of a manifest: syntax, keys and types.
import { describe } from 'vitest';
import { type Mistake, testMistakes, withPart, withWires } from './mistakes';

const cases: readonly Mistake[] = [
  // Syntax.
  { about: 'a comma is missing', text: '{ "title": "x" «"board"»: "nano-v3" }', code: 'syntax' },
  { about: 'a word without quotes', text: '{ "board": «nano-v3» }', code: 'syntax' },
  { about: 'text behind the end', text: '{ "board": "nano-v3" } «7»', code: 'syntax' },
  { about: 'a key twice', text: '{ "board": "nano-v3", "«board»": "uno-r3" }', code: 'double-key' },
  {
    about: 'a part twice',
    text: withPart('"R1": { "kind": "resistor", "value": 1 }, "«R1»": { "kind": "led" }'),
    code: 'double-key',
  },
  // Shape.
  { about: 'the file is a list', text: '«["board"]»', code: 'wrong-type' },
  {
    about: 'an unknown key',
    text: '{ "board": "nano-v3", "«revison»": "B" }',
    code: 'unknown-key',
    fixed: 'revision',
  },
  { about: 'a key like nothing', text: '{ "board": "nano-v3", "«zzzzzzzzzz»": 1 }', code: 'unknown-key' },
  { about: 'no board', text: '«{» "title": "x" }', code: 'missing-key' },
  {
    about: 'a number for text',
    text: '{ "board": "nano-v3", "revision": «2» }',
    code: 'wrong-type',
    fixed: '"2"',
  },
  { about: 'text for a list', text: '{ "board": "nano-v3", "wires": "«D7»" }', code: 'wrong-type' },
  { about: 'a list for parts', text: '{ "board": "nano-v3", "parts": «[]» }', code: 'wrong-type' },
  {
    about: 'an unknown severity',
    text: '{ "board": "nano-v3", "severity": { "idle-wire": "«warn»" } }',
    code: 'unknown-word',
  },
  {
    about: 'a mistyped severity',
    text: '{ "board": "nano-v3", "severity": { "idle-wire": "«warnig»" } }',
    code: 'unknown-word',
    fixed: 'warning',
  },
  {
    about: 'an unknown key of a path',
    text: withWires('{ "path": ["D7", "R1"], "«colors»": [] }'),
    code: 'unknown-key',
    fixed: 'colours',
  },
  {
    about: 'an unknown key of a wire',
    text: withWires('{ "from": "D7", "to": "R1.1", "«color»": "red" }'),
    code: 'unknown-key',
    fixed: 'colour',
  },
  { about: 'a wire with one end', text: withWires('«{» "from": "D7" }'), code: 'missing-key' },
  { about: 'a path of one', text: withWires('{ "path": «["D7"]» }'), code: 'wrong-value' },
  {
    about: 'a pin as a number',
    text: withWires('{ "path": [«7», "R1"] }'),
    code: 'wrong-type',
    fixed: '"7"',
  },
  { about: 'an entry that is no wire', text: withWires('"«D7»"'), code: 'wrong-type' },
  { about: 'a part without a kind', text: withPart('"«R1»": {}'), code: 'missing-key' },
  { about: 'a part that is text', text: withPart('"R1": "«resistor»"'), code: 'wrong-type' },
  {
    about: 'a nested value in a part',
    text: withPart('"L1": { "kind": "led", "colour": «["red"]» }'),
    code: 'wrong-type',
  },
  { about: 'a newer format', text: '{ "format": «2», "board": "nano-v3" }', code: 'newer-format' },
  { about: 'a format that is none', text: '{ "format": «0», "board": "nano-v3" }', code: 'wrong-value' },
];

describe('a mistake is told once, at its place', () => testMistakes(cases));
