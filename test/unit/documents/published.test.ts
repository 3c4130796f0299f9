/** The harbour model's published papers are those that its folder gives today, byte for byte. UPDATE=1 writes them. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import {
  addendumPaper,
  checkGuide,
  guidePaper,
  hookupPaper,
  type PaperInput,
  partsPaper,
  testsPaper,
  writeCsv,
  writeHtml,
  writeMarkdown,
} from '../../../server/src/documents';
import { harbour, readHarbour } from './harbour';

const folder = join(harbour, 'papers');
/** Written by hand: what the addendum leads from, and how the lists' line ends are kept. */
const byHand = ['.gitattributes', 'revision-0.ino.txt', 'revision-0.jsonc'];

let before: PaperInput;
let after: PaperInput;
beforeAll(async () => {
  ({ before, after } = await readHarbour());
});

function makePapers(): Map<string, string> {
  const papers = [hookupPaper(after.build), partsPaper(after), guidePaper(after), testsPaper(after)];
  const files = new Map<string, string>();
  for (const paper of [...papers, addendumPaper(before, after)]) {
    files.set(`${paper.id}.md`, writeMarkdown(paper));
    const list = writeCsv(paper);
    if (list !== undefined) files.set(`${paper.id}.csv`, list);
  }
  files.set('papers.html', writeHtml(papers));
  files.set('addendum.html', writeHtml([addendumPaper(before, after)]));
  return files;
}

it('are rebuilt to the same bytes', () => {
  const files = makePapers();
  expect(makePapers()).toEqual(files);
  mkdirSync(folder, { recursive: true });
  if (process.env.UPDATE === '1') {
    for (const [name, text] of files) writeFileSync(join(folder, name), text);
  }
  expect(readdirSync(folder).sort()).toEqual([...files.keys(), ...byHand].sort());
  for (const [name, text] of files) expect(readFileSync(join(folder, name), 'utf8'), name).toBe(text);
});

it('need nothing but plain data', () => {
  const copy = JSON.parse(JSON.stringify(after)) as PaperInput;
  expect(writeHtml([guidePaper(copy), testsPaper(copy)])).toBe(
    writeHtml([guidePaper(after), testsPaper(after)]),
  );
});

it('leave nothing out', () => {
  expect(checkGuide(after).missing).toEqual([]);
  expect(checkGuide(before).missing).toEqual([]);
});
