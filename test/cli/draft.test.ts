/** `draft`: a manifest out of a bare sketch, printed or written, and never more than was missing. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openWorkshop, type Workshop } from './program';

const SKETCH = `const int hornPin = 8;
const int restartButton = 4;
void setup() { pinMode(hornPin, OUTPUT); pinMode(restartButton, INPUT_PULLUP); }
void loop() { if (digitalRead(restartButton) == LOW) tone(hornPin, 440, 200); delay(20); }
`;

let shop: Workshop;
beforeAll(() => {
  shop = openWorkshop();
  shop.put('pier/pier.ino', SKETCH);
});
afterAll(() => shop.clear());

const manifest = () => readFileSync(join(shop.base, 'pier/hardware.jsonc'), 'utf8');

test('prints a manifest that checks clean of errors, and says what it guessed', () => {
  const drafted = shop.wiretrue(['draft', 'pier', '--board', 'uno-r3']);
  expect(drafted.status).toBe(0);
  expect(drafted.stderr).toMatch(/^wiretrue: D8: horn, buzzer \(the word "horn"/m);
  expect(drafted.stderr).toMatch(/^wiretrue: D4: restartButton, push-button/m);
  shop.put('copy/copy.ino', SKETCH);
  shop.put('copy/hardware.jsonc', drafted.stdout);
  expect(shop.wiretrue(['check', 'copy'])).toMatchObject({ status: 0 });
});

test('writes it beside the sketch, and adds nothing the second time', () => {
  expect(shop.wiretrue(['draft', 'pier', '--board', 'uno-r3', '--write'])).toMatchObject({
    status: 0,
    stdout: '',
  });
  const first = manifest();
  expect(shop.wiretrue(['draft', 'pier', '--write']).status).toBe(0);
  expect(manifest()).toBe(first);
});

test('keeps what is there and adds what is missing', () => {
  const own = manifest().replace('{\n', '{\n  // mine\n');
  shop.put('pier/hardware.jsonc', own);
  shop.put(
    'pier/pier.ino',
    SKETCH.replace('void setup() {', 'const int pierLamp = 5;\nvoid setup() { pinMode(pierLamp, OUTPUT);'),
  );
  expect(shop.wiretrue(['draft', 'pier', '--write']).status).toBe(0);
  expect(manifest()).toContain('// mine');
  expect(manifest()).toContain('"pierLamp"');
  expect(manifest().match(/"horn":/g)).toHaveLength(1);
});

test('says which boards there are where none is told, and where there is no sketch', () => {
  shop.put('bare/bare.ino', SKETCH);
  const asked = shop.wiretrue(['draft', 'bare']);
  expect(asked).toMatchObject({ status: 2, stdout: '' });
  expect(asked.stderr).toMatch(/--board, likeliest first: /);
  expect(shop.wiretrue(['draft', 'nowhere'])).toMatchObject({ status: 2, stdout: '' });
});
