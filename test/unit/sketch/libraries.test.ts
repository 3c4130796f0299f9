/** The library files keep to their schema, and the schema explains every key. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';

const folder = join(import.meta.dirname, '../../../hardware-schemas');
const schema: unknown = JSON.parse(readFileSync(join(folder, 'library.schema.json'), 'utf8'));
const files = readdirSync(join(folder, 'libraries')).filter((name) => name.endsWith('.json'));

/** Paths of properties without a description. */
function unexplained(node: unknown, path: string): string[] {
  if (typeof node !== 'object' || node === null) return [];
  const found: string[] = [];
  for (const [key, value] of Object.entries(node)) {
    if (key === 'properties' && typeof value === 'object' && value !== null) {
      for (const [name, property] of Object.entries(value)) {
        if (!Object.hasOwn(property as object, 'description')) found.push(`${path}.${name}`);
      }
    }
    found.push(...unexplained(value, `${path}.${key}`));
  }
  return found;
}

describe('library files', () => {
  it('are there', () => {
    expect(files).toEqual(expect.arrayContaining(['core.json', 'servo.json']));
  });
  const validate = new Ajv({ allErrors: true }).compile(schema as object);
  for (const name of files) {
    it(`${name} keeps to the schema, under its own id`, () => {
      const data = JSON.parse(readFileSync(join(folder, 'libraries', name), 'utf8'));
      expect([validate(data), validate.errors]).toEqual([true, null]);
      expect(`${data.id}.json`).toBe(name);
    });
  }
  it('has a description for every key', () => {
    expect(unexplained(schema, '')).toEqual([]);
  });
});
