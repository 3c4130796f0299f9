// Manifests in every layout a user may choose: indentation, line endings, comments in each place that allows one,
// trailing commas, one line or many.
import fc from 'fast-check';

interface Style {
  readonly newline: string;
  readonly indent: string;
  readonly bom: boolean;
}

const style: fc.Arbitrary<Style> = fc.record({
  newline: fc.constantFrom('\n', '\r\n'),
  indent: fc.constantFrom('  ', '    ', '\t'),
  bom: fc.boolean(),
});

/** White space and comments between two tokens. `~` stands for a line break with the indentation of its depth. */
const lineGap = fc.constantFrom('~', '~', '~', '~~', ' ~', '~// own line\n~', '~/* own\n   lines */~');
const remark = fc.constantFrom('', '', '', ' // remark\n', '  /* remark */', ' /* a */ /* b */');
const inlineGap = fc.constantFrom('', ' ', '  ', ' /* in line */ ');

interface EntryStyle {
  readonly front: string;
  readonly behind: string;
  readonly beforeComma: string;
}

const manyLines: fc.Arbitrary<EntryStyle> = fc.record({
  front: lineGap,
  behind: remark,
  beforeComma: fc.constantFrom('', '', '', ' ', ' /* before comma */'),
});
const oneLine: fc.Arbitrary<EntryStyle> = fc.record({
  front: inlineGap,
  behind: fc.constant(''),
  beforeComma: fc.constant(''),
});

/** A container with its entries given as texts. */
function container(open: string, close: string, entries: readonly string[]): fc.Arbitrary<string> {
  const layout = (entry: fc.Arbitrary<EntryStyle>, last: fc.Arbitrary<string>) =>
    fc.record({
      styles: fc.array(entry, { minLength: entries.length, maxLength: entries.length }),
      trailing: fc.boolean(),
      openRemark: remark,
      last,
    });
  const emptyOnes = fc.constantFrom(
    '',
    ' ',
    ' /* none */ ',
    '/* none */',
    '~// none yet\n^',
    ' // none\n~// yet\n^',
  );
  if (entries.length === 0) return emptyOnes.map((inside) => `${open}${inside}${close}`);
  const print = (
    {
      styles,
      trailing,
      openRemark,
      last,
    }: { styles: EntryStyle[]; trailing: boolean; openRemark: string; last: string },
    lines: boolean,
  ) => {
    const texts = entries.map((entry, index) => {
      const { front = '', behind = '', beforeComma = '' } = styles[index] ?? {};
      const comma = index < entries.length - 1 || trailing ? `${beforeComma},` : '';
      return `${front}${entry}${comma}${behind}`;
    });
    return `${open}${lines ? openRemark : ''}${texts.join('')}${last}${close}`;
  };
  return fc.oneof(
    layout(manyLines, fc.constantFrom('^', '^', '~// the end\n^', '')).map((all) => print(all, true)),
    layout(oneLine, inlineGap).map((all) => print(all, false)),
  );
}

/** Puts in the line breaks and the indentation. A line comment always gets its line break. */
function dress(text: string, { newline, indent, bom }: Style): string {
  let depth = 0;
  let result = '';
  for (const line of text.replace(/\n[~^]/g, (mark) => mark.slice(1)).split(/(?=[~^\n{}[\]])/)) {
    const mark = line[0];
    if (mark === '{' || mark === '[') depth += 1;
    if (mark === '}' || mark === ']') depth -= 1;
    if (mark === '~') result += `\n${indent.repeat(depth)}${line.slice(1)}`;
    else if (mark === '^') result += `\n${indent.repeat(depth - 1)}${line.slice(1)}`;
    else result += line;
  }
  return (bom ? '\uFEFF' : '') + result.replaceAll('\n', newline);
}

const partEntries = [
  '"R1":  { "kind": "resistor", "value": "470" }',
  '"beacon": {~"kind": "led", // green\n~"colour": "green"^}',
  '"restart": { "kind": "push-button" }',
];
const wireEntries = [
  '{ "path": ["D7", "R1", "beacon", "GND"], "colours": ["red", "red", "black"] }',
  '{~"from": "RST",~"to": "restart.1" /* white */^}',
  '{ "from": "restart.2", "to": "GND" }',
];

const some = (all: readonly string[]) => fc.nat(all.length).map((count) => all.slice(0, count));
/** A manifest with up to three parts and three wires, laid out in any way. */
export const manifest: fc.Arbitrary<string> = fc
  .tuple(some(partEntries), some(wireEntries))
  .chain(([parts, wires]) => fc.tuple(container('{', '}', parts), container('[', ']', wires)))
  .chain(([parts, wires]) =>
    fc.tuple(
      container('{', '}', ['"board": "nano-v3"', `"parts": ${parts}`, `"wires": ${wires}`]),
      fc.constantFrom('', '// head\n', '/* head */\n'),
      fc.constantFrom('', '\n', '\n// tail\n'),
      style,
    ),
  )
  .map(([body, head, tail, how]) => dress(`${head}${body}${tail}`, how));
