/**
 * Which board a sketch is for, where nobody says: by the macros of its conditions, the headers of one core alone, and the
 * pin names and numbers that only some boards have. Where these decide nothing, the user is asked.
 */
import { type Board, numbersOf } from '../../base/build';
import type { ProjectInput } from '../analyser';
import type { OpenLibrary } from '../library';
import { readUses } from '../uses';

export interface BoardGuess {
  readonly id: string;
  readonly title: string;
  readonly score: number;
}

/** Headers and words that belong to one family of cores (from memory). */
const signs: readonly (readonly [sign: RegExp, boards: RegExp])[] = [
  [/\b(ESP8266WiFi|ESP8266WebServer|ESP8266HTTPClient)\.h|\bESP8266\b/, /8266/],
  [
    /<(WiFi|WebServer|BluetoothSerial|esp_\w+)\.h>|\bESP32\b|\bledc(Setup|AttachPin|Write)\b|\btouchRead\b/,
    /esp32/,
  ],
  [/\b(pico\/stdlib|hardware\/gpio)\.h|\bARDUINO_ARCH_RP2040\b|\bGP\d+\b/, /pico/],
  [/\bTEENSYDUINO\b|\belapsedMillis\b/, /teensy/],
  [/\bARDUINO_AVR_NANO\b/, /nano/],
  [/\bARDUINO_AVR_UNO\b/, /uno-r3/],
  [/\b__AVR_ATmega2560__\b|\bARDUINO_AVR_MEGA2560\b|\bSerial[23]\b/, /mega/],
  [/\b__AVR_ATmega32U4__\b|\b(Keyboard|Mouse)\.h\b/, /leonardo|micro|32u4/],
  [/\bARDUINO_ARCH_SAMD\b|\bSerialUSB\b/, /zero/],
];

/** Boards by how well they fit, the best first. The same order for the same sketch. */
export function guessBoards(library: OpenLibrary, sources: ProjectInput['sources']): readonly BoardGuess[] {
  const text = sources.map((source) => withoutRemarks(source.text)).join('\n');
  const names = new Set(text.match(/\b[A-Z][A-Z]?\d{1,2}\b/g) ?? []);
  const guesses = library.hardware.boardIds.flatMap((id) => {
    const board = library.hardware.board(id, '')?.value;
    return board ? [{ id, title: board.title, score: scoreOf(library, board, text, names, sources) }] : [];
  });
  return guesses.sort((a, b) => b.score - a.score || usual(a.id) - usual(b.id) || (a.id < b.id ? -1 : 1));
}

/** The one board that the sketch speaks for; undefined where several fit as well. */
export function decideBoard(guesses: readonly BoardGuess[]): BoardGuess | undefined {
  const [best, next] = guesses;
  return best && best.score > 0 && best.score > (next?.score ?? 0) ? best : undefined;
}

/** What people use most comes first where nothing speaks for another (common practice). */
const usualBoards = [
  'uno-r3',
  'nano-v3',
  'esp32-devkitc',
  'mega-2560',
  'nodemcu-esp8266',
  'pico',
  'leonardo',
];

function usual(id: string): number {
  const index = usualBoards.indexOf(id);
  return index < 0 ? usualBoards.length : index;
}

function scoreOf(
  library: OpenLibrary,
  board: Board,
  text: string,
  names: ReadonlySet<string>,
  sources: ProjectInput['sources'],
): number {
  let score = 0;
  for (const [sign, boards] of signs) {
    if (sign.test(text)) score += boards.test(board.id) ? 10 : -4;
  }
  const known = new Set([...Object.keys(board.platform.names), ...Object.keys(board.platform.ports)]);
  for (const name of names) {
    if (/^(A|D|GP|P[A-Z])\d+$/.test(name) && !known.has(name)) score -= 3;
  }
  const has = new Set(board.pins.flatMap(numbersOf));
  const wanted = readUses(library, board, sources).uses.flatMap(({ pins }) =>
    pins.kind === 'known' ? pins.values : [],
  );
  const missing = [...new Set(wanted)].filter((pin) => !has.has(pin));
  return score - 2 * missing.length;
}

function withoutRemarks(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, ' ').replace(/\/\/[^\r\n]*/g, ' ');
}
