// What a right manifest means: parts with figures, wires with ends, holes and nets.
import { describe, expect, test } from 'vitest';
import { freePins, freePosition, type HardwareLibrary } from '../../../server/src/hardware';
import { openLibrary, readClean } from './library';

const example = `{
  "$schema": "x", "format": 1,
  "title": "Harbour model", "revision": "B",
  "board": "nano-v3",
  "stock": { "resistors": ["1k", "220", "4k7", 330], "tolerance": "1%", "power": "0.5 W" },
  "policy": { "pinCurrent": "12 mA" },
  "parts": {
    "beacon":  { "kind": "led", "colour": "green", "purpose": "lit while the horn is armed", "note": "3 mm" },
    "R1":      { "kind": "resistor", "value": "4k7" },
    "restart": { "kind": "push-button", "action": "momentary" },
    "dial":    { "kind": "potentiometer", "value": "10k" },
    "big":     { "kind": "capacitor", "value": "100u", "polarised": true },
  },
  "wires": [
    { "path": ["D7", "R1", "beacon", "GND"], "colours": ["red", "blue", "black"], "lengths": ["10 cm", "20 mm", 0.3], },
    { "from": "RST", "to": "restart.1", "colour": "white", "length": "20 cm", "note": "twisted" },
    { "from": "restart.2", "to": "GND@right.12" },
    { "path": ["5V", "dial.2"] }, { "path": ["dial.1", "GND", "big.-"] }, // wiper is free
  ],
  "severity": { "idle-wire": "off", "x": "hint" }
}`;

const build = readClean(example);

describe('the heading', () => {
  test('title, revision, severity and place of the board', () => {
    expect(build).toMatchObject({
      file: 'hardware.jsonc',
      title: 'Harbour model',
      revision: 'B',
      severity: { 'idle-wire': 'off', x: 'hint' },
    });
    expect(example.slice(build.boardSpan?.start, build.boardSpan?.end)).toBe('nano-v3');
  });

  test('stock in ascending order, with the words as typed', () => {
    expect(build.stock).toEqual({
      resistors: [220, 330, 1000, 4700],
      text: '1k, 220, 4k7, 330',
      tolerance: 0.01,
      watts: 0.5,
    });
  });

  test('a series is spelled out from 1 ohm to 10 Mohm', () => {
    const { stock } = readClean('{ "board": "nano-v3", "stock": { "resistors": "E6" } }');
    expect(stock.text).toBe('E6');
    expect(stock.resistors).toHaveLength(7 * 6 + 1);
    expect(stock.resistors.slice(0, 7)).toEqual([1, 1.5, 2.2, 3.3, 4.7, 6.8, 10]);
    expect(stock.resistors.at(-1)).toBe(1e7);
  });

  test('policy is a figure of one’s own, the limit, or the working figure', () => {
    expect(build.policy.pinAmps).toBe(0.012);
    const limit = readClean('{ "board": "nano-v3", "policy": { "pinCurrent": "absolute" } }');
    expect(limit.policy.pinAmps).toBe(limit.board.limits.pinAbsolute.max);
    const bare = readClean('{ "board": "nano-v3" }');
    expect(bare.policy.pinAmps).toBe(bare.board.limits.pinRecommended.max);
  });
});

describe('parts', () => {
  const byId = new Map(build.parts.map((part) => [part.id, part]));

  test('have the figures of their kind and their entry', () => {
    expect(byId.get('R1')).toMatchObject({
      kind: 'resistor',
      series: ['1', '2'],
      inside: [
        { type: 'resistor', ends: ['1', '2'], ohms: { min: 4653, typ: 4700, max: 4747 }, maxWatts: 0.5 },
      ],
      parameters: { value: '4k7', tolerance: '1%', power: '0.5 W' },
    });
    expect(byId.get('beacon')).toMatchObject({
      title: 'LED',
      purpose: 'lit while the horn is armed',
      note: '3 mm',
      parameters: { colour: 'green' },
      inside: [{ type: 'diode', ends: ['anode', 'cathode'], lamp: true }],
    });
  });

  test('know where they stand', () => {
    const beacon = byId.get('beacon');
    const at = (span: { start: number; end: number } | undefined) => example.slice(span?.start, span?.end);
    expect(at(beacon?.span)).toBe('beacon');
    expect(at(beacon?.entry)).toMatch(/^"beacon": .*"3 mm" }$/);
    expect(at(beacon?.valueSpans.colour)).toBe('green');
    expect(Object.keys(byId.get('R1')?.valueSpans ?? {})).toEqual(['value']);
  });

  test('come in variants', () => {
    expect(byId.get('big')?.terminals.map((one) => one.id)).toEqual(['+', '-']);
    expect(byId.get('big')?.series).toEqual(['+', '-']);
    expect(byId.get('big')?.inside).toMatchObject([{ type: 'capacitor', ends: ['+', '-'], polarised: true }]);
    expect(byId.get('dial')?.series).toBeUndefined();
    expect(byId.get('dial')?.inside).toMatchObject([
      { type: 'potentiometer', ends: ['1', '2'], wiper: 'wiper' },
    ]);
  });
});

describe('wires', () => {
  const ends = build.wires.map(({ id, ends: both }) =>
    [id, ...both.map((end) => (end.kind === 'pin' ? end.pin : `${end.part}.${end.terminal}`))].join(' '),
  );

  test('a path runs through its parts from the first terminal to the second', () => {
    expect(ends).toEqual([
      'w1.1 D7 R1.1',
      'w1.2 R1.2 beacon.anode',
      'w1.3 beacon.cathode GND',
      'w2 RST restart.1',
      'w3 restart.2 GND',
      'w4.1 5V dial.2',
      'w5.1 dial.1 GND',
      'w5.2 GND big.-',
    ]);
  });

  test('have colours and lengths in metres', () => {
    expect(build.wires.map(({ colour, length }) => [colour, length])).toEqual([
      ['red', 0.1],
      ['blue', 0.02],
      ['black', 0.3],
      ['white', 0.2],
      [undefined, undefined],
      [undefined, undefined],
      [undefined, undefined],
      [undefined, undefined],
    ]);
    expect(build.wires[3]?.note).toBe('twisted');
  });

  test('know their ends and their entry in the text', () => {
    const [, second] = build.wires;
    const texts = second?.ends.map((end) => example.slice(end.span.start, end.span.end));
    expect(texts).toEqual(['R1', 'beacon']);
    expect(second?.span.start).toBe(example.indexOf('{ "path": ["D7"'));
  });

  test('a path may start and end in a part', () => {
    const { wires } = readClean(`{ "board": "nano-v3", "parts": { "a": { "kind": "resistor", "value": 1 },
      "b": { "kind": "resistor", "value": 1 } }, "wires": [{ "path": ["a", "b"] }] }`);
    expect(wires[0]?.ends).toMatchObject([
      { part: 'a', terminal: '2' },
      { part: 'b', terminal: '1' },
    ]);
  });

  test('names are taken exactly first, then in upper or lower case', () => {
    const { wires } =
      readClean(`{ "board": "nano-v3", "parts": { "Lamp": { "kind": "led" }, "lamp": { "kind": "led" },
      "horn": { "kind": "buzzer" } }, "wires": [
        { "from": "lamp.Anode", "to": "d7" }, { "from": "Lamp.k", "to": "8" }, { "from": "HORN.+", "to": "sda" }] }`);
    expect(wires.map((wire) => wire.ends)).toMatchObject([
      [{ part: 'lamp', terminal: 'anode' }, { pin: 'D7' }],
      [{ part: 'Lamp', terminal: 'cathode' }, { pin: 'D8' }],
      [{ part: 'horn', terminal: '+' }, { pin: 'A4' }],
    ]);
  });
});

describe('header positions', () => {
  const words = (library?: HardwareLibrary, ...wires: string[]) =>
    readClean(
      `{ "board": "nano-v3", "parts": { "s": { "kind": "push-button" }, "t": { "kind": "push-button" } },
      "wires": [${wires.join(',')}] }`,
      library,
    ).wires.map(({ ends: [end] }) => (end.kind === 'pin' ? end.position?.words : undefined));

  test('declared ones are kept and reserved, the others get the first free one', () => {
    expect(
      words(
        undefined,
        '{ "from": "GND", "to": "s.1" }',
        '{ "from": "GND@left.14", "to": "s.2" }',
        '{ "from": "GND", "to": "t.1" }',
      ),
    ).toEqual([
      'GND, right header, 12th from the USB end',
      'GND, left header, 14th from the USB end',
      undefined,
    ]);
  });

  test('a pin with one hole has it for every wire', () => {
    expect(words(undefined, '{ "from": "D7", "to": "s.1" }', '{ "from": "7", "to": "s.2" }')).toEqual([
      'D7, right header, 6th from the USB end',
      'D7, right header, 6th from the USB end',
    ]);
  });

  test('both wires of a pin inside a path share its hole', () => {
    const { wires } = readClean(`{ "board": "nano-v3", "parts": { "s": { "kind": "push-button" },
      "t": { "kind": "push-button" } }, "wires": [{ "path": ["s.1", "GND", "t.1"] }, { "from": "s.2", "to": "GND" }] }`);
    const holes = wires.flatMap(({ ends }) =>
      ends.flatMap((end) => (end.kind === 'pin' ? [end.position?.header] : [])),
    );
    expect(holes).toEqual(['left', 'left', 'right']);
  });

  test('say whether they were declared', () => {
    const positions = build.wires
      .flatMap((wire) => wire.ends)
      .flatMap((end) => (end.kind === 'pin' ? [end.position] : []));
    expect(positions.map((one) => one && [one.header, one.index, one.declared])).toEqual([
      ['right', 6, false],
      ['left', 14, false],
      ['left', 13, false],
      ['right', 12, true],
      ['left', 12, false],
      undefined,
      undefined,
    ]);
  });

  test('free holes and free pins', () => {
    const bare = readClean('{ "board": "nano-v3" }');
    expect(freePosition(bare, 'GND')?.words).toBe('GND, left header, 14th from the USB end');
    expect(freePosition(build, 'GND')).toBeUndefined();
    expect(freePosition(build, 'D7')).toBeUndefined();
    expect(freePosition(build, 'D8')).toMatchObject({ header: 'right', index: 5, declared: false });
    const free = freePins(build).map((pin) => pin.id);
    expect(free).toContain('D8');
    expect(free).toContain('A7');
    expect(free).not.toContain('D7');
    expect(free).not.toContain('GND');
  });
});

describe('nets', () => {
  test('join what wires join, and are named by rail, pin or terminal', () => {
    const names = build.nets.map((net) => [
      net.id,
      net.pins.join(),
      net.terminals.map((one) => `${one.part}.${one.terminal}`).join(),
      net.wires.join(),
    ]);
    expect(names).toEqual([
      ['D7', 'D7', 'R1.1', 'w1.1'],
      ['R1.2', '', 'R1.2,beacon.anode', 'w1.2'],
      ['GND', 'GND', 'beacon.cathode,restart.2,dial.1,big.-', 'w1.3,w3,w5.1,w5.2'],
      ['RST', 'RST', 'restart.1', 'w2'],
      ['5V', '5V', 'dial.2', 'w4.1'],
    ]);
  });

  test('a net with several pins is named by ground, then supply, then the order of the board', () => {
    const { nets } = readClean(`{ "board": "nano-v3", "parts": {}, "wires": [
      { "from": "D9", "to": "D8" }, { "from": "D4", "to": "5V" }, { "from": "D3", "to": "GND" }, { "from": "3V3", "to": "D3" }] }`);
    expect(nets.map((net) => [net.id, ...net.pins])).toEqual([
      ['D8', 'D8', 'D9'],
      ['5V', '5V', 'D4'],
      ['GND', 'GND', '3V3', 'D3'],
    ]);
  });
});

test('a build is plain data', () => {
  expect(JSON.parse(JSON.stringify(build))).toEqual(build);
});

test('every board of the library reads a build', () => {
  const library = openLibrary();
  for (const id of library.boardIds) expect(readClean(`{ "board": "${id}" }`, library).board.id).toBe(id);
});
