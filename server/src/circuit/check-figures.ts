/**
 * Looks the figures of elements over before any sum is done, so that a slip of the keyboard is named and does not come
 * out as a voltage.
 */
import type { Element } from '../base/circuit';
import { exactly, type Range } from '../base/range';
import { fullVoltsOf } from './core';

type Sign = 'any' | 'not negative' | 'positive';

/** What is wrong with the figures and names, in whole sentences. */
export function figureFaults(elements: readonly Element[]): readonly string[] {
  const faults: string[] = [];
  const ids = new Set<string>();
  const movers = new Set(
    elements.flatMap(({ type, id }) => (type === 'coil' || type === 'diode' ? [id] : [])),
  );
  for (const element of elements) {
    if (ids.has(element.id)) {
      faults.push(`The name ${element.id} is used for two elements.`);
    }
    ids.add(element.id);
    for (const [name, range, sign] of figuresOf(element)) {
      const fault = rangeFault(range, sign);
      if (fault !== undefined) {
        faults.push(`The ${name} of ${element.id} ${fault}.`);
      }
    }
    if (element.type === 'switch' && element.operatedBy !== undefined && !movers.has(element.operatedBy)) {
      faults.push(`There is no coil or lamp ${element.operatedBy} that could operate ${element.id}.`);
    }
    if (element.type === 'transistor' && element.gain === undefined) {
      const full = fullVoltsOf(element);
      if (!(full > element.volts.max && Number.isFinite(full))) {
        faults.push(`The full gate voltage of ${element.id} must lie above its highest threshold.`);
      }
    }
  }
  return faults;
}

function rangeFault({ min, typ, max }: Range, sign: Sign): string | undefined {
  if (![min, typ, max].every(Number.isFinite)) {
    return 'is not a number';
  }
  if (!(min <= typ && typ <= max)) {
    return 'has its limits in the wrong order';
  }
  if (sign !== 'any' && min < 0) {
    return 'cannot be negative';
  }
  return sign === 'positive' && min === 0 ? 'cannot be zero' : undefined;
}

function figuresOf(element: Element): readonly (readonly [string, Range, Sign])[] {
  switch (element.type) {
    case 'resistor':
    case 'switch':
      return [['resistance', element.ohms, 'not negative']];
    case 'coil':
      return [
        ['resistance', element.ohms, 'not negative'],
        ...optional('operating voltage', element.operateVolts, 'positive'),
      ];
    case 'source':
      return [
        ['voltage', element.volts, 'any'],
        ['source resistance', element.ohms, 'not negative'],
      ];
    case 'current':
      return [['current', element.amps, 'any']];
    case 'diode':
      return [
        ['forward voltage', element.volts, 'positive'],
        ['test current', exactly(element.atAmps), 'positive'],
        ...optional('breakdown voltage', element.breakdownVolts, 'positive'),
        ...optional('breakdown current', figure(element.breakdownAmps), 'positive'),
      ];
    case 'transistor':
      return [
        [element.gain ? 'base-emitter voltage' : 'threshold', element.volts, 'positive'],
        ['resistance', element.ohms, element.gain ? 'not negative' : 'positive'],
        ...optional('test current', figure(element.atAmps), 'positive'),
        ...optional('gain', element.gain, 'positive'),
      ];
  }
}

function figure(value: number | undefined): Range | undefined {
  return value === undefined ? undefined : exactly(value);
}

function optional(
  name: string,
  range: Range | undefined,
  sign: Sign,
): readonly (readonly [string, Range, Sign])[] {
  return range === undefined ? [] : [[name, range, sign]];
}
