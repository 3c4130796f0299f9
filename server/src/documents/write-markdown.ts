/** Papers as Markdown: tables, boxes to tick, and marks around every section. */
import { escapeMarkdown, guardLineStart } from './escape';
import { markSection } from './markers';
import { type Block, buildName, type Column, type Paper, type Piece, type Text } from './paper';

/** Ends with a line feed; the same paper gives the same bytes. */
export function writeMarkdown(paper: Paper): string {
  const head = [
    `# ${escapeMarkdown(`${paper.title}: ${buildName(paper)}`)}`,
    ...paper.facts.map(([label, value]) => `- ${escapeMarkdown(label)}: ${escapeMarkdown(value)}`),
  ];
  const top = [head[0] ?? '', '', ...head.slice(1)].join('\n').trimEnd();
  const sections = paper.sections.map(({ id, title, blocks }) =>
    markSection(id, [`## ${escapeMarkdown(title)}`, ...blocks.map(writeBlock)].join('\n\n')),
  );
  return [markSection('top', top), ...sections].join('\n');
}

function writeBlock(block: Block): string {
  switch (block.kind) {
    case 'text':
      return line(block.text);
    case 'caution':
      return `> **Caution.** ${write(block.text)}`;
    case 'heading':
      return `### ${write(block.text)}`;
    case 'ticks':
      return block.items.map((item) => `- [ ] ${write(item)}`).join('\n');
    case 'list':
      return block.items.map((item) => `- ${line(item)}`).join('\n');
    case 'table':
      return writeTable(block.columns, block.rows, block.ticks);
    case 'picture':
      return `![${escapeMarkdown(block.alt)}](<${encodeURI(block.picture.file).replace(/[<>]/g, '')}>)`;
    case 'lines':
      return writeLines(block.lines);
  }
}

function writeTable(columns: readonly Column[], rows: readonly (readonly Text[])[], ticks: boolean): string {
  const all = ticks ? [{ title: 'done', align: 'centre' } as const, ...columns] : columns;
  const rule = all.map(({ align }) => (align === 'right' ? '---:' : align === 'centre' ? ':---:' : '---'));
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    row(all.map(({ title }) => escapeMarkdown(title))),
    row(rule),
    ...rows.map((cells) => row([...(ticks ? ['☐'] : []), ...cells.map(write)])),
  ].join('\n');
}

/** A fence longer than any run of backticks in it. No line begins with a mark, since its first sign is one of ours. */
function writeLines(lines: readonly string[]): string {
  const clean = lines.map((each) => each.replace(/[\r\n]/g, ''));
  const longest = Math.max(
    2,
    ...clean.map((each) => Math.max(0, ...(each.match(/`+/g) ?? []).map(lengthOf))),
  );
  const fence = '`'.repeat(longest + 1);
  return [`${fence}diff`, ...clean, fence].join('\n');
}

function lengthOf({ length }: string): number {
  return length;
}

function line(text: Text): string {
  return guardLineStart(write(text));
}

function write(text: Text): string {
  return typeof text === 'string' ? escapeMarkdown(text) : text.map(writePiece).join('');
}

function writePiece(piece: Piece): string {
  if (typeof piece === 'string') return escapeMarkdown(piece);
  if ('bold' in piece) return `**${escapeMarkdown(piece.bold)}**`;
  // A code span takes no escapes, so what would end it is left to plain text.
  if ('code' in piece) return /[`|\r\n<]/.test(piece.code) ? escapeMarkdown(piece.code) : `\`${piece.code}\``;
  if ('wire' in piece) return escapeMarkdown(piece.wire);
  return escapeMarkdown(piece.bands.join(', '));
}
