/** Reads the pin table of a board. */
import type { BoardPin, BootStrap, TakenPin } from '../../base/build';
import { childOf, integerOf, type JsonNode, textOf, textsOf } from '../json/node';
import { quoteName } from '../names';
import { type BoardReading, optional, truthOf, wordOf } from './reading';

const pinTypes = ['io', 'analog-input', 'supply', 'ground', 'reset', 'reference', 'not-connected'] as const;
const takers = ['flash', 'psram', 'usb', 'serial', 'radio', 'crystal', 'debug', 'lamp', 'board'] as const;

export function readPins(reading: BoardReading): BoardPin[] {
  const pins: BoardPin[] = [];
  const taken = new Map<string, string>();
  for (const [id, { value: node, keySpan }] of childOf(reading.root, 'pins')?.entries ?? []) {
    if (node.kind !== 'object') continue;
    const type = wordOf(childOf(node, 'type'), pinTypes);
    if (type === undefined) {
      reading.add('missing-key', `The pin ${quoteName(id)} lacks the key "type".`, keySpan);
      continue;
    }
    const number = integerOf(childOf(node, 'number'));
    const names = textsOf(childOf(node, 'names')).filter((name) => name !== id);
    for (const name of new Set([id, ...names, ...(number === undefined ? [] : [String(number)])])) {
      const other = taken.get(name);
      if (other !== undefined) {
        reading.add('double-name', `${quoteName(name)} names the pin ${quoteName(other)} as well.`, keySpan);
      }
      taken.set(name, other ?? id);
    }
    const volts = reading.figure(childOf(node, 'volts'), 'V');
    pins.push({
      id,
      ...optional('number', number),
      names,
      type,
      ...optional('port', textOf(childOf(node, 'port'))),
      ...optional('pwm', textOf(childOf(node, 'pwm'))),
      ...optional('adc', integerOf(childOf(node, 'adc'))),
      ...optional('interrupt', integerOf(childOf(node, 'interrupt'))),
      roles: textsOf(childOf(node, 'roles')),
      ...(volts === undefined ? {} : { volts: { min: volts.min, typ: volts.typ, max: volts.max } }),
      ...optional('maxAmps', reading.figure(childOf(node, 'maxAmps'), 'A')),
      ...readPeculiarities(reading, node),
    });
  }
  return pins;
}

/** What only some pins of some boards have. */
function readPeculiarities(reading: BoardReading, node: JsonNode): Partial<BoardPin> {
  const pulls = childOf(node, 'pulls')?.items.flatMap((item) => wordOf(item, ['up', 'down'] as const) ?? []);
  return {
    ...optional('inputOnly', truthOf(childOf(node, 'inputOnly'))),
    ...optional('pulls', pulls),
    ...optional('adcUnit', integerOf(childOf(node, 'adcUnit'))),
    ...optional('adcBlockedBy', wordOf(childOf(node, 'adcBlockedBy'), ['radio'] as const)),
    ...optional('boot', readBoot(reading, childOf(node, 'boot'))),
    ...optional('takenBy', readTaken(reading, childOf(node, 'takenBy'))),
    ...optional('recommendedAmps', reading.figure(childOf(node, 'recommendedAmps'), 'A')),
    ...optional('absoluteAmps', reading.figure(childOf(node, 'absoluteAmps'), 'A')),
    ...optional('maxInputVolts', reading.figure(childOf(node, 'maxInputVolts'), 'V')),
  };
}

function readBoot(reading: BoardReading, node: JsonNode | undefined): BootStrap | undefined {
  const level = wordOf(childOf(node, 'level'), ['high', 'low'] as const);
  const why = textOf(childOf(node, 'why'));
  if (node === undefined || level === undefined || why === undefined) return undefined;
  return { level, why, must: truthOf(childOf(node, 'must')) ?? true, source: reading.sourceOf(node) };
}

function readTaken(reading: BoardReading, node: JsonNode | undefined): TakenPin | undefined {
  const what = wordOf(childOf(node, 'what'), takers);
  const why = textOf(childOf(node, 'why'));
  if (node === undefined || what === undefined || why === undefined) return undefined;
  return { what, why, free: truthOf(childOf(node, 'free')) ?? false, source: reading.sourceOf(node) };
}
