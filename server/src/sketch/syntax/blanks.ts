/**
 * Words that compilers take as attributes and the grammar takes for names: `const byte table[] PROGMEM = …`. They
 * say where something lies in memory and nothing of its value, so the parser sees blanks in their place.
 */

// Section and calling attributes of the open cores and C libraries; from memory.
const words =
  /\b(?:PROGMEM|IRAM_ATTR|DRAM_ATTR|RTC_DATA_ATTR|RTC_NOINIT_ATTR|ICACHE_RAM_ATTR|ICACHE_FLASH_ATTR|FLASHMEM|DMAMEM|EXTMEM|FASTRUN|EEMEM|__not_in_flash)\b/g;

/** The text with blanks of the same length for such words. */
export function blankAttributes(text: string): string {
  return text.replace(words, (word) => ' '.repeat(word.length));
}

/**
 * The text with blanks for what stands behind `#if 0`: people park notes and half code there, which is no grammar's
 * business. Line ends stay, so that every place stays where it is.
 */
export function blankDead(text: string): string {
  if (!/^[ \t]*#[ \t]*if[ \t]+0\b/m.test(text)) return text;
  let depth = 0;
  const lines = text.split('\n').map((line) => {
    const word = /^[ \t]*#[ \t]*(if|ifdef|ifndef|elif|else|endif)\b(.*)/s.exec(line);
    if (depth === 0) {
      if (word?.[1] === 'if' && /^[ \t]+0\s*(?:\/\/.*|\/\*.*)?\s*$/s.test(word[2] ?? '')) depth = 1;
      return line;
    }
    if (word?.[1]?.startsWith('if')) depth += 1;
    else if (word?.[1] === 'endif') depth -= 1;
    const ends = depth === 0 || (depth === 1 && (word?.[1] === 'else' || word?.[1] === 'elif'));
    if (!ends) return line.replace(/[^\r]/g, ' ');
    depth = 0;
    return line;
  });
  return lines.join('\n');
}

/** The one stretch in which two texts differ. */
export function difference(
  before: string,
  after: string,
): { readonly start: number; readonly end: number; readonly text: string } {
  const shortest = Math.min(before.length, after.length);
  let start = 0;
  while (start < shortest && before.charCodeAt(start) === after.charCodeAt(start)) start += 1;
  let tail = 0;
  while (
    tail < shortest - start &&
    before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)
  ) {
    tail += 1;
  }
  return { start, end: before.length - tail, text: after.slice(start, after.length - tail) };
}
