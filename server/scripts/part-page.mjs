// The page of all kinds of parts, made from their files: what a manifest may say, how terminals are told apart, where
// figures come from. Pure but for reading the folder, so that one caller writes the page and a test compares it.
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

const path = 'server/docs/parts.md';

/** The shelves of the page, each with its kinds in the order of reading. A kind on none stands on the last one. */
const shelves = [
  [
    'Resistors and capacitors',
    'resistor resistor-network potentiometer trimmer photoresistor thermistor capacitor electrolytic-capacitor',
  ],
  [
    'Diodes and lamps',
    'diode schottky-diode zener-diode led rgb-led seven-segment-display led-bar addressable-strip led-strip filament-lamp optocoupler',
  ],
  [
    'Switches',
    'push-button illuminated-push-button tact-switch toggle-switch slide-switch limit-switch reed-switch tilt-switch rotary-encoder keypad-matrix joystick',
  ],
  ['Sound', 'buzzer speaker'],
  [
    'Transistors and drivers',
    'npn-transistor pnp-transistor n-mosfet p-mosfet darlington-array relay relay-module h-bridge stepper-board stepper-driver shift-register level-shifter',
  ],
  ['Motors', 'dc-motor servo stepper-motor solenoid'],
  [
    'Sensors and devices',
    'analog-sensor digital-sensor open-collector-sensor i2c-device spi-device serial-device one-wire-sensor temperature-humidity-sensor ultrasonic-ranger pir-sensor infrared-receiver',
  ],
  ['Displays', 'character-lcd i2c-display spi-display'],
  [
    'Supplies',
    'battery alkaline-battery nimh-battery lithium-battery lithium-iron-battery lead-acid-battery coin-cell nine-volt-battery power-adapter usb-power voltage-regulator step-down-module fuse resettable-fuse',
  ],
  ['Joints', 'wire-joint connector terminal-block'],
  ['Others', ''],
].map(([title, kinds]) => [title, kinds.split(' ').filter(Boolean)]);

/**
 * Makes the page.
 * @param {string} root Folder of the repository.
 * @returns {Promise<Map<string, string>>} Text by path relative to `root`.
 */
export async function makePartPage(root) {
  const folder = join(root, 'hardware-schemas/parts');
  const names = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
  const parts = new Map();
  for (const name of names) {
    const part = JSON.parse(await readFile(join(folder, name), 'utf8'));
    parts.set(part.kind, part);
  }
  const placed = new Set(shelves.flatMap(([, kinds]) => kinds));
  const others = [...parts.keys()].filter((kind) => !placed.has(kind));
  const lines = [
    '<!-- Made from hardware-schemas/parts by `npm run generate`. -->',
    '# Parts',
    '',
    `The ${parts.size} kinds of the library. A part of the user's own is a file of the same form; see \`DEVELOPERS.md\`, "Add a part".`,
    'Terminals in brackets may stay without a wire; terminals joined by = are one piece of metal inside.',
  ];
  for (const [title, kinds] of shelves) {
    const present = [...kinds, ...(title === 'Others' ? others : [])].filter((kind) => parts.has(kind));
    if (present.length === 0) continue;
    lines.push('', `## ${title}`);
    for (const kind of present) lines.push('', ...describe(parts.get(kind)));
  }
  return new Map([[path, `${lines.join('\n')}\n`]]);
}

function describe(part) {
  const lines = [`### ${part.kind}`, '', part.about];
  if (part.caution !== undefined) lines.push('', `**Caution.** ${part.caution}`);
  lines.push('', '| terminal | pole | on the real thing |', '| --- | --- | --- |', ...terminalRows(part));
  for (const group of part.joined ?? []) lines.push('', `Joined: ${group.map(code).join(' = ')}`);
  const parameters = Object.entries(part.parameters ?? {});
  if (parameters.length > 0) {
    lines.push('', '| key | means | value | left out |', '| --- | --- | --- | --- |');
    for (const [key, parameter] of parameters) lines.push(parameterRow(key, parameter));
  }
  const figures = [...figuresOf(part)];
  const sourced = figures.filter((figure) => figure.source !== undefined).length;
  const documents = Object.values(part.sources ?? {}).map(({ document, revision, publisher }) =>
    [document, revision, publisher].filter(Boolean).join(', '),
  );
  if (figures.length > 0) {
    lines.push(
      '',
      `Figures: ${figures.length}, of these ${sourced} looked up${documents.length > 0 ? ` (${documents.join('; ')})` : ''}.`,
    );
  }
  return lines;
}

/** A row a terminal. Variants that are told alike share it, and say in which of them it is which pole. */
function terminalRows(part) {
  const rows = new Map();
  for (const { id, tell = '', polarity, optional, when } of part.terminals) {
    const row = rows.get(id) ?? { optional, variants: [] };
    row.variants.push({ tell, pole: polarity, when });
    rows.set(id, row);
  }
  return [...rows].map(([id, { optional, variants }]) => {
    const tells = [...new Set(variants.map(({ tell }) => tell))];
    const poles = [...new Set(variants.map(({ pole }) => pole))];
    const each = (words) =>
      variants.map((variant) => `${conditionWords(variant.when)}: ${words(variant)}`).join('; ');
    const pole = poles.length === 1 ? (poles[0] ?? '') : each((variant) => variant.pole ?? 'either way');
    const told = tells.length === 1 ? tells[0] : each((variant) => variant.tell || 'nothing');
    const [only] = variants.length === 1 ? variants : [];
    const where = only?.when ? `, ${conditionWords(only.when)}` : '';
    return `| ${optional ? `(${code(id)})` : code(id)}${where} | ${cell(pole)} | ${cell(told)} |`;
  });
}

function conditionWords(condition = {}) {
  return Object.entries(condition)
    .map(([key, value]) => `${key} ${[value].flat().join(' or ')}`)
    .join(', ');
}

function parameterRow(key, { about, choices, default: fallback, required, type, unit }) {
  const kind = choices
    ? choices.map(code).join(' ')
    : type === 'quantity'
      ? unit === 'ratio'
        ? '%'
        : unit
      : type;
  const value =
    typeof fallback === 'object' ? 'that of the stock' : fallback === undefined ? '' : code(String(fallback));
  return `| ${code(key)} | ${cell(about ?? '')} | ${cell(kind)} | ${required ? 'must be said' : value} |`;
}

/** Every object that is a figure with its source: ranges, and defaults of quantities. */
function* figuresOf(value) {
  if (typeof value !== 'object' || value === null) return;
  const figure = ['min', 'typ', 'max'].some((key) => key in value);
  if (figure || (value.type === 'quantity' && typeof value.default === 'string')) yield value;
  for (const inner of Object.values(value)) yield* figuresOf(inner);
}

function code(text) {
  return `\`${text}\``;
}

function cell(text) {
  return text.replaceAll('|', '\\|');
}
