/** The native parser and the WebAssembly one: every sketch of the tests and examples gives the same facts through both. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { rules } from '../../server/src/rules/generated/registry';
import { createSketchParser } from '../../server/src/sketch';
import { openTestBench, root } from '../fixture/bench';
import { readFixture } from '../fixture/read-fixture';
import { requireOracle } from '../oracle/oracle';

const native = await createSketchParser({ engine: 'native' }).catch(() => undefined);

/** Sketch texts below a folder, by path. */
function sketchesBelow(folder: string): [string, string][] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ino'))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => [file, readFileSync(file, 'utf8')]);
}

it('sees the same in both', { timeout: 120_000 }, async (context) => {
  requireOracle(context, 'the native parser', native !== undefined);
  const manifest = '{ "format": 1, "board": "nano-v3" }';
  const [one, other] = [await openTestBench('native'), await openTestBench('wasm')];
  expect([one.parser.engine, other.parser.engine]).toEqual(['native', 'wasm']);
  const fixtures = rules.flatMap((rule) => rule.examples.map((example) => readFixture(example.build).files));
  const files = [...sketchesBelow('hardware-schemas/examples'), ...sketchesBelow('test/oracle/sketches')];
  const builds = [
    ...fixtures,
    ...files.map(([, text]) => ({ 'sketch.ino': text, 'hardware.jsonc': manifest })),
  ];
  expect(builds.length).toBeGreaterThan(60);
  let uses = 0;
  for (const build of builds) {
    const facts = one.analyse(build).facts;
    expect(other.analyse(build).facts).toEqual(facts);
    uses += facts.uses.length;
  }
  expect(uses).toBeGreaterThan(200);
});
