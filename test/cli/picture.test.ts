/** `picture`: one build as an SVG file, the same bytes from wherever it is read. */
import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from '../fixture/bench';
import { EXAMPLES, openWorkshop, type Workshop } from './program';

let shop: Workshop;
beforeAll(() => {
  shop = openWorkshop();
  cpSync(join(EXAMPLES, 'harbour-model'), join(shop.base, 'harbour-model'), { recursive: true });
});
afterAll(() => shop.clear());

test('draws the harbour model as the kept picture has it', () => {
  const kept = readFileSync(join(root, 'test/fixture/picture/harbour-model.svg'), 'utf8');
  const drawn = shop.wiretrue(['picture', 'harbour-model']);
  expect(drawn).toMatchObject({ status: 0, stderr: '' });
  expect(drawn.stdout).toBe(kept);
  expect(drawn.stdout).not.toContain(shop.base);
});

test('writes a file, from the folder of the build too', () => {
  expect(shop.wiretrue(['picture', '-o', 'wiring.svg'], 'harbour-model')).toMatchObject({
    status: 0,
    stdout: '',
  });
  const written = readFileSync(join(shop.base, 'harbour-model/wiring.svg'), 'utf8');
  expect(written).toMatch(/^<svg [^>]*xmlns=/);
  expect(written).toBe(shop.wiretrue(['picture', 'harbour-model']).stdout);
});

test('says where there is no build, and where the file cannot be written', () => {
  shop.put('empty/readme.txt', 'nothing');
  expect(shop.wiretrue(['picture', 'empty'])).toMatchObject({ status: 2, stdout: '' });
  const blocked = shop.wiretrue(['picture', 'harbour-model', '-o', 'no/such/folder/wiring.svg']);
  expect(blocked.status).toBe(2);
  expect(blocked.stderr).toContain('no/such/folder/wiring.svg');
});

test('stands in the guide as a page, as an image that can run nothing', () => {
  const page = shop.wiretrue(['guide', '--format', 'html', 'harbour-model']).stdout;
  const drawing =
    /<img src="data:image\/svg\+xml,([^"]+)" alt="Wiring of Harbour model/.exec(page)?.[1] ?? '';
  expect(decodeURIComponent(drawing.replaceAll('&#39;', "'").replaceAll('&amp;', '&'))).toBe(
    shop.wiretrue(['picture', 'harbour-model']).stdout,
  );
});
