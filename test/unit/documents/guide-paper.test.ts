/** The guide leaves nothing out, the check that says so can fail, and its sums are those that one does by hand. */
import { beforeAll, describe, expect, it } from 'vitest';
import {
  addendumPaper,
  checkGuide,
  gatherPaperInput,
  guidePaper,
  hookupPaper,
  type PaperInput,
  partsPaper,
  testsPaper,
  writeMarkdown,
} from '../../../server/src/documents';
import { rules } from '../../../server/src/rules/generated/registry';
import { openTestBench, type TestBench } from '../../fixture/bench';
import { readFixture } from '../../fixture/read-fixture';
import { inputOf, readHarbour } from './harbour';
import { readTables } from './read-page';

let bench: TestBench;
let harbour: PaperInput;
beforeAll(async () => {
  bench = await openTestBench();
  harbour = (await readHarbour()).after;
});

const idle = 'void setup() {}\nvoid loop() {}\n';
const lit = 'void setup() {\n  pinMode(7, OUTPUT);\n  digitalWrite(7, HIGH);\n}\nvoid loop() {}\n';

function inputFor(manifest: object, sketch = idle): PaperInput {
  return inputOf(
    bench,
    JSON.stringify({ format: 1, title: 't', board: 'nano-v3', ...manifest }),
    sketch,
    'a.ino',
  );
}

describe('completeness', () => {
  it('holds for every example of every rule', () => {
    let wires = 0;
    for (const { files } of rules.flatMap(({ examples }) =>
      examples.map(({ build }) => readFixture(build)),
    )) {
      const input = gatherPaperInput(bench.analyse(files), []);
      if (!input) continue;
      expect(checkGuide(input).missing).toEqual([]);
      const others = [
        hookupPaper(input.build),
        partsPaper(input),
        testsPaper(input),
        addendumPaper(input, input),
      ];
      expect(others.map((paper) => writeMarkdown(paper)).join()).not.toMatch(
        /\bundefined\b|\bNaN\b|\[object/,
      );
      wires += input.build.wires.length;
    }
    expect(wires).toBeGreaterThan(100);
  });

  it('misses what is taken out of the guide', () => {
    const guide = guidePaper(harbour);
    const without = (id: string) => ({
      ...guide,
      sections: guide.sections.filter((section) => section.id !== id),
    });
    expect(checkGuide(harbour, guide).missing).toEqual([]);
    const missing = checkGuide(harbour, without('unit-beacon')).missing;
    expect(missing).toContain('part beacon');
    expect(missing).toContain('part R1');
    expect(missing).toContain('polarised terminal beacon.anode');
    expect(missing.filter((each) => each.startsWith('wire '))).toHaveLength(3);
    expect(checkGuide(harbour, without('cautions')).missing).toEqual(['caution of pack']);
  });

  it('prints a finding as a caution, and misses it where it is not printed', () => {
    const manifest = { parts: { L: { kind: 'led', colour: 'red' } }, wires: [{ path: ['D7', 'L', 'GND'] }] };
    const input = inputFor(manifest, lit);
    expect(input.findings.length).toBeGreaterThan(0);
    const guide = guidePaper(input);
    expect(checkGuide(input, guide).missing).toEqual([]);
    const cut = { ...guide, sections: guide.sections.filter(({ id }) => id !== 'findings') };
    expect(checkGuide(input, cut).missing.join()).toContain('finding: ');
  });

  it('lists what the user has no words for yet, and no longer once there are some', () => {
    expect(checkGuide(harbour).wordless.join('\n')).toContain('No mounting note is given for: beacon');
    const parts = { B: { kind: 'push-button', purpose: 'starts', mount: 'in the lid' } };
    const wires = [
      { from: 'D2', to: 'B.1', colour: 'red', length: '10 cm' },
      { from: 'B.2', to: 'GND', colour: 'black', length: '10 cm' },
    ];
    const picture = { svg: '<svg xmlns="http://www.w3.org/2000/svg"/>', file: 'wiring.svg' };
    expect(checkGuide({ ...inputFor({ parts, wires }), picture }).wordless).toEqual([]);
  });
});

describe('units', () => {
  it('are those that the manifest names, else the parts that a signal joins', () => {
    const parts = {
      L: { kind: 'led', subassembly: 'mast' },
      R1: { kind: 'resistor', value: '470', subassembly: 'mast' },
      B: { kind: 'push-button' },
    };
    const wires = [
      { path: ['D7', 'R1', 'L', 'GND'] },
      { from: 'D2', to: 'B.1' },
      { from: 'B.2', to: 'L.cathode' },
    ];
    const rows = readTables(writeMarkdown(guidePaper(inputFor({ parts, wires })))).get(
      'What is built, in this order',
    );
    expect(rows).toEqual([
      { unit: 'mast', parts: '2', wires: '3' },
      { unit: 'B', parts: '1', wires: '2' },
    ]);
  });

  it('leave a joint open that a later unit adds a wire to', () => {
    const page = writeMarkdown(guidePaper(harbour));
    const unit = (id: string) =>
      page.slice(page.indexOf(`begin unit-${id} `), page.indexOf(`end unit-${id} `));
    expect(unit('beacon')).toContain('Leave beacon.cathode open for now: horn adds a wire there.');
    expect(unit('horn')).toMatch(/Push the sleeves over the joints .*beacon\.cathode/);
  });

  it('print wires with the gauge and the stripped length that the manifest gives', () => {
    const parts = { B: { kind: 'push-button' } };
    const wires = [
      { from: 'D2', to: 'B.1', gauge: 'AWG 24', strip: '7 mm' },
      { from: 'B.2', to: 'GND' },
    ];
    const page = writeMarkdown(
      guidePaper(inputFor({ parts, wires, wire: { gauge: '0.25 mm2', strip: '4 mm' } })),
    );
    expect(page).toContain('wire, AWG 24 from D2');
    expect(page).toContain('wire, 0.25 mm² from GND');
    expect(page).toContain('Strip 7 mm and 4 mm at each end');
  });
});

describe('values', () => {
  it('are explained by their sums: (5.0 V - 2.0 V) / (470 ohm + 25 ohm) = 6.1 mA', () => {
    const manifest = {
      parts: { L: { kind: 'led', colour: 'red' }, R1: { kind: 'resistor', value: '470' } },
      wires: [{ path: ['D7', 'R1', 'L', 'GND'] }],
    };
    const page = writeMarkdown(guidePaper(inputFor(manifest, lit)));
    expect(page).toContain('(5.0 V − 2.0 V) / (470 ohm + 25 ohm) = 6.1 mA');
    expect((5 - 2) / (470 + 25)).toBeCloseTo(6.1e-3, 4);
  });

  it('count a base as the junction it is: (5.0 V - 0.7 V) / (1 kohm + 25 ohm) = 4.2 mA', () => {
    const manifest = {
      parts: { Q: { kind: 'npn-transistor', type: '2n2222' }, RB: { kind: 'resistor', value: '1k' } },
      wires: [{ path: ['D7', 'RB', 'Q.base'] }, { from: 'Q.emitter', to: 'GND' }],
    };
    const page = writeMarkdown(guidePaper(inputFor(manifest, lit)));
    expect(page).toMatch(/\(5\.0 V − (0\.7 V|\d+ mV)\) \/ \(1 kohm \+ 25 ohm\) = 4\.[123] mA/);
  });

  it('have their neighbours in the stock beside them, and what speaks against one', () => {
    const manifest = {
      stock: { resistors: ['68', '470', '1k'], tolerance: '5%', power: '0.25 W' },
      parts: { L: { kind: 'led', colour: 'red' }, R1: { kind: 'resistor', value: '470' } },
      wires: [{ path: ['D7', 'R1', 'L', 'GND'] }],
    };
    const rows = readTables(writeMarkdown(partsPaper(inputFor(manifest, lit)))).get('Resistors') ?? [];
    const instead = rows.find((row) => row.part === 'R1')?.instead ?? '';
    // (5 V - 2 V) / (68 ohm + 25 ohm) is 32 mA, and the pin stands 20 mA.
    expect(instead).toMatch(/68 ohm: .*mA; not allowed: D7 would carry .* mA/);
    expect(instead).toMatch(/1 kohm: \S+ \/ (2\.9|3\.0) \/ \S+ mA/);
  });
});
