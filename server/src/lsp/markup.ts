/** Hover texts are written in Markdown; a client that cannot show it gets the words without the marks. */
import { type MarkupContent, MarkupKind } from 'vscode-languageserver';
import type { Features } from './features';

export function toMarkup(markdown: string, features: Features): MarkupContent {
  return features.markdown
    ? { kind: MarkupKind.Markdown, value: markdown }
    : { kind: MarkupKind.PlainText, value: plainText(markdown) };
}

/** Takes off the marks that our hovers use: headings, emphasis, code, links, table rules, backslashes, hard breaks. */
export function plainText(markdown: string): string {
  return markdown
    .split('\n')
    .filter((line) => !/^\s*(\|?\s*:?-{3,}:?\s*)+\|?\s*$/.test(line) && !/^\s*```/.test(line))
    .map((line) =>
      withoutCells(line)
        .replace(/^#{1,6}\s+/, '')
        .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
        .replace(/\*\*(.+?)\*\*/g, '$1')
        .replace(/(^|\W)[*_](\S(?:.*?\S)?)[*_](?=\W|$)/g, '$1$2')
        .replace(/`([^`]*)`/g, '$1')
        .replace(/\\([\\`*_{}[\]()#+\-.!|<>~])/g, '$1')
        .trimEnd(),
    )
    .join('\n');
}

/** A row of a table as its cells with two spaces between them; any other line as it is. */
function withoutCells(line: string): string {
  return line.startsWith('|')
    ? line.replace(/^\|\s*|\s*\|\s*$/g, '').replace(/\s*(?<!\\)\|\s*/g, '  ')
    : line;
}
