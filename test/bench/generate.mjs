// Makes builds of any size. They look like what somebody writes: constants, setup, many small functions that the loop
// calls, comments; lamps with their resistors and buttons with pull-ups, all wired as the sketch uses them.

/** Small generator of pseudo-random numbers (xorshift, 32 bits): the same build for the same numbers. */
function createRandom(seed) {
  let state = seed >>> 0 || 1;
  return (below) => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state % below;
  };
}

/** Pin numbers of the board that a wire can be soldered to, in header order. */
const PINS = [...Array(23).keys(), 26, 27, 28];

/** Parts that take exactly `wires` pieces of hookup wire: three for a lamp, two for a button. */
function chooseParts(wires) {
  const parts = [];
  let left = wires;
  while (left > 0) {
    const isButton = left === 2 || left === 4 || (left > 4 && parts.length % 4 === 3);
    parts.push({
      kind: isButton ? 'button' : 'lamp',
      name: `${isButton ? 'button' : 'lamp'}${parts.length}`,
    });
    left -= isButton ? 2 : 3;
  }
  if (parts.length > PINS.length) {
    throw new Error(`${wires} wires need ${parts.length} pins; the board has ${PINS.length}`);
  }
  return parts.map((part, index) => ({ ...part, pin: PINS[index] }));
}

function writeManifest(parts) {
  const entries = parts.flatMap(({ kind, name }) =>
    kind === 'button'
      ? [`    "${name}": { "kind": "push-button" }`]
      : [
          `    "${name}": { "kind": "led", "colour": "green" }`,
          `    "R_${name}": { "kind": "resistor", "value": "470" }`,
        ],
  );
  const wires = parts.map(({ kind, name, pin }) =>
    kind === 'button'
      ? `    { "path": ["GP${pin}", "${name}", "GND"] }`
      : `    { "path": ["GP${pin}", "R_${name}", "${name}", "GND"] }`,
  );
  return `{
  // Made by the benchmark.
  "format": 1,
  "board": "pico",
  "parts": {
${entries.join(',\n')}
  },
  "wires": [
${wires.join(',\n')}
  ]
}
`;
}

/**
 * One build.
 * @returns texts, and in the sketch the offset in the middle where a statement can be typed.
 */
export function generateBuild(lines, wires, seed = 1) {
  const random = createRandom(seed * 7919 + lines * 31 + wires);
  const parts = chooseParts(wires);
  const lamps = parts.filter((part) => part.kind === 'lamp');
  const buttons = parts.filter((part) => part.kind === 'button');
  const pick = (some) => some[random(some.length)].name;
  const head = [
    '// Made by the benchmark.',
    ...parts.map(({ name, pin }) => `const byte ${name} = ${pin};`),
    `const byte allLamps[] = {${lamps.map((lamp) => lamp.name).join(', ')}};`,
    'unsigned long changed = 0;',
    'int level = 0;',
    '',
  ];
  const setup = [
    'void setup() {',
    '  for (byte i = 0; i < sizeof(allLamps); i++) {',
    '    pinMode(allLamps[i], OUTPUT);',
    '  }',
    ...buttons.map(({ name }) => `  pinMode(${name}, INPUT_PULLUP);`),
    '}',
    '',
  ];
  const functions = [];
  const shape = (index) => [
    `// Step ${index}: shows the level on two lamps and looks at a button.`,
    `void step${index}(int amount) {`,
    `  int next = level + amount * ${1 + random(9)};`,
    `  if (digitalRead(${pick(buttons)}) == LOW) {`,
    `    digitalWrite(${pick(lamps)}, HIGH);`,
    `    next = next / ${2 + random(5)};`,
    '  } else {',
    `    digitalWrite(${pick(lamps)}, next > ${random(500)} ? HIGH : LOW);`,
    '  }',
    `  level = constrain(next, 0, ${500 + random(500)});`,
    '}',
    '',
  ];
  const each = shape(0).length;
  const count = Math.max(2, Math.floor((lines - head.length - setup.length - 6) / (each + 1)));
  for (let index = 0; index < count; index += 1) {
    functions.push(...shape(index));
  }
  const loop = [
    'void loop() {',
    ...Array.from({ length: count }, (_, index) => `  step${index}(${1 + random(20)});`),
    '  changed = millis();',
    '  delay(20);',
    '}',
    '',
  ];
  const before = [...head, ...setup, ...functions.slice(0, Math.floor(count / 2) * each)];
  const sketch = [...before, ...functions.slice(Math.floor(count / 2) * each), ...loop].join('\n');
  // Behind the opening line of the function in the middle.
  const typeAt = [...before, ...functions.slice(Math.floor(count / 2) * each).slice(0, 2)].join('\n').length;
  return { sketch, manifest: writeManifest(parts), typeAt, lines: sketch.split('\n').length - 1 };
}
