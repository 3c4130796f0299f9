// Boards of the library and of one's own: what a file that extends another keeps, replaces and takes away.
import { describe, expect, test } from 'vitest';
import { readBoard } from '../../../server/src/hardware';
import { describeProblems, filesOf, openLibrary, read } from './library';

const base = `{
  "id": "base", "title": "Base", "chip": "ATmega328P", "logicRail": "5V",
  "pins": {
    "D2": { "number": 2, "names": ["INT"], "type": "io", "port": "PD2", "interrupt": 0 },
    "D3": { "number": 3, "type": "io", "pwm": "timer2", "interrupt": 1 },
    "A0": { "number": 14, "type": "io", "adc": 0, "roles": ["x"] },
    "GND": { "type": "ground" },
    "RST": { "type": "reset" },
    "5V": { "type": "supply", "volts": { "min": "4.5 V", "max": "5.5 V", "source": "sheet" },
            "maxAmps": { "max": "500 mA", "fromMemory": true } }
  },
  "headers": { "top": { "title": "top header", "landmark": "the USB end", "positions": ["D2", "D3", "A0", "GND"] },
               "bottom": { "title": "bottom header", "landmark": "the USB end", "positions": ["5V", "GND", "RST"] } },
  "onBoard": { "lamp": { "title": "built-in lamp", "source": "plan", "where": "page 1",
    "inside": [{ "type": "resistor", "id": "r", "ends": ["D3", "~lamp"], "ohms": "1 kohm" },
               { "type": "diode", "id": "d", "ends": ["~lamp", "GND"], "volts": "2 V", "atAmps": "2 mA", "lamp": true }] } },
  "limits": {
    "pinRecommended": { "max": "20 mA", "when": "VCC = 5 V", "source": "sheet", "where": "Table 1" },
    "pinAbsolute": { "max": "40 mA", "source": "sheet" },
    "groups": { "all": { "title": "all pins", "pins": ["D2", "D3"], "direction": "both", "amps": { "max": "0.1 A", "fromMemory": true } } },
    "total": { "max": "200 mA", "source": "sheet" },
    "outputHighOhms": { "typ": 25, "max": 35, "fromMemory": true },
    "outputLowOhms": { "typ": 20, "max": 30, "fromMemory": true },
    "inputLowVolts": { "max": "1.5 V", "source": "sheet" },
    "inputHighVolts": { "min": "3 V", "source": "sheet" },
    "pullUpOhms": { "min": "20k", "max": "50k", "source": "sheet" }
  },
  "reset": { "pin": "RST", "pullUpOhms": { "typ": "10k", "fromMemory": true }, "assertVolts": { "max": "0.5 V", "source": "sheet" } },
  "platform": { "macros": { "M": "1" }, "names": { "LED_BUILTIN": 3 }, "modes": { "0": "input", "1": "output" }, "intBits": 16 },
  "sources": { "sheet": { "document": "Data sheet 8271", "revision": "J", "publisher": "Maker" }, "plan": { "document": "Plan" } }
}`;

function board(text: string, others: Readonly<Record<string, string>> = { base }) {
  const find = (name: string) => {
    const found = others[name];
    return found === undefined ? undefined : { file: `${name}.json`, text: found };
  };
  const { value, problems } = readBoard({ file: 'own.json', text }, find);
  return { value, problems, codes: problems.map((one) => one.code), told: describeProblems(text, problems) };
}

describe('a board of its own', () => {
  const { value, told } = board(base);

  test('has no problem', () => expect(told).toBe(''));

  test('figures are filled and say where they come from', () => {
    expect(value?.limits).toMatchObject({
      pinRecommended: {
        min: 0.02,
        typ: 0.02,
        max: 0.02,
        source: 'Maker, Data sheet 8271, J, Table 1, VCC = 5 V',
      },
      outputHighOhms: { min: 25, typ: 25, max: 35, source: 'from memory' },
      inputHighVolts: { min: 3, typ: 3, max: 3 },
      pullUpOhms: { min: 20_000, typ: 35_000, max: 50_000, source: 'Maker, Data sheet 8271, J' },
      groups: [{ title: 'all pins', pins: ['D2', 'D3'], direction: 'both', amps: { max: 0.1 } }],
      total: { max: 0.2 },
    });
    expect(value?.limits.pullDownOhms).toBeUndefined();
    expect(value?.reset).toMatchObject({
      pin: 'RST',
      pullUpOhms: { typ: 10_000 },
      assertVolts: { max: 0.5 },
    });
  });

  test('pins, headers and parts on the board', () => {
    expect(value?.pins.map((pin) => pin.id)).toEqual(['D2', 'D3', 'A0', 'GND', 'RST', '5V']);
    expect(value?.pins[0]).toEqual({
      id: 'D2',
      number: 2,
      names: ['INT'],
      type: 'io',
      port: 'PD2',
      interrupt: 0,
      roles: [],
    });
    expect(value?.pins[5]).toMatchObject({ volts: { min: 4.5, typ: 5, max: 5.5 }, maxAmps: { max: 0.5 } });
    expect(value?.headers[1]?.positions).toEqual(['5V', 'GND', 'RST']);
    expect(value?.onBoard).toMatchObject([
      {
        id: 'lamp',
        source: 'Plan, page 1',
        inside: [{ ohms: { typ: 1000 } }, { volts: { typ: 2 }, atAmps: 0.002 }],
      },
    ]);
  });

  test('names and interrupts follow from the pin table', () => {
    expect(value?.platform).toEqual({
      macros: { M: '1' },
      names: { A0: 14, LED_BUILTIN: 3 },
      modes: { 0: 'input', 1: 'output' },
      intBits: 16,
      analogNumbers: {},
      ports: { PD2: 2 },
      roles: { x: 14 },
      interruptPins: { 0: 2, 1: 3 },
    });
  });

  test('cores that count analog inputs from 0 have their numbers', () => {
    const own = board(
      '{ "id": "mine", "extends": "base", "title": "M", "platform": { "macros": { "ARDUINO_ARCH_AVR": "1" } } }',
    );
    expect(own.value?.platform.analogNumbers).toEqual({ 0: 14 });
  });

  test('is plain data', () => expect(JSON.parse(JSON.stringify(value))).toEqual(value));
});

describe('a board that extends another', () => {
  const { value, told } = board(`{
    "id": "mine", "extends": "base", "title": "Mine",
    "pins": { "D2": { "names": ["button"], "interrupt": null }, "A0": null, "X": { "type": "not-connected" } },
    "headers": { "top": { "title": "row", "landmark": "the notch", "positions": ["D2", "GND"] }, "bottom": null },
    "onBoard": { "lamp": null },
    "limits": { "pinRecommended": { "typ": "5 mA", "source": "mine" }, "total": null },
    "platform": { "macros": { "M": null, "N": "2" } },
    "sources": { "mine": { "document": "My own measurement" } }
  }`);

  test('has no problem', () => expect(told).toBe(''));

  test('pins are merged key by key, null removes', () => {
    expect(value?.pins.map((pin) => pin.id)).toEqual(['D2', 'D3', 'GND', 'RST', '5V', 'X']);
    expect(value?.pins[0]).toEqual({
      id: 'D2',
      number: 2,
      names: ['button'],
      type: 'io',
      port: 'PD2',
      roles: [],
    });
  });

  test('headers and figures are replaced as a whole', () => {
    expect(value?.headers).toEqual([
      { id: 'top', title: 'row', landmark: 'the notch', positions: ['D2', 'GND'] },
    ]);
    expect(value?.onBoard).toEqual([]);
    expect(value?.limits.pinRecommended).toEqual({
      min: 0.005,
      typ: 0.005,
      max: 0.005,
      source: 'My own measurement',
    });
    expect(value?.limits.total).toBeUndefined();
    expect(value?.platform.macros).toEqual({ N: '2' });
  });

  test('a figure that was not replaced keeps the source of its own file', () => {
    expect(value?.limits.pinAbsolute.source).toBe('Maker, Data sheet 8271, J');
    const other = board(
      '{ "id": "x", "extends": "base", "sources": { "sheet": { "document": "Another" } } }',
    );
    expect(other.value?.limits.pinAbsolute.source).toBe('Maker, Data sheet 8271, J');
  });

  test('can be extended in turn', () => {
    const middle =
      '{ "id": "middle", "extends": "base", "title": "Middle", "pins": { "D3": { "pwm": null } } }';
    const top = board('{ "id": "top", "extends": "middle", "chip": "Other" }', { base, middle });
    expect(top.told).toBe('');
    expect(top.value).toMatchObject({ id: 'top', title: 'Middle', chip: 'Other' });
    expect(top.value?.pins[1]?.pwm).toBeUndefined();
  });
});

describe('mistakes', () => {
  const changed = (from: string, to: string) => board(base.replace(from, to));

  test('a circle of boards', () => {
    const others = { a: '{ "id": "a", "extends": "b" }', b: '{ "id": "b", "extends": "a" }' };
    const { value, problems } = board('{ "id": "own", "extends": "a" }', others);
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([
      { code: 'circular-extends', span: { file: 'b.json', start: 25, end: 26 } },
    ]);
    expect(board('{ "id": "own", "extends": "own" }', { own: '' }).codes).toEqual(['circular-extends']);
  });

  test('a board to extend that is not there', () => {
    expect(board('{ "id": "own", "extends": "none" }').codes).toEqual(['unknown-board']);
  });

  test('a half-typed board makes none', () => {
    const { value, codes } = board(base.slice(0, -1));
    expect(codes).toEqual(['syntax']);
    expect(value).toBeUndefined();
  });

  test('all that is missing is told in one sentence', () => {
    const { value, problems } = board('{ "id": "own", "pins": { "D1": { "type": "io" } } }');
    expect(value).toBeUndefined();
    expect(problems.map((one) => one.message)).toEqual([
      'This board lacks limits.pinRecommended, limits.pinAbsolute, limits.outputHighOhms, limits.outputLowOhms, ' +
        'limits.inputLowVolts, limits.inputHighVolts, limits.pullUpOhms, title, chip, logicRail and platform.intBits.',
    ]);
  });

  test.each([
    ['"positions": ["D2",', '"positions": ["D22",', 'unknown-pin', '"D2"'],
    ['"logicRail": "5V"', '"logicRail": "5W"', 'unknown-pin', '"5V"'],
    ['"pin": "RST"', '"pin": "RSTT"', 'unknown-pin', '"RST"'],
    ['"pins": ["D2", "D3"]', '"pins": ["D2", "D9"]', 'unknown-pin', ''],
    ['"names": ["INT"]', '"names": ["D3"]', 'double-name', ''],
    ['"number": 3', '"number": 2', 'double-name', ''],
    ['"source": "plan"', '"source": "plam"', 'unknown-source', '"plan"'],
    ['"1 kohm"', '"1 mA"', 'wrong-figure', ''],
    ['"1 kohm"', '{ "parameter": "x" }', 'wrong-figure', ''],
    ['["D3", "~lamp"]', '["D33", "~lamp"]', 'unknown-pin', ''],
    ['{ "max": "200 mA",', '{ "max": "200 mW",', 'wrong-figure', ''],
    ['{ "min": "20k", "max": "50k"', '{ "min": "60k", "max": "50k"', 'wrong-figure', ''],
  ])('%s → %s', (from, to, code, hint) => {
    const { problems, told } = changed(from, to);
    expect(problems[0]?.code, told).toBe(code);
    expect(problems[0]?.hint ?? '').toContain(hint);
  });

  test.each([
    ['"type": "reset"', '"type": "rest"', 'unknown-word'],
    ['"landmark"', '"landmrk"', 'unknown-key'],
    ['"fromMemory": true }', '"fromMemory": false }', 'wrong-value'],
    ['{ "max": "40 mA", "source": "sheet" }', '"40 mA"', 'wrong-type'],
    ['{ "max": "40 mA", "source": "sheet" }', '{ "source": "sheet" }', 'missing-key'],
    ['{ "max": "40 mA", "source": "sheet" }', '{ "max": "40 mA" }', 'missing-key'],
    ['"intBits": 16', '"intBits": 8', 'wrong-value'],
    ['"0": "input"', '"zero": "input"', 'wrong-key'],
    ['"type": "resistor"', '"type": "resistr"', 'unknown-word'],
    ['"ohms": "1 kohm"', '"ohm": "1 kohm"', 'unknown-key'],
  ])('the shape: %s → %s', (from, to, code) => {
    const { codes, told } = changed(from, to);
    expect(codes, told).toContain(code);
  });

  test('a manifest points to the board file that has the problem, and says that it cannot be used', () => {
    const library = openLibrary({
      './boards/mine.json': '{ "id": "mine", "extends": "nano-v3", "pinz": {} }',
    });
    const { build, problems } = read('{ "board": "boards/mine.json" }', library);
    expect(build).toBeUndefined();
    expect(problems.map((one) => one.code)).toEqual(['unknown-board']);
    const found = openLibrary({ 'boards/mine.json': '{ "id": "mine", "extends": "nano-v3", "pinz": {} }' });
    const again = read('{ "board": "boards/mine.json" }', found);
    expect(again.build?.board.id).toBe('mine');
    expect(again.problems).toMatchObject([{ code: 'unknown-key', span: { file: 'boards/mine.json' } }]);
    const broken = read('{ "board": "b.json" }', openLibrary({ 'b.json': '{ "id": "b" }' }));
    expect(broken.codes).toEqual(['incomplete-board', 'unusable-board']);
  });
});

test('the boards of the library have no problem', () => {
  const boards = filesOf('boards');
  expect(boards.size).toBeGreaterThan(0);
  for (const [name, text] of boards) {
    const find = (id: string) => {
      const found = boards.get(id);
      return found === undefined ? undefined : { file: `${id}.json`, text: found };
    };
    const { problems } = readBoard({ file: `${name}.json`, text }, find);
    expect(describeProblems(text, problems), name).toBe('');
  }
});
