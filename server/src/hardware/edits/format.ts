/** New values as text, in the way hardware files are written by hand: one entry on one line, spaces inside braces. */

export type JsonValue = string | number | boolean | null | readonly JsonValue[] | JsonObject;
/** Keys are written in the order they have here. */
export interface JsonObject {
  readonly [key: string]: JsonValue | undefined;
}

/** @returns JSON on one line. Keys without a value are left out. */
export function formatJson(value: JsonValue): string {
  if (isList(value)) return `[${value.map(formatJson).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).flatMap(([key, item]) =>
    item === undefined ? [] : [`${JSON.stringify(key)}: ${formatJson(item)}`],
  );
  return entries.length === 0 ? '{}' : `{ ${entries.join(', ')} }`;
}

function isList(value: JsonValue): value is readonly JsonValue[] {
  return Array.isArray(value);
}
