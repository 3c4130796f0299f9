/** One's own text between generated sections survives the next run, and a foreign file is never overwritten. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  guidePaper,
  keepOwnText,
  type PaperInput,
  writeHtml,
  writeMarkdown,
} from '../../../server/src/documents';
import { readHarbour } from './harbour';

let old: PaperInput;
let now: PaperInput;
beforeAll(async () => {
  ({ before: old, after: now } = await readHarbour());
});

const forms = {
  Markdown: (input: PaperInput) => writeMarkdown(guidePaper(input)),
  HTML: (input: PaperInput) => writeHtml([guidePaper(input)]),
} as const;

function kept(fresh: string, previous: string): string {
  const result = keepOwnText(fresh, previous);
  if (!result.ok) throw new Error(result.why);
  return result.text;
}

/** Puts a text behind the end mark of a section. */
function putBehind(page: string, section: string, own: string): string {
  const end = `wiretrue end ${section} -->\n`;
  expect(page).toContain(end);
  return page.replace(end, `${end}${own}`);
}

describe.each(Object.entries(forms))('%s', (form, write) => {
  const prefix = form === 'HTML' ? 'guide.' : '';

  it('leaves a fresh text as it is', () => {
    expect(kept(write(now), write(now))).toBe(write(now));
  });

  it('keeps own text behind a section that stays, and gives the same bytes at a second run', () => {
    const written = putBehind(
      write(old),
      `${prefix}unit-beacon`,
      '\nGlue it in with a drop of hot glue.\n\n',
    );
    const first = kept(write(now), written);
    expect(first.indexOf('drop of hot glue')).toBeGreaterThan(first.indexOf(`begin ${prefix}unit-beacon`));
    expect(first.indexOf('drop of hot glue')).toBeLessThan(first.indexOf(`begin ${prefix}unit-horn`));
    expect(kept(write(now), first)).toBe(first);
    const without = first.replace('\nGlue it in with a drop of hot glue.\n\n', '');
    expect(without).toBe(write(now));
  });

  it('moves own text behind the section before, where its own is gone', () => {
    const written = putBehind(write(now), `${prefix}unit-horn`, '\nMind the horn.\n\n');
    const first = kept(write(old), written);
    expect(write(old)).not.toContain('unit-horn');
    expect(first.indexOf('Mind the horn.')).toBeGreaterThan(first.indexOf(`end ${prefix}unit-beacon`));
    expect(first.indexOf('Mind the horn.')).toBeLessThan(first.indexOf(`begin ${prefix}unit-gate`));
  });

  it('says which section somebody had written into', () => {
    const edited = write(now).replace('lit at high water', 'lit at low water');
    const result = keepOwnText(write(now), edited);
    expect(result).toMatchObject({ ok: true, overwritten: [`${prefix}unit-beacon`], text: write(now) });
  });

  it('takes line ends of another system for what they are, and keeps them', () => {
    const windows = putBehind(write(now), `${prefix}unit-horn`, '\nOwn.\n\n').replaceAll('\n', '\r\n');
    const result = keepOwnText(write(now), windows);
    expect(result).toMatchObject({ ok: true, overwritten: [], text: windows });
  });

  it('refuses a file that is not one of ours, or whose marks are broken', () => {
    const page = write(now);
    const whys = [
      '# My own notes\n',
      '',
      page.replace(`<!-- wiretrue end ${prefix}unit-horn -->\n`, ''),
      page.replace(/<!-- wiretrue begin \S*unit-horn/, '<!-- wiretrue begin'),
      page + page,
    ].map((previous) => keepOwnText(page, previous));
    for (const result of whys) expect(result).toMatchObject({ ok: false, why: expect.stringMatching(/\w/) });
  });
});

it('keeps whatever somebody writes around and between the sections of a Markdown file', () => {
  const page = writeMarkdown(guidePaper(now));
  const ids = [...page.matchAll(/wiretrue end (\S+) -->/g)].map((match) => match[1] ?? '');
  const line = fc.string({ unit: 'grapheme', maxLength: 20 }).map((text) => text.replace(/[\r\n]/g, ' '));
  const own = fc.array(line, { minLength: 1, maxLength: 4 }).map((lines) => `\n${lines.join('\n')}\nmine\n`);
  fc.assert(
    fc.property(fc.dictionary(fc.constantFrom(...ids), own), own, (texts, top) => {
      let written = top + page;
      for (const [id, text] of Object.entries(texts)) written = putBehind(written, id, text);
      expect(kept(page, written)).toBe(written);
    }),
    { numRuns: 100 },
  );
});
