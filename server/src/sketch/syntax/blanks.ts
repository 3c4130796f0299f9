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
