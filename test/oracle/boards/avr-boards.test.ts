/**
 * The AVR boards against the open AVR core itself and the chip's header: ports, timers, converter channels, interrupt
 * lines, buses, names and predefined macros, as their own headers give them to their own compiler. No mismatch is
 * tolerated, and a board that was broken on purpose must be told.
 */
import { beforeEach, describe, expect, it } from 'vitest';
import type { BoardFile } from '../../../server/src/hardware/generated/board';
import { openBoardLibrary } from '../../fixture/board-library';
import { requireOracle } from '../oracle';
import { askCore, avrCorePresent, type CoreAnswer } from './avr-core';
import { compareWithChip } from './avr-libc';
import { AVR_BOARDS, type AvrBoard } from './avr-targets';
import { CORE_TOPICS, type CoreTopic, compareWithCore } from './compare-core';

const present = avrCorePresent();
const library = openBoardLibrary();

function merged(id: string): BoardFile {
  const found = library.get(id);
  if (found === undefined) throw new Error(`The library has no board ${id}.`);
  return found.merged;
}

const answers = new Map<string, CoreAnswer>();
function coreOf({ id, target }: AvrBoard): CoreAnswer {
  const answer = answers.get(id) ?? askCore(target(), Object.keys(merged(id).platform?.names ?? {}));
  answers.set(id, answer);
  return answer;
}

it('has every AVR board of the library in its list', () => {
  const avr = [...library.values()].filter(({ merged: board }) => board.chip?.startsWith('ATmega'));
  expect(avr.map(({ id }) => id).sort()).toEqual(AVR_BOARDS.map(({ id }) => id).sort());
});

describe.each(AVR_BOARDS)('board $id against the open AVR core', (board) => {
  beforeEach((context) => requireOracle(context, 'open AVR core and its compiler', present));

  it.each(CORE_TOPICS)('has the same %s', (topic) => {
    expect(compareWithCore(merged(board.id), coreOf(board))[topic]).toEqual([]);
  });

  it('was compared with tables that are not empty', () => {
    const core = coreOf(board);
    expect(core.pins.length).toBeGreaterThanOrEqual(20);
    expect(core.pins.filter(({ timer }) => timer !== undefined).length).toBeGreaterThanOrEqual(6);
    expect(core.pins.filter(({ interrupt }) => interrupt !== undefined).length).toBeGreaterThanOrEqual(2);
    expect(core.channels.length).toBeGreaterThanOrEqual(6);
    expect(Object.keys(core.names).length).toBeGreaterThan(20);
    expect(Object.keys(merged(board.id).platform?.macros ?? {}).length).toBeGreaterThan(10);
  });

  it("names no port bit, timer channel or converter channel that the chip's header lacks", () => {
    expect(compareWithChip(merged(board.id), board.target().mcu)).toEqual([]);
  });
});

describe('a board with one mistake', () => {
  const mega = AVR_BOARDS.find(({ id }) => id === 'mega-2560') as AvrBoard;
  const uno = AVR_BOARDS.find(({ id }) => id === 'uno-r3') as AvrBoard;
  beforeEach((context) => requireOracle(context, 'open AVR core and its compiler', present));

  function broken(board: AvrBoard, change: (copy: BoardFile) => void): BoardFile {
    const copy = structuredClone(merged(board.id));
    change(copy);
    return copy;
  }
  const pin = (copy: BoardFile, id: string) => {
    const found = copy.pins?.[id];
    if (found == null) throw new Error(`no pin ${id}`);
    return found;
  };

  const mistakes: readonly [CoreTopic, (copy: BoardFile) => void, string][] = [
    ['ports', (copy) => Object.assign(pin(copy, 'D22'), { port: 'PA1' }), 'pin 22: port is PA1 here'],
    ['timers', (copy) => Object.assign(pin(copy, 'D44'), { roles: ['timer5.b'] }), 'pin 44 timer5.c only in'],
    ['timers', (copy) => Object.assign(pin(copy, 'D2'), { pwm: 'timer4' }), 'D2: pwm is timer4 here'],
    ['channels', (copy) => Object.assign(pin(copy, 'A8'), { adc: 9 }), 'A8: channel is 9 here and 8'],
    ['interrupts', (copy) => Object.assign(pin(copy, 'D18'), { interrupt: 4 }), 'pin 18 line 5 only in'],
    ['numbers', (copy) => Object.assign(pin(copy, 'RST'), { number: 70 }), 'counts no pin 70'],
    ['buses', (copy) => Object.assign(pin(copy, 'A4'), { roles: ['i2c.sda'] }), 'i2c.sda is 20 and 58 here'],
    ['serial ports', (copy) => Object.assign(pin(copy, 'D14'), { roles: [] }), 'pin 14: uart3.tx'],
    ['names', (copy) => Object.assign(copy.platform?.names ?? {}, { A0: 14 }), 'A0 is 14 here and 54'],
    [
      'macros',
      (copy) => Object.assign(copy.platform?.macros ?? {}, { F_CPU: '8000000L' }),
      'F_CPU is 8000000L',
    ],
  ];
  it.each(mistakes)('is told: %s', (topic, change, words) => {
    const found = compareWithCore(broken(mega, change), coreOf(mega))[topic];
    expect(found.join('\n')).toContain(words);
  });

  it.each<[string, (copy: BoardFile) => void, string]>([
    ['a bit', (copy) => Object.assign(pin(copy, 'A0'), { port: 'PC7' }), 'A0: the chip has no PC7'],
    ['a port', (copy) => Object.assign(pin(copy, 'A0'), { port: 'PF0' }), 'A0: the chip has no port F'],
    ['a channel', (copy) => Object.assign(pin(copy, 'A0'), { adc: 8 }), 'no converter channel 8'],
    ['a timer', (copy) => Object.assign(pin(copy, 'D2'), { roles: ['timer3.a'] }), 'no timer channel 3A'],
    ['a function', (copy) => Object.assign(pin(copy, 'D9'), { roles: ['timer1.b'] }), 'timer1.b sits on PB2'],
    ['a line', (copy) => Object.assign(pin(copy, 'D2'), { interrupt: 1 }), 'line 1 sits on PD3'],
  ])("is told by the chip's header: %s", (_, change, words) => {
    expect(compareWithChip(broken(uno, change), uno.target().mcu).join('\n')).toContain(words);
  });
});
