/** Names that would break a form: nothing they hold may act, and everything they hold must be readable again. */
import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import {
  fileNameOf,
  guidePaper,
  hookupPaper,
  type PaperInput,
  partsPaper,
  testsPaper,
  writeCsv,
  writeHtml,
  writeMarkdown,
} from '../../../server/src/documents';
import { escapeCsv, escapeHtml, escapeMarkdown } from '../../../server/src/documents/escape';
import { openTestBench, type TestBench } from '../../fixture/bench';
import { inputOf } from './harbour';
import { readCsv, readTables } from './read-page';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

const nasty = [
  '<b>x</b>',
  '=1+1',
  '@cmd',
  '-2',
  '+3',
  'a|b',
  '`q`',
  '"q"',
  "it's",
  '*s*',
  '_u_',
  '[l](h)',
  '#h',
  '&lt;',
  'ünï',
  '-->',
];

function oddInput(): PaperInput {
  const parts = nasty.map((name) => ({
    [name]: { kind: 'led', colour: 'red', purpose: `=HYPERLINK("${name}")`, mount: name },
  }));
  const wires = nasty.map((name, index) => ({
    path: [`D${index % 12}`, name, 'GND'],
    colours: [name, 'black'],
    note: name,
  }));
  const manifest = {
    format: 1,
    title: '=cmd|"/c calc"!A0 <script>alert(1)</script>',
    board: 'nano-v3',
    parts: Object.assign({}, ...parts),
    wires,
  };
  return inputOf(bench, JSON.stringify(manifest), 'void setup() {}\nvoid loop() {}\n');
}

it('shows odd names in all papers and forms, and lets none act', () => {
  const input = oddInput();
  expect(input.build.parts.map(({ id }) => id)).toEqual(nasty);
  const papers = [hookupPaper(input.build), partsPaper(input), guidePaper(input), testsPaper(input)];
  const html = writeHtml(papers);
  expect(html).not.toMatch(/<b>|<script|<i>/);
  expect(html).toContain('&lt;script&gt;');
  for (const paper of papers) {
    const page = writeMarkdown(paper);
    const own = page.replace(/<!-- wiretrue (?:begin|end) [^>]* -->/g, '');
    expect(own).not.toMatch(/<[a-z!/]/i);
    expect(own).not.toMatch(/(?<!\\)\[l\]/);
    for (const cell of readCsv(writeCsv(paper) ?? '').flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
  }
});

it('gives the odd names back to a reader of the page', () => {
  const rows = [...readTables(writeMarkdown(hookupPaper(oddInput().build))).values()].flat();
  const ends = new Set(
    rows.flatMap((row) => [row.from, row.to]).map((end) => end?.replace(/\.(anode|cathode)$/, '')),
  );
  for (const name of nasty) expect(ends).toContain(name);
  expect(new Set(rows.map(({ colour }) => colour))).toEqual(new Set([...nasty, 'black']));
});

it('keeps every text readable in a quoted field, and takes the apostrophe for the guard it is', () => {
  fc.assert(
    fc.property(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 1 }), (texts) => {
      const lines = texts.map((text) => text.replace(/\s*[\r\n\u2028\u2029]+\s*/g, ' '));
      const [row] = readCsv(`${texts.map(escapeCsv).join(',')}\r\n`);
      expect(row).toEqual(lines.map((cell) => (/^[=+\-@\t]/.test(cell) ? `'${cell}` : cell)));
    }),
  );
});

it('leaves no sign in HTML or Markdown that begins markup', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(escapeHtml(text)).not.toMatch(/[<>"]|&(?!lt;|gt;|amp;|quot;)/);
      const shown = escapeMarkdown(text);
      expect(shown).not.toMatch(/[<>\r\n]/);
      expect(shown.replace(/\\[\\`*_[\]|~:.]/g, '')).not.toMatch(/[`*_[\]|~]/);
    }),
  );
});

it.each([
  ['Harbour model, revision A', 'harbour-model-revision-a'],
  ['../../etc/passwd', 'etc-passwd'],
  ['CON', 'con-build'],
  ['  ', 'build'],
  ['Bäcker: Tür/Öffner?', 'backer-tur-offner'],
  ['灯', '灯'],
  [`${'long '.repeat(40)}`, 'long-long-long-long-long-long-long-long-long-long-long-long'],
])('names a file for %j', (title, name) => {
  expect(fileNameOf(title)).toBe(name);
});
