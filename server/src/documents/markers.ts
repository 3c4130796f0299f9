/**
 * The marks around what is made anew at every run, and the way back: a fresh paper goes into the file of the last run,
 * and what somebody has written between two marked sections stays where it was.
 */

/** 32 bits by the FNV-1a hash (offset basis and prime from memory): tells whether somebody wrote inside a section. */
export function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (const sign of text) {
    hash ^= sign.codePointAt(0) ?? 0;
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}

/** Puts a section between its marks. The body must not hold a mark itself: the user's words come escaped. */
export function markSection(id: string, body: string): string {
  return `<!-- wiretrue begin ${id} ${checksum(body)} -->\n${body}\n<!-- wiretrue end ${id} -->\n`;
}

interface Marked {
  readonly id: string;
  readonly whole: string;
  readonly touched: boolean;
  /** What stands behind it, up to the next section or the end. */
  readonly after: string;
}

interface Taken {
  readonly before: string;
  readonly sections: readonly Marked[];
}

const begin = /^<!-- wiretrue begin ([\w.-]+) ([0-9a-f]{8}) -->\n/m;

/** The sections of a text, or why its marks cannot be used: a clause without capital and full stop. */
function takeApart(text: string): Taken | string {
  const first = begin.exec(text);
  if (!first) return 'it holds no section of ours';
  const before = text.slice(0, first.index);
  if (/^<!-- wiretrue end /m.test(before)) return 'it holds an end mark before the first section';
  const sections: Marked[] = [];
  const seen = new Set<string>();
  for (let rest = text.slice(first.index); rest !== ''; ) {
    const [mark, id = '', sum] = begin.exec(rest) ?? [''];
    const end = `\n<!-- wiretrue end ${id} -->\n`;
    const at = rest.indexOf(end, mark.length - 1);
    const inner = at < 0 ? '' : rest.slice(mark.length, Math.max(mark.length, at));
    if (at < 0 || begin.test(inner)) return `the end mark of its section "${id}" is missing`;
    if (seen.has(id)) return `its section "${id}" is there twice`;
    seen.add(id);
    const behind = rest.slice(at + end.length);
    const next = begin.exec(behind);
    const after = next ? behind.slice(0, next.index) : behind;
    if (/^<!-- wiretrue (?:begin|end) /m.test(after)) return `a mark behind its section "${id}" is broken`;
    sections.push({ id, whole: rest.slice(0, at + end.length), touched: checksum(inner) !== sum, after });
    rest = next ? behind.slice(next.index) : '';
  }
  return { before, sections };
}

export type Kept =
  | {
      readonly ok: true;
      readonly text: string;
      /** Ids of sections that somebody had changed inside; those changes are gone. */
      readonly overwritten: readonly string[];
    }
  | { readonly ok: false; readonly why: string };

/**
 * Puts a fresh text into that of the last run.
 * @returns What to write; or why the previous text must be left alone, since it is not one of ours or its marks are
 * broken.
 */
export function keepOwnText(fresh: string, previous: string): Kept {
  const windows = previous.includes('\r\n');
  const old = takeApart(withNewline(previous.replaceAll('\r\n', '\n').replace(/^\ufeff/, '')));
  if (typeof old === 'string') return { ok: false, why: old };
  const now = takeApart(fresh);
  if (typeof now === 'string') return { ok: false, why: `the new text is damaged: ${now}` };
  // A page's head and foot are made; in a text that begins with a section everything around is the user's.
  const isPage = now.before !== '';
  const present = new Set(now.sections.map(({ id }) => id));
  const own = new Map<string, string>();
  let place = '';
  let begins = isPage ? now.before : old.before;
  const last = old.sections.at(-1);
  for (const section of old.sections) {
    if (present.has(section.id)) place = section.id;
    if (section.after.trim() === '' || (isPage && section === last)) continue;
    if (place === '') begins += section.after;
    else own.set(place, (own.get(place) ?? '') + section.after);
  }
  const text = now.sections.map(({ id, whole, after }) => whole + (own.get(id) ?? after)).join('');
  const joined = begins + text;
  const overwritten = old.sections.filter(({ touched }) => touched).map(({ id }) => id);
  return { ok: true, text: windows ? joined.replaceAll('\n', '\r\n') : joined, overwritten };
}

/** An editor may take the last line break away, and with it the last mark would not be found. */
function withNewline(text: string): string {
  return text.endsWith('\n') ? text : `${text}\n`;
}
