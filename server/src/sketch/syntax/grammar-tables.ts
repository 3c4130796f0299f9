/**
 * What the grammar says of its symbols and productions, read out of the WebAssembly parser's memory. The layout is that
 * of `TSLanguage` on a 32-bit machine, as the parser's own sources have it (lib/src/parser.h).
 */

/** Byte offsets in `TSLanguage`. */
const language = {
  productions: 28,
  aliasLength: 36,
  symbolNames: 56,
  fieldNames: 60,
  fieldSlices: 64,
  fieldEntries: 68,
  metadata: 72,
  publicSymbols: 76,
  aliasSequences: 84,
  symbols: 4,
  aliases: 8,
} as const;

/** Names and fields of the grammar, read once. */
export class GrammarTables {
  readonly typeNames: string[] = [];
  /** By symbol: whether an alias of that number is named. */
  readonly namedAlias: boolean[] = [];
  /** By production: the name of the field of each child, by its place among those that are no extras. */
  readonly fields: (readonly (string | undefined)[] | undefined)[] = [];
  /** By production: the symbol that stands for each child; 0 for its own. */
  readonly aliases: (Uint16Array | undefined)[] = [];

  /** @param at address of the language in the memory. */
  constructor(memory: ArrayBuffer, at: number) {
    const bytes = new Uint8Array(memory);
    const shorts = new Uint16Array(memory);
    const words = new Uint32Array(memory);
    const word = (offset: number) => words[(at + offset) >> 2] ?? 0;
    const text = (start: number) => {
      let end = start;
      while (bytes[end] !== 0) end += 1;
      return Buffer.from(bytes.slice(start, end)).toString('utf8');
    };
    const count = word(language.symbols) + word(language.aliases);
    const publicSymbols = word(language.publicSymbols) >> 1;
    const symbolNames = word(language.symbolNames) >> 2;
    for (let symbol = 0; symbol < count; symbol += 1) {
      const shown = shorts[publicSymbols + symbol] ?? symbol;
      this.typeNames[symbol] = text(words[symbolNames + shown] ?? 0);
      this.namedAlias[symbol] = bytes[word(language.metadata) + symbol * 3 + 1] === 1;
    }
    const fieldNames = word(language.fieldNames) >> 2;
    const slices = word(language.fieldSlices) >> 1;
    const entries = word(language.fieldEntries);
    const length = shorts[(at + language.aliasLength) >> 1] ?? 0;
    const sequences = word(language.aliasSequences) >> 1;
    for (let production = 0; production < word(language.productions); production += 1) {
      const first = shorts[slices + production * 2] ?? 0;
      const many = shorts[slices + production * 2 + 1] ?? 0;
      if (many > 0) {
        const list: (string | undefined)[] = [];
        for (let entry = first; entry < first + many; entry += 1) {
          const place = entries + entry * 4;
          const child = bytes[place + 2] ?? 0;
          const inherited = bytes[place + 3] === 1;
          if (!inherited) list[child] ??= text(words[fieldNames + (shorts[place >> 1] ?? 0)] ?? 0);
        }
        this.fields[production] = Array.from(list);
      }
      const from = sequences + production * length;
      const sequence = shorts.slice(from, from + length);
      if (production > 0 && sequence.some((symbol) => symbol !== 0)) this.aliases[production] = sequence;
    }
  }
}
