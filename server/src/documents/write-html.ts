/**
 * Papers as one page that needs nothing else: style, drawings and pictures are in it, and no script. It may lie on a
 * disk, hang on a board or go by mail.
 */
import { wirePaints } from './colours';
import { drawBands } from './draw-bands';
import { escapeHtml } from './escape';
import { markSection } from './markers';
import { PAGE_STYLE } from './page-style';
import { type Block, buildName, type Column, type Paper, type Piece, type Section, type Text } from './paper';

/** One page with all the papers given, in their order. Ends with a line feed; the same papers give the same bytes. */
export function writeHtml(papers: readonly Paper[]): string {
  const [first] = papers;
  const build = first ? buildName(first) : '';
  const title = papers.length === 1 && first ? `${first.title}: ${build}` : build;
  const head = [
    '<!DOCTYPE html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeHtml(title)}</title>`,
    `<style>\n${PAGE_STYLE}\n${widthRules(papers)}</style>`,
    '</head>',
    '<body>',
    '',
  ].join('\n');
  const contents = papers.length > 1 ? [markSection('contents', writeContents(papers))] : [];
  const sections = papers.flatMap((paper) => [
    markSection(`${paper.id}.top`, writeTop(paper)),
    ...paper.sections.map((section) =>
      markSection(`${paper.id}.${section.id}`, writeSection(paper, section)),
    ),
  ]);
  // One's own text at the very end stands before this last, empty section.
  const foot = markSection('foot', '<footer></footer>');
  return `${head}${[...contents, ...sections, foot].join('\n')}</body>\n</html>\n`;
}

/** Column widths as classes, for those that are used: an attribute would be a style of its own in every head. */
function widthRules(papers: readonly Paper[]): string {
  const blocks = papers.flatMap(({ sections }) => sections).flatMap((section) => section.blocks);
  const columns = blocks.flatMap((block) => (block.kind === 'table' ? block.columns : []));
  const widths = new Set(columns.flatMap(({ width }) => width ?? []));
  return [...widths]
    .sort((a, b) => a - b)
    .map((width) => `.w${width} { width: ${width}%; }\n`)
    .join('');
}

function writeContents(papers: readonly Paper[]): string {
  const items = papers.map(({ id, title }) => `<li><a href="#${id}">${escapeHtml(title)}</a></li>`);
  return `<nav aria-label="Papers">\n<ul>\n${items.join('\n')}\n</ul>\n</nav>`;
}

function writeTop(paper: Paper): string {
  const facts = paper.facts.map(
    ([label, value]) => `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd>`,
  );
  return [
    `<div class="paper" id="${paper.id}">`,
    `<h1>${escapeHtml(paper.title)}</h1>`,
    `<p class="of">${escapeHtml(buildName(paper))}</p>`,
    ...(facts.length > 0 ? [`<dl class="facts">\n${facts.join('\n')}\n</dl>`] : []),
    '</div>',
  ].join('\n');
}

function writeSection(paper: Paper, { id, title, blocks }: Section): string {
  const opening = `<section id="${paper.id}-${id}">\n<h2>${escapeHtml(title)}</h2>`;
  return [opening, ...blocks.map(writeBlock), '</section>'].join('\n');
}

function writeBlock(block: Block): string {
  switch (block.kind) {
    case 'text':
      return `<p>${write(block.text)}</p>`;
    case 'caution':
      return `<p class="caution"><strong>Caution.</strong> ${write(block.text)}</p>`;
    case 'heading':
      return `<h3>${write(block.text)}</h3>`;
    case 'ticks':
      return list('ticks', block.items, `${box} `);
    case 'list':
      return list('plain', block.items, '');
    case 'table':
      return writeTable(block.columns, block.rows, block.ticks);
    case 'picture': {
      // As an image the drawing can run no script, and its names meet no other's.
      const source = `data:image/svg+xml,${encodeURIComponent(block.picture.svg)}`;
      return `<figure><img src="${escapeHtml(source)}" alt="${escapeHtml(block.alt)}"></figure>`;
    }
    case 'lines':
      return `<pre>${block.lines.map((line) => writeLine(line.trimEnd())).join('\n')}</pre>`;
  }
}

const box = '<span class="box" aria-hidden="true"></span>';

function list(name: string, items: readonly Text[], before: string): string {
  return `<ul class="${name}">\n${items.map((item) => `<li>${before}${write(item)}</li>`).join('\n')}\n</ul>`;
}

function writeTable(columns: readonly Column[], rows: readonly (readonly Text[])[], ticks: boolean): string {
  const classOf = (index: number) => {
    const align = columns[index]?.align;
    return align ? ` class="${align}"` : '';
  };
  const tickHead = ticks ? '<th class="tick" scope="col">done</th>' : '';
  const heads = columns.map(({ title, align, width }) => {
    const names = [align, width === undefined ? undefined : `w${width}`].filter((name) => name !== undefined);
    const named = names.length > 0 ? ` class="${names.join(' ')}"` : '';
    return `<th${named} scope="col">${escapeHtml(title)}</th>`;
  });
  const tick = ticks ? `<td class="tick">${box}</td>` : '';
  const body = rows.map(
    (cells) =>
      `<tr>${tick}${cells.map((cell, index) => `<td${classOf(index)}>${write(cell)}</td>`).join('')}</tr>`,
  );
  return [
    '<div class="scroll"><table>',
    `<thead><tr>${tickHead}${heads.join('')}</tr></thead>`,
    `<tbody>\n${body.join('\n')}\n</tbody>`,
    '</table></div>',
  ].join('\n');
}

function writeLine(line: string): string {
  const text = escapeHtml(line);
  if (line.startsWith('+')) return `<ins>${text}</ins>`;
  return line.startsWith('-') ? `<del>${text}</del>` : text;
}

function write(text: Text): string {
  return typeof text === 'string' ? escapeHtml(text) : text.map(writePiece).join('');
}

function writePiece(piece: Piece): string {
  if (typeof piece === 'string') return escapeHtml(piece);
  if ('bold' in piece) return `<strong>${escapeHtml(piece.bold)}</strong>`;
  if ('code' in piece) return `<code>${escapeHtml(piece.code)}</code>`;
  if ('wire' in piece) return writeWire(piece.wire);
  return `${drawBands(piece.bands)}<span class="bandnames">${piece.bands.join(', ')}</span>`;
}

/** Painted as a drawing and not as a background, which most printers are told to leave out. */
function writeWire(colour: string): string {
  const [first, second = first] = wirePaints(colour);
  if (first === undefined) return escapeHtml(colour);
  const swatch = [
    '<svg class="swatch" width="5.5mm" height="2mm" viewBox="0 0 22 8" aria-hidden="true">',
    `<rect x=".5" y=".5" width="21" height="7" rx="3.5" fill="${first}" stroke="#777"/>`,
    ...(second === first ? [] : [`<path d="M1 4h20a3 3 0 0 1-3 3H4a3 3 0 0 1-3-3z" fill="${second}"/>`]),
    '</svg>',
  ];
  return `<span class="wire">${swatch.join('')}${escapeHtml(colour)}</span>`;
}
