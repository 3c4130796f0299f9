/** A paper into its form and its place: what somebody wrote between the sections of the last run stays. */
import { resolve } from 'node:path';
import { formsOf, keepOwnText, type Paper, writeCsv, writeHtml, writeMarkdown } from '../documents';
import { createTextReader } from '../files';
import { tell, writeResult } from './deliver';
import { type Given, optionOf, Refusal, type Surroundings } from './spec';

/** The option of a paper's form. */
export const PAPER_FORMATS = ['markdown', 'html', 'csv'] as const;

/** Told in the help of every paper. */
export const PAPER_ABOUT: readonly string[] = [
  'Markdown and HTML have marks around every section that is made. Write what you like between two sections: where --output names the paper of the last run, it stays. What is changed inside a section is made anew, and that is said. A file that is no such paper is left alone.',
  'The same build gives the same bytes.',
];

/**
 * Writes papers where they are asked for: the first one, or all of them on one page of HTML.
 * @throws Refusal where the form does not exist, or the file that is there must be left alone.
 */
export function deliverPapers(papers: readonly [Paper, ...Paper[]], given: Given, here: Surroundings): void {
  const [paper] = papers;
  const format = PAPER_FORMATS.find((known) => known === optionOf(given, 'format')) ?? 'markdown';
  if (!formsOf(paper).includes(format)) {
    throw new Refusal(
      `The ${paper.title.toLowerCase()} is no list and has no form ${format}. Possible: ${formsOf(paper).join(', ')}.`,
    );
  }
  const fresh =
    format === 'html' ? writeHtml(papers) : format === 'csv' ? writeCsv(paper) : writeMarkdown(paper);
  const output = optionOf(given, 'output');
  if (output === undefined) {
    here.out(fresh ?? '');
    return;
  }
  writeResult(output, format === 'csv' ? (fresh ?? '') : keepOwn(fresh ?? '', output, here), here);
}

function keepOwn(fresh: string, output: string, here: Surroundings): string {
  const previous = createTextReader().read(resolve(here.base, output));
  if (!previous.ok) {
    if (previous.missing) {
      return fresh;
    }
    throw new Refusal(`${output}: ${previous.why}`);
  }
  if (previous.text.trim() === '') {
    return fresh;
  }
  const kept = keepOwnText(fresh, previous.text);
  if (!kept.ok) {
    throw new Refusal(`${output} is left as it is: ${kept.why}. Name another file, or remove it.`);
  }
  tell(
    kept.overwritten.map(
      (section) => `${output}: what was changed inside the section "${section}" is made anew.`,
    ),
    [],
    here,
  );
  return kept.text;
}
