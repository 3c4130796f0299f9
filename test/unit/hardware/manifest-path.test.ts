// What lies under a cursor in the manifest, and what the schema says about it.
import { describe, expect, test } from 'vitest';
import { describeKey, manifestPathAt } from '../../../server/src/hardware';
import { openLibrary } from './library';

const text = `{
  "board": "nano-v3",
  "parts": { "beacon": { "kind": "led", "colour": "green" } },
  "wires": [{ "path": ["D7", "beacon"] }, { "from": "D8", "to": "D9" }]
}`;

function at(needle: string, shift = 1) {
  const place = manifestPathAt(text, text.indexOf(needle) + shift);
  return (
    place && { path: place.path, isKey: place.isKey, text: text.slice(place.span.start, place.span.end) }
  );
}

describe('the place at an offset', () => {
  test('a key, a value, an item', () => {
    expect(at('"board"')).toEqual({ path: ['board'], isKey: true, text: 'board' });
    expect(at('"nano-v3"')).toEqual({ path: ['board'], isKey: false, text: 'nano-v3' });
    expect(at('"nano-v3"', 9)).toEqual({ path: ['board'], isKey: false, text: 'nano-v3' });
    expect(at('"green"', 3)).toEqual({ path: ['parts', 'beacon', 'colour'], isKey: false, text: 'green' });
    expect(at('"D7"')).toEqual({ path: ['wires', 0, 'path', 0], isKey: false, text: 'D7' });
    expect(at('"to"')).toEqual({ path: ['wires', 1, 'to'], isKey: true, text: 'to' });
  });

  test('between entries it is the object itself; outside there is none', () => {
    expect(at('{ "kind"', 1)?.path).toEqual(['parts', 'beacon']);
    expect(manifestPathAt(text, text.length + 1)).toBeUndefined();
    expect(manifestPathAt('', 0)).toBeUndefined();
    expect(manifestPathAt('{ "a": ', 7)?.path).toEqual([]);
  });
});

describe('what is written about a place', () => {
  const led = openLibrary().partKinds.get('led');

  test('comes from the schema of the manifest', () => {
    expect(describeKey(['board'])).toMatch(/^The board the sketch runs on/);
    expect(describeKey(['stock', 'power'])).toMatch(/^The power one of them stands/);
    expect(describeKey(['stock', 'resistors'])).toMatch(/^The resistor values/);
    expect(describeKey(['parts', 'beacon', 'kind'])).toMatch(/^What it is/);
    expect(describeKey(['parts', 'beacon'])).toMatch(/^One part/);
    expect(describeKey(['wires', 0, 'path'])).toMatch(/^The ends in order/);
    expect(describeKey(['wires', 3, 'colour'])).toMatch(/^Colour of the wire/);
    expect(describeKey(['severity', 'idle-wire'])).toBeUndefined();
    expect(describeKey(['nothing', 'here'])).toBeUndefined();
    expect(describeKey(['__proto__'])).toBeUndefined();
  });

  test('or from the kind of the part', () => {
    expect(describeKey(['parts', 'beacon', 'colour'], led)).toMatch(/^Colour of the light/);
    expect(describeKey(['parts', 'beacon', 'kind'], led)).toMatch(/^What it is/);
    expect(describeKey(['parts', 'beacon', 'toString'], led)).toBeUndefined();
  });
});
