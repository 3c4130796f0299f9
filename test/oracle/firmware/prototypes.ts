/**
 * A sketch may call a function above its definition, for its build adds the prototypes. This does the same, simply:
 * it looks for `type name(arguments) {` outside all braces.
 */

/** Blanks comments, strings, what stands behind `#if 0`, and preprocessor lines; offsets stay. */
function blank(text: string): string {
  const dead = /^[ \t]*#[ \t]*if[ \t]+0\b[\s\S]*?^[ \t]*#[ \t]*(?:endif|else)\b/gm;
  const live = text.replace(dead, (found) => found.replace(/[^\n]/g, ' '));
  const pattern =
    /\/\/[^\n]*|\/\*[\s\S]*?\*\/|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|^[ \t]*#(?:\\\r?\n|[^\n])*/gm;
  return live.replace(pattern, (found) => found.replace(/[^\n]/g, ' '));
}

/** Blanks everything within braces; the braces of the outermost level stay. */
function outermost(text: string): string {
  let depth = 0;
  let result = '';
  for (const letter of text) {
    depth -= letter === '}' ? 1 : 0;
    result += depth <= 0 || letter === '\n' ? letter : ' '.repeat(letter.length);
    depth += letter === '{' ? 1 : 0;
  }
  return result;
}

const FUNCTION = /(?:^|[;}])\s*((?:[A-Za-z_][\w:<>]*[\s*&]+)+)([A-Za-z_]\w*)\s*\(([^(){};=]*)\)\s*\{/g;

/** Joins the `.ino` files of a sketch into one C++ text, with prototypes before the first function. */
export function joinSketch(files: readonly { readonly name: string; readonly text: string }[]): string {
  const text = files.map((file) => `#line 1 ${JSON.stringify(file.name)}\n${file.text}\n`).join('');
  const flat = outermost(blank(text));
  const prototypes: string[] = [];
  let first: number | undefined;
  for (const found of flat.matchAll(FUNCTION)) {
    const [whole, type = '', name = '', parameters = ''] = found;
    if (/\b(?:struct|class|enum|union|namespace|template|else|return|new)\b/.test(type)) {
      continue;
    }
    first ??= found.index + whole.search(/[A-Za-z_]/);
    prototypes.push(
      `${type.replace(/\s+/g, ' ').trim()} ${name}(${parameters.replace(/\s+/g, ' ').trim()});`,
    );
  }
  if (first === undefined) {
    return `#include <Arduino.h>\n${text}`;
  }
  const before = text.slice(0, first);
  // The compiler's messages go on counting the lines of the file that the first function stands in.
  const mark = before.lastIndexOf('#line 1 ');
  const [name = ''] = before.slice(mark + '#line 1 '.length).split('\n', 1);
  const line = before.slice(mark).split('\n').length - 1;
  return `#include <Arduino.h>\n${before}\n${prototypes.join('\n')}\n#line ${line} ${name}\n${text.slice(first)}`;
}
