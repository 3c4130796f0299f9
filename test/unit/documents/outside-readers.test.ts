/** The published forms as others read them: the lists by a CSV library, the pages by an open HTML validator. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { hookupPaper, partsPaper, writeCsv, writeHtml } from '../../../server/src/documents';
import { openTestBench } from '../../fixture/bench';
import { harbour, inputOf } from './harbour';

const papers = join(harbour, 'papers');
const validator = new HtmlValidate({ extends: ['html-validate:standard'] });

async function complaints(html: string): Promise<string[]> {
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) =>
    messages.map(({ line, ruleId, message }) => `${line} ${ruleId} ${message}`),
  );
}

/** A build whose names hold what each form could trip over. */
async function awkward() {
  const bench = await openTestBench();
  const manifest = JSON.stringify({
    format: 1,
    title: '=HYPERLINK("x") <b>&"quoted"</b>',
    board: 'nano-v3',
    parts: {
      beacon: { kind: 'led', colour: 'green', purpose: '=1+1, "a" <script>x</script> | *b*\nline' },
      R1: { kind: 'resistor', value: '470', purpose: '-2+3' },
    },
    wires: [{ path: ['D7', 'R1', 'beacon', 'GND'], colours: ['red', 'red', 'black'] }],
  });
  return inputOf(
    bench,
    manifest,
    'void setup() { pinMode(7, OUTPUT); }\nvoid loop() { digitalWrite(7, HIGH); }\n',
    'lamp.ino',
  );
}

describe('a CSV library', () => {
  for (const name of ['hookup', 'parts', 'tests', 'addendum']) {
    it(`reads ${name}.csv: rows of one length, each line ended as RFC 4180 wants it`, () => {
      const text = readFileSync(join(papers, `${name}.csv`), 'utf8');
      const rows = parse(text, { record_delimiter: '\r\n', relax_column_count: false }) as string[][];
      expect(rows.length).toBeGreaterThan(1);
    });
  }

  it('gets back awkward names, and nothing that a spreadsheet would take for a formula', async () => {
    const input = await awkward();
    const lists = [hookupPaper(input.build), partsPaper(input)].map((paper) => writeCsv(paper) ?? '');
    const cells = lists.flatMap((text) => (parse(text, { record_delimiter: '\r\n' }) as string[][]).flat());
    expect(cells.some((cell) => cell.includes('"a" <script>x</script>'))).toBe(true);
    expect(cells.filter((cell) => /^[=+@\t\r]/.test(cell) || /^-[^\d\s]/.test(cell))).toEqual([]);
  });
});

describe('an HTML validator', () => {
  for (const name of ['papers', 'addendum']) {
    it(`finds nothing in ${name}.html`, async () => {
      expect(await complaints(readFileSync(join(papers, `${name}.html`), 'utf8'))).toEqual([]);
    });
  }

  it('finds nothing in a page of awkward names, and no script in it', async () => {
    const input = await awkward();
    const html = writeHtml([hookupPaper(input.build), partsPaper(input)]);
    expect(await complaints(html)).toEqual([]);
    expect(html).not.toContain('<script>x');
  });

  it('would find what is wrong', async () => {
    expect(await complaints('<!DOCTYPE html><html><body><p><div></p></body></html>')).not.toEqual([]);
  });
});
