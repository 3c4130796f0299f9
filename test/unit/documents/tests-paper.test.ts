/** Figures of the test sheet against sums done by hand. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type PaperInput, testsPaper, writeMarkdown } from '../../../server/src/documents';
import { openTestBench, type TestBench } from '../../fixture/bench';
import { inputOf } from './harbour';
import { type Row, readTables } from './read-page';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

function sheet(parts: object, wires: object[], sketch: string): ReadonlyMap<string, Row[]> {
  const manifest = { format: 1, title: 't', board: 'nano-v3', parts, wires };
  return tablesOf(inputOf(bench, JSON.stringify(manifest), sketch, 'watch.ino'));
}

function tablesOf(input: PaperInput): ReadonlyMap<string, Row[]> {
  return readTables(writeMarkdown(testsPaper(input)));
}

const idle = 'void setup() {}\nvoid loop() {}\n';

describe('power off', () => {
  it('counts what lies beside a resistor: 1 kohm beside 1 kohm, both within 5 %, is 475 to 525 ohm', () => {
    const parts = { R1: { kind: 'resistor', value: '1k' }, R2: { kind: 'resistor', value: '1k' } };
    const rows = sheet(parts, [{ path: ['D2', 'R1', 'GND'] }, { path: ['D2', 'R2', 'GND'] }], idle);
    const expected = rows.get('Power off: parts')?.map((row) => row.expect);
    expect(expected).toEqual(['475 / 500 / 525 ohm', '475 / 500 / 525 ohm']);
  });

  it('knows a contact at rest and pressed, with a resistor beside it', () => {
    const parts = { B: { kind: 'push-button' }, R1: { kind: 'resistor', value: '10k', tolerance: '1%' } };
    const wires = [{ from: 'D2', to: 'B.1' }, { from: 'B.2', to: 'GND' }, { path: ['D2', 'R1', 'GND'] }];
    const rows = sheet(parts, wires, idle).get('Power off: parts') ?? [];
    expect(rows.map((row) => [row.between, row.expect])).toEqual([
      ['B.1 and B.2, untouched', '9.9 / 10 / 10.1 kohm'],
      ['B.1 and B.2, held pressed', 'below 1 ohm'],
      ['R1.1 and R1.2', '9.9 / 10 / 10.1 kohm'],
    ]);
  });

  it('tells what joins a supply and ground, and positions side by side that solder may bridge', () => {
    const parts = { R1: { kind: 'resistor', value: '220' }, R2: { kind: 'resistor', value: '330' } };
    const wires = [{ path: ['5V', 'R1', 'GND'] }, { path: ['D2', 'R2', 'D3'] }];
    const rows = sheet(parts, wires, idle).get('Power off: no shorts') ?? [];
    const expected = new Map(rows.map((row) => [row.between?.split(', ')[0], row.expect]));
    expect(expected.get('5V and GND')).toBe('209 / 220 / 231 ohm');
    expect(expected.get('D3 and D2') ?? expected.get('D2 and D3')).toBe('314 / 330 / 347 ohm');
  });
});

describe('power on', () => {
  it('divides 5 V (4.4 to 5.25 V) by two resistors of 10 kohm within 5 %: 2.1 / 2.5 / 2.8 V', () => {
    const parts = { R1: { kind: 'resistor', value: '10k' }, R2: { kind: 'resistor', value: '10k' } };
    const wires = [{ path: ['5V', 'R1', 'A0'] }, { path: ['A0', 'R2', 'GND'] }];
    const read = 'void setup() {}\nvoid loop() { analogRead(A0); }\n';
    const rows = sheet(parts, wires, read).get('Power on: voltages and currents') ?? [];
    // 4.4 V x 9.5 / 20 = 2.09 V; 5.25 V x 10.5 / 20 = 2.76 V.
    expect(rows.find((row) => row.measure === 'A0 against GND')?.expect).toBe('2.1 / 2.5 / 2.8 V');
  });

  it('tells what a button does to the pin it is read by, and where the sketch reads it', () => {
    const parts = { B: { kind: 'push-button' } };
    const wires = [
      { from: 'D2', to: 'B.1' },
      { from: 'B.2', to: 'GND' },
    ];
    const sketch =
      'void setup() {\n  pinMode(2, INPUT_PULLUP);\n}\nvoid loop() {\n  if (digitalRead(2) == LOW) delay(1);\n}\n';
    const [row] = sheet(parts, wires, sketch).get('Power on: buttons and switches') ?? [];
    expect(row?.do).toBe('hold it pressed');
    expect(row?.['what must happen']).toMatch(
      /^D2 against GND goes from 4\.4 \/ 5\.0 \/ 5\.3 V to 0(\.0)? V/,
    );
    expect(row?.['what must happen']).toContain(
      'the sketch reads D2 with digitalRead() in watch.ino, line 5',
    );
  });

  it('says that a button on the reset line starts the sketch anew', () => {
    const wires = [
      { from: 'RST', to: 'B.1' },
      { from: 'B.2', to: 'GND' },
    ];
    const [row] =
      sheet({ B: { kind: 'push-button' } }, wires, idle).get('Power on: buttons and switches') ?? [];
    expect(row?.['what must happen']).toContain('the sketch starts from the beginning');
  });

  it('has a row in each state that the sketch reaches, and none for a state that it does not', () => {
    const parts = { L: { kind: 'led', colour: 'red' }, R1: { kind: 'resistor', value: '470' } };
    const sketch = 'void setup() {\n  pinMode(7, OUTPUT);\n  digitalWrite(7, HIGH);\n}\nvoid loop() {}\n';
    const rows =
      sheet(parts, [{ path: ['D7', 'R1', 'L', 'GND'] }], sketch).get('Power on: voltages and currents') ?? [];
    const states = rows.map((row) => row.state).filter((state) => state !== '');
    expect(states).toContain('D7 high');
    expect(states).not.toContain('D7 with pull-up');
    expect(rows.some((row) => row.measure?.startsWith('current through'))).toBe(true);
  });
});
