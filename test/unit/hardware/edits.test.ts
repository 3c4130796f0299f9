// The edits on texts that people write, byte for byte.
import { describe, expect, test } from 'vitest';
import { applyEdits, type Edit } from '../../../server/src/base/span';
import {
  composeEdits,
  insertIntoPath,
  insertIntoWire,
  insertPart,
  insertWire,
  removeKey,
  removePart,
  removeWire,
  renameKey,
  renamePart,
  replaceValue,
  reversePath,
} from '../../../server/src/hardware';

const file = 'hardware.jsonc';
const part = { kind: 'resistor', value: '330' };
const wire = { from: 'D7', to: 'R2.1' };

/** Lines, with the indentation of the first taken away from all. */
function text(strings: TemplateStringsArray): string {
  const lines = (strings[0] ?? '').split('\n').slice(1, -1);
  const indent = /^ */.exec(lines[0] ?? '')?.[0].length ?? 0;
  return `${lines.map((line) => line.slice(indent)).join('\n')}\n`;
}

function edited(before: string, edit: (text: string) => readonly Edit[]): string {
  return applyEdits(before, edit(before));
}

describe('a part is put in', () => {
  const put = (before: string) => edited(before, (now) => insertPart(now, 'R2', part, file));

  test('behind the last one, whose remark stays with it', () => {
    const before = text`
      {
        "parts": {
          "R1":     { "kind": "resistor" }, // of the beacon
          "beacon": { "kind": "led" } // green
          // more to come
        },
        "wires": []
      }
    `;
    expect(put(before)).toBe(text`
      {
        "parts": {
          "R1":     { "kind": "resistor" }, // of the beacon
          "beacon": { "kind": "led" }, // green
          "R2":     { "kind": "resistor", "value": "330" }
          // more to come
        },
        "wires": []
      }
    `);
  });

  test('with a trailing comma where they have one', () => {
    expect(put('{\n\t"parts": {\n\t\t"R1": {},\n\t}\n}')).toBe(
      '{\n\t"parts": {\n\t\t"R1": {},\n\t\t"R2": { "kind": "resistor", "value": "330" },\n\t}\n}',
    );
  });

  test('in the column of the others', () => {
    const before = '{\n  "parts": {\n    "beacon": {},\n    "R1":     {}\n  }\n}';
    expect(put(before)).toContain('\n    "R2":     { "kind"');
    expect(put('{ "parts": { "R1":  {}, "a": {} } }')).toContain('"R2": {');
    const long = edited(before, (now) => insertPart(now, 'gangway', part, file));
    expect(long).toContain('\n    "gangway": { "kind"');
  });

  test('into an object of one line', () => {
    expect(put('{ "parts": { "R1": {} } }')).toBe(
      '{ "parts": { "R1": {}, "R2": { "kind": "resistor", "value": "330" } } }',
    );
  });

  test('into an empty object, in the indentation of the file', () => {
    expect(put('{\r\n    "parts": {}\r\n}')).toBe(
      '{\r\n    "parts": {\r\n        "R2": { "kind": "resistor", "value": "330" }\r\n    }\r\n}',
    );
    expect(put('{\n  "parts": {\n    // none yet\n  }\n}')).toBe(
      '{\n  "parts": {\n    // none yet\n    "R2": { "kind": "resistor", "value": "330" }\n  }\n}',
    );
  });

  test('into a section that is made for it, before the wires', () => {
    expect(put('{\n  "board": "x", // the board\n  // the wires\n  "wires": []\n}')).toBe(
      text`
        {
          "board": "x", // the board
          "parts": {
            "R2": { "kind": "resistor", "value": "330" }
          },
          // the wires
          "wires": []
        }
      `.trimEnd(),
    );
  });

  test('into a file that is empty', () => {
    const made = '{\n  "parts": {\n    "R2": { "kind": "resistor", "value": "330" }\n  }\n}\n';
    expect(put('')).toBe(made);
    expect(put('\uFEFF')).toBe(`\uFEFF${made}`);
    expect(put('// hardware\n')).toBe(`// hardware\n${made}`);
    expect(put('// hardware')).toBe(`// hardware\n${made}`);
  });

  test('nowhere, where that cannot be done', () => {
    for (const before of [
      '{ "parts": { "R2": {} } }',
      '{ "parts": [] }',
      '[]',
      '7',
      '{ "parts": { ',
      '{ "parts" }',
    ]) {
      expect(insertPart(before, 'R2', part, file)).toEqual([]);
    }
  });
});

describe('an entry is taken out', () => {
  const before = text`
    {
      "parts": {
        // the resistor of the beacon
        "R1": { "kind": "resistor" }, // 470 ohm
        /* green */ "beacon": { "kind": "led" },
        "restart": {
          "kind": "push-button" // white
        } /* last */
      }
    }
  `;

  test('with the remark on its line, without the one above', () => {
    expect(edited(before, (now) => removePart(now, 'R1', file))).toBe(
      before.replace('    "R1": { "kind": "resistor" }, // 470 ohm\n', ''),
    );
  });

  test('the last one, with the comma that is left over', () => {
    expect(edited(before, (now) => removePart(now, 'restart', file))).toBe(text`
      {
        "parts": {
          // the resistor of the beacon
          "R1": { "kind": "resistor" }, // 470 ohm
          /* green */ "beacon": { "kind": "led" }
        }
      }
    `);
  });

  test('the only one', () => {
    expect(edited('{\n  "parts": {\n    "R1": {}\n  }\n}', (now) => removePart(now, 'R1', file))).toBe(
      '{\n  "parts": {}\n}',
    );
    expect(edited('{ "wires": [ /* a */ {} /* b */ ] }', (now) => removeWire(now, 0, file))).toBe(
      '{ "wires": [ /* a */ /* b */ ] }',
    );
  });

  test('never so that what follows falls into a line comment', () => {
    const odd = '{ "wires": [ // first\n  {"from": "a"} ] }';
    expect(edited(odd, (now) => removeWire(now, 0, file))).toBe('{ "wires": [ // first\n   ] }');
  });

  test('a wire out of the middle of a line', () => {
    const line = '{ "wires": [{"a": 1}, {"b": 2}, {"c": 3}] }';
    expect(edited(line, (now) => removeWire(now, 1, file))).toBe('{ "wires": [{"a": 1}, {"c": 3}] }');
    expect(edited(line, (now) => removeWire(now, 2, file))).toBe('{ "wires": [{"a": 1}, {"b": 2}] }');
    expect(edited(line, (now) => removeWire(now, 0, file))).toBe('{ "wires": [{"b": 2}, {"c": 3}] }');
  });

  test('no entry, where there is none', () => {
    expect(removeWire('{ "wires": [] }', 0, file)).toEqual([]);
    expect(removeWire('{ "wires": {} }', 0, file)).toEqual([]);
    expect(removePart('{}', 'R1', file)).toEqual([]);
    expect(removeKey('{ "a": 1', ['a'], file)).toEqual([]);
  });
});

describe('a path', () => {
  const before =
    '{ "wires": [{ "path": ["D7", /* lamp */ "beacon", "GND"], "colours": ["red", "black"], "lengths": ["1 cm", 2] }] }';

  test('takes an item, and its lists keep their count', () => {
    expect(edited(before, (now) => insertIntoPath(now, 0, 1, 'R1', file))).toBe(
      '{ "wires": [{ "path": ["D7", "R1", /* lamp */ "beacon", "GND"], "colours": ["red", "red", "black"], "lengths": ["1 cm", "1 cm", 2] }] }',
    );
    expect(edited(before, (now) => insertIntoPath(now, 0, 2, 'R1', file))).toBe(
      '{ "wires": [{ "path": ["D7", /* lamp */ "beacon", "R1", "GND"], "colours": ["red", "black", "black"], "lengths": ["1 cm", 2, 2] }] }',
    );
    expect(edited(before, (now) => insertIntoPath(now, 0, 0, 'R1', file))).toContain(
      '"path": ["R1", "D7", /* lamp */ "beacon", "GND"], "colours": ["red", "red", "black"]',
    );
    expect(edited(before, (now) => insertIntoPath(now, 0, 9, 'R1', file))).toContain(
      '"GND", "R1"], "colours": ["red", "black", "black"], "lengths": ["1 cm", 2, 2]',
    );
  });

  test('a list that was not complete is left as it is', () => {
    const odd = '{ "wires": [{ "path": ["D7", "beacon"], "colours": [] }] }';
    expect(edited(odd, (now) => insertIntoPath(now, 0, 1, 'R1', file))).toBe(
      '{ "wires": [{ "path": ["D7", "R1", "beacon"], "colours": [] }] }',
    );
  });

  test('is turned round', () => {
    expect(edited(before, (now) => reversePath(now, 0, file))).toBe(
      '{ "wires": [{ "path": ["GND", /* lamp */ "beacon", "D7"], "colours": ["black", "red"], "lengths": [2, "1 cm"] }] }',
    );
    expect(
      edited(
        edited(before, (now) => reversePath(now, 0, file)),
        (now) => reversePath(now, 0, file),
      ),
    ).toBe(before);
  });

  test('a plain wire becomes two where a part is put into it', () => {
    const plain =
      '{\n  "wires": [\n    { "from": "D7", "to": "beacon.anode", "colour": "red", "length": "5 cm" } // lamp\n  ]\n}';
    expect(edited(plain, (now) => insertIntoWire(now, 0, 0, 'R1', ['1', '2'], file))).toBe(
      '{\n  "wires": [\n    { "from": "D7", "to": "R1.1", "colour": "red", "length": "5 cm" }, // lamp\n' +
        '    { "from": "R1.2", "to": "beacon.anode", "colour": "red", "length": "5 cm" }\n  ]\n}',
    );
    expect(edited(before, (now) => insertIntoWire(now, 0, 0, 'R1', ['1', '2'], file))).toBe(
      edited(before, (now) => insertIntoPath(now, 0, 1, 'R1', file)),
    );
  });
});

describe('values and keys', () => {
  test('a value is replaced, or added where its key is missing', () => {
    const before = '{ "parts": { "R1": { "kind": "resistor", "value": /* was 220 */ "330" } } }';
    expect(edited(before, (now) => replaceValue(now, ['parts', 'R1', 'value'], '470', file))).toBe(
      before.replace('"330"', '"470"'),
    );
    expect(edited(before, (now) => replaceValue(now, ['parts', 'R1', 'power'], '1 W', file))).toBe(
      before.replace('"330"', '"330", "power": "1 W"'),
    );
    expect(replaceValue(before, ['stock', 'power'], '1 W', file)).toEqual([]);
    expect(replaceValue(before, ['wires', 0], {}, file)).toEqual([]);
    expect(replaceValue(before, [], 1, file)).toEqual([]);
  });

  test('a key is renamed unless the new one is taken', () => {
    const before = '{ "severity": { "idle-wire": "off", "x": "off" } }';
    expect(edited(before, (now) => renameKey(now, ['severity', 'idle-wire'], 'loose-wire', file))).toBe(
      before.replace('idle-wire', 'loose-wire'),
    );
    expect(renameKey(before, ['severity', 'idle-wire'], 'x', file)).toEqual([]);
    expect(renameKey(before, ['severity', 'y'], 'z', file)).toEqual([]);
  });

  test('a part is renamed with the wires that go to it', () => {
    const before =
      '{ "parts": { "R1": {}, "R10": {} }, "wires": [{ "path": ["D7", "R1", "R10"] }, { "from": "R1.2", "to": "R10.1" }] }';
    expect(edited(before, (now) => renamePart(now, 'R1', 'R2', file))).toBe(
      '{ "parts": { "R2": {}, "R10": {} }, "wires": [{ "path": ["D7", "R2", "R10"] }, { "from": "R2.2", "to": "R10.1" }] }',
    );
    expect(renamePart(before, 'R1', 'R10', file)).toEqual([]);
    expect(renamePart(before, 'R3', 'R4', file)).toEqual([]);
  });
});

test('a part and a wire into a file that has neither', () => {
  const before = '{\n  "board": "nano-v3" // ours\n}\n';
  const edits = composeEdits(
    before,
    file,
    (now) => insertPart(now, 'R2', part, file),
    (now) => insertWire(now, wire, file),
  );
  expect(applyEdits(before, edits)).toBe(text`
    {
      "board": "nano-v3", // ours
      "parts": {
        "R2": { "kind": "resistor", "value": "330" }
      },
      "wires": [
        { "from": "D7", "to": "R2.1" }
      ]
    }
  `);
  expect(edits.map(({ start, end }) => [start, end])).toEqual([
    [22, 22],
    [30, 30],
  ]);
});
