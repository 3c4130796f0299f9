// The types that are kept in the repository follow from the schemas. A changed schema without changed types fails.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from './library';

test('the generated types are those of the schemas', async () => {
  const script: string = '../../../server/scripts/schema-sources.mjs';
  const { makeSchemaSources } = (await import(script)) as {
    makeSchemaSources(root: string): Promise<Map<string, string>>;
  };
  const sources = await makeSchemaSources(root);
  expect([...sources.keys()].sort()).toEqual(
    ['board.ts', 'manifest.ts', 'part.ts', 'validators.d.ts', 'validators.js'].map(
      (name) => `server/src/hardware/generated/${name}`,
    ),
  );
  for (const [path, text] of sources) expect(readFileSync(join(root, path), 'utf8'), path).toBe(text);
});

test('every key of the schemas is described', () => {
  for (const name of ['manifest', 'board', 'part']) {
    const schema: unknown = JSON.parse(
      readFileSync(join(root, `hardware-schemas/${name}.schema.json`), 'utf8'),
    );
    expect(undescribed(schema, name)).toEqual([]);
  }
});

/** Paths of the properties without a description of their own or of what they refer to. */
function undescribed(schema: unknown, path: string): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const found: string[] = [];
  for (const [key, value] of Object.entries(schema)) {
    if (key === 'properties') {
      for (const [property, inner] of Object.entries(value as Record<string, Record<string, unknown>>)) {
        if (inner.description === undefined && inner.$ref === undefined) found.push(`${path}.${property}`);
      }
    }
    found.push(...undescribed(value, `${path}.${key}`));
  }
  return found;
}
