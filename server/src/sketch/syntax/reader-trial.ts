/** Whether two readers give the same of a text that has a bit of everything: what a build that changed would fail at. */
import type { SyntaxTree } from './engine';
import type { PlainNode } from './plain-tree';
import type { TreeReader } from './tree-reader';

/** Fields, aliases, hidden rules, comments between, tokens of other widths than one byte, errors and missing tokens. */
const texts = [
  `#define LAMP 13 // grün
#ifdef X
const byte rows[2][3] = {{1, 0x2u, 'c'}, {4, 5, 6}};
#else
enum class Mode : char { off, on = 2 };
#endif
template <int PIN> struct Lamp : Base<PIN> {
  Lamp(int a = 3) : level(a), next{nullptr} {} /* — */
  virtual void on() const override { digitalWrite(PIN, level > 2 ? HIGH : LOW); }
};
static Lamp<4> *all[] = {&x, new Lamp<5>(7)};
void hw::run(unsigned long t, bool &b) {
  for (auto &one : all) { one->on(); if (!b) break; else continue; }
  switch (t) { case 1: a[0] += sizeof(int) * -2; break; default: return; }
  auto f = [&](int v) -> int { return (byte)v << 1; };
}
`,
  'void loop() {\n  digitalWrite(LAMP, HIGH\n  int = ;\n  delay(5);\n}\n@ 9 }} int x',
  'case { ) ) else ( 3 ; class',
];

const whole = { isWhole: true, toSource: (offset: number) => offset };

function all(reader: TreeReader, tree: SyntaxTree): string {
  const found: unknown[] = [];
  reader.visit(tree, (top) => {
    const { type, start, end, faulty } = top;
    const { node, cut } = top.plain(whole, start);
    found.push(type, start, end, faulty, cut, node === undefined ? null : listed(node));
  });
  return JSON.stringify(found);
}

const listed = ({ type, field, start, end, children }: PlainNode): unknown => [
  type,
  field ?? '',
  start,
  end,
  children.map(listed),
];

/** True where both give the same of every text. */
export function readsAlike(
  one: TreeReader,
  other: TreeReader,
  parse: (text: string) => SyntaxTree | undefined,
): boolean {
  return texts.every((text) => {
    const tree = parse(text);
    if (tree === undefined) return false;
    const alike = all(one, tree) === all(other, tree);
    tree.delete?.();
    return alike;
  });
}
