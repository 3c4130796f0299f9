/** Headers of libraries that nobody describes: what they do to buses is not known. */
import type { LibraryFacts } from '../../base/platform';

/** Of the language, the chip and the core: they hold no library of parts (names from the C and C++ standards). */
const plain =
  /^(avr|util|sys|compat|freertos)\/|^(Arduino|WProgram|pins_arduino|binary|Print|Printable|Stream|WString|HardwareSerial|pgmspace)\.h$|^(assert|ctype|errno|float|inttypes|limits|locale|math|setjmp|signal|stdarg|stdbool|stddef|stdint|stdio|stdlib|string|strings|time|wchar)\.h$|^[a-z_]+$/;

/** Sorted by name. */
export function foreignHeaders(
  headers: ReadonlySet<string>,
  libraries: readonly LibraryFacts[],
): readonly string[] {
  const found = [...headers].filter((header) => !plain.test(header));
  if (found.length === 0) return found;
  const described = libraries.flatMap((library) => library.headers ?? []);
  return found.filter((header) => !described.some((one) => names(one, header))).sort();
}

/** `*_Strip.h` stands for every maker's name in front. */
function names(described: string, header: string): boolean {
  if (!described.startsWith('*_')) return described === header || header.endsWith(`/${described}`);
  const file = header.slice(header.lastIndexOf('/') + 1);
  return file.endsWith(described.slice(1)) && file.length > described.length - 1;
}
