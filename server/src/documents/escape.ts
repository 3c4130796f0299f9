/**
 * The user's words in each form. A part called `<b>|x`, a title that begins with `=`, a build called `CON`: each is
 * printed as it is and does nothing.
 */

const entities: Readonly<Record<string, string>> = {
  '<': '&lt;',
  '>': '&gt;',
  '&': '&amp;',
  '"': '&quot;',
};

/** Control characters that no form shows; a line break becomes a space. */
function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
  return text.replace(/\s*[\r\n\u2028\u2029]+\s*/g, ' ').replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');
}

/** Text that Markdown shows as it is, in a table's cell too: no markup, no links, no HTML. */
export function escapeMarkdown(text: string): string {
  return oneLine(text)
    .replace(/&(?=#?\w+;)/g, '&amp;')
    .replace(/[<>]/g, (sign) => entities[sign] ?? '')
    .replace(/[\\`*_[\]|~]/g, (sign) => `\\${sign}`)
    .replace(/:(?=\/\/)|(?<=\bwww)\./gi, (sign) => `\\${sign}`);
}

/** Signs that mean something only where a line of Markdown begins: lists, headings, rules, quotes. */
export function guardLineStart(text: string): string {
  return text.replace(/^(\s*)([#+=-])/, '$1\\$2').replace(/^(\s*\d+)([.)])/, '$1\\$2');
}

/** Text in an HTML element or in an attribute between double quotes. */
export function escapeHtml(text: string): string {
  return oneLine(text).replace(/[<>&"]/g, (sign) => entities[sign] ?? '');
}

/**
 * One field by RFC 4180, always between quotes. A field that a spreadsheet would run as a formula gets an apostrophe
 * in front, which spreadsheets take for "this is text".
 */
export function escapeCsv(text: string): string {
  const clean = oneLine(text);
  const guarded = /^[=+\-@\t]/.test(clean) ? `'${clean}` : clean;
  return `"${guarded.replaceAll('"', '""')}"`;
}

/** Names that one system or another keeps for devices. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/** A title as the name of a file on any system, without extension: lower case, letters, figures and hyphens. */
export function fileNameOf(title: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  const short = [...plain].slice(0, 60).join('').replace(/-+$/, '');
  if (short === '') return 'build';
  return reserved.test(short) ? `${short}-build` : short;
}
