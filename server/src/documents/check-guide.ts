/**
 * Is everything in the guide? The check reads the finished text, not the data it was made from: every part, every wire
 * with both its ends, every polarised terminal with its mark, every caution and every grave finding. What the user has
 * given no words yet is a list of its own.
 */
import { graveFindings } from './cautions';
import { guidePaper } from './guide-paper';
import { type Block, type Paper, type PaperInput, plainText } from './paper';
import { wordless } from './wordless';
import { boardFirst, endWords } from './words';

export interface Completeness {
  /** What the guide does not tell although it should; empty unless the guide itself is at fault. */
  readonly missing: readonly string[];
  /** What the user has not said yet, as sentences. */
  readonly wordless: readonly string[];
}

/** @param guide by default the guide as it is made from the input */
export function checkGuide(input: PaperInput, guide: Paper = guidePaper(input)): Completeness {
  const lines = linesOfPaper(guide);
  const holds = (...words: readonly string[]) =>
    lines.some((line) => words.every((word) => line.includes(word)));
  const { parts, wires } = input.build;
  const missing = [
    ...parts.filter(({ id, title }) => !holds(`Take ${id}:`, title)).map(({ id }) => `part ${id}`),
    ...wires
      .filter((wire) => {
        const [from, to] = boardFirst(wire).map(endWords);
        return !holds('No. ', ` from ${from} to ${to}`);
      })
      .map(({ id, ends }) => `wire ${id}, ${ends.map(endWords).join(' to ')}`),
    ...parts.flatMap(({ id, terminals }) =>
      terminals
        .filter(({ id: terminal, polarity, tell }) => polarity && !holds(`${id}.${terminal}`, tell ?? ''))
        .map((terminal) => `polarised terminal ${id}.${terminal.id}`),
    ),
    ...parts.filter(({ id, caution }) => caution && !holds(id, caution)).map(({ id }) => `caution of ${id}`),
    ...graveFindings(input.findings)
      .filter(({ message }) => !holds(message))
      .map(({ message }) => `finding: ${message}`),
  ];
  return { missing, wordless: wordless(input) };
}

function linesOfPaper(paper: Paper): readonly string[] {
  return paper.sections.flatMap(({ blocks }) => blocks.flatMap(linesOfBlock));
}

function linesOfBlock(block: Block): readonly string[] {
  switch (block.kind) {
    case 'text':
    case 'caution':
    case 'heading':
      return [plainText(block.text)];
    case 'ticks':
    case 'list':
      return block.items.map(plainText);
    case 'table':
      return block.rows.map((row) => row.map(plainText).join(' '));
    case 'picture':
      return [block.alt];
    case 'lines':
      return block.lines;
  }
}
