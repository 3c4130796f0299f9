/** Reads what the pins of a board stand and give, what its analog inputs measure and where it takes its power. */
import type {
  AnalogInputs,
  BoardLimits,
  DriveStrength,
  OutputLevel,
  Sourced,
  SupplyInput,
} from '../../base/build';
import { parseQuantity, type Unit } from '../../base/quantity';
import { childOf, contentSpan, integerOf, type JsonNode, quantityOf, textOf } from '../json/node';
import { type BoardReading, optional, wordOf } from './reading';

/** @param missing Takes the keys that a board must have and this one has not. */
export function readLimits(reading: BoardReading, missing: string[]): BoardLimits | undefined {
  const limits = childOf(reading.root, 'limits');
  const needed = <K extends string>(key: K, unit: Unit): Sourced | undefined => {
    const figure = reading.figure(childOf(limits, key), unit);
    if (figure === undefined) missing.push(`limits.${key}`);
    return figure;
  };
  const pinRecommended = needed('pinRecommended', 'A');
  const pinAbsolute = needed('pinAbsolute', 'A');
  const outputHighOhms = needed('outputHighOhms', 'ohm');
  const outputLowOhms = needed('outputLowOhms', 'ohm');
  const inputLowVolts = needed('inputLowVolts', 'V');
  const inputHighVolts = needed('inputHighVolts', 'V');
  const pullUpOhms = needed('pullUpOhms', 'ohm');
  if (!pinRecommended || !pinAbsolute || !outputHighOhms || !outputLowOhms) return undefined;
  if (!inputLowVolts || !inputHighVolts || !pullUpOhms) return undefined;
  const outputLevels = readOutputLevels(reading, childOf(limits, 'outputLevels'));
  const pinsAtReset = readPinsAtReset(reading, childOf(limits, 'pinsAtReset'));
  const driveStrengths = readDriveStrengths(reading, childOf(limits, 'driveStrengths'));
  return {
    pinRecommended,
    pinAbsolute,
    groups: readGroups(reading, childOf(limits, 'groups')),
    ...optional('total', reading.figure(childOf(limits, 'total'), 'A')),
    outputHighOhms,
    outputLowOhms,
    inputLowVolts,
    inputHighVolts,
    pullUpOhms,
    ...optional('pullDownOhms', reading.figure(childOf(limits, 'pullDownOhms'), 'ohm')),
    ...optional('pinMaxVolts', reading.figure(childOf(limits, 'pinMaxVolts'), 'V')),
    ...optional('clampAmps', reading.figure(childOf(limits, 'clampAmps'), 'A')),
    ...optional('outputLevels', outputLevels),
    ...optional('driveStrengths', driveStrengths),
    ...optional('pinsAtReset', pinsAtReset),
  };
}

function readPinsAtReset(reading: BoardReading, node: JsonNode | undefined): BoardLimits['pinsAtReset'] {
  const state = wordOf(childOf(node, 'state'), ['input', 'pull-up', 'pull-down'] as const);
  return node === undefined || state === undefined ? undefined : { state, source: reading.sourceOf(node) };
}

function readGroups(reading: BoardReading, groups: JsonNode | undefined): BoardLimits['groups'] {
  return [...(groups?.entries ?? [])].flatMap(([id, { value: node }]) => {
    const amps = reading.figure(childOf(node, 'amps'), 'A');
    const direction = wordOf(childOf(node, 'direction'), ['source', 'sink', 'both'] as const);
    const pins = (childOf(node, 'pins')?.items ?? []).flatMap((item) => reading.pinId(item) ?? []);
    if (amps === undefined || direction === undefined) return [];
    return [{ title: textOf(childOf(node, 'title')) ?? id, pins, direction, amps }];
  });
}

function readOutputLevels(reading: BoardReading, list: JsonNode | undefined): OutputLevel[] | undefined {
  return list?.items.flatMap((node) => {
    const level = wordOf(childOf(node, 'level'), ['high', 'low'] as const);
    const amps = readQuantity(reading, childOf(node, 'amps'), 'A');
    const supplyVolts = readQuantity(reading, childOf(node, 'supplyVolts'), 'V');
    const volts = reading.figure(childOf(node, 'volts'), 'V');
    if (level === undefined || amps === undefined || supplyVolts === undefined || !volts) return [];
    return [{ level, amps, supplyVolts, volts }];
  });
}

function readDriveStrengths(reading: BoardReading, modes: JsonNode | undefined): DriveStrength[] | undefined {
  if (modes === undefined) return undefined;
  return [...modes.entries].flatMap(([mode, { value: node }]) => {
    const title = textOf(childOf(node, 'title'));
    const amps = reading.figure(childOf(node, 'amps'), 'A');
    if (!/^\d+$/.test(mode) || title === undefined || amps === undefined) return [];
    return [
      {
        mode: Number(mode),
        title,
        amps,
        ...optional('outputHighOhms', reading.figure(childOf(node, 'outputHighOhms'), 'ohm')),
        ...optional('outputLowOhms', reading.figure(childOf(node, 'outputLowOhms'), 'ohm')),
      },
    ];
  });
}

export function readAnalog(reading: BoardReading): AnalogInputs | undefined {
  const node = childOf(reading.root, 'analog');
  if (node?.kind !== 'object') return undefined;
  return {
    ...optional('volts', reading.figure(childOf(node, 'volts'), 'V')),
    ...optional('bits', integerOf(childOf(node, 'bits'))),
    ...optional('sourceOhms', reading.figure(childOf(node, 'sourceOhms'), 'ohm')),
  };
}

export function readSupplyInputs(reading: BoardReading): SupplyInput[] | undefined {
  const inputs = childOf(reading.root, 'supplyInputs');
  if (inputs === undefined) return undefined;
  return [...inputs.entries].flatMap(([id, { value: node }]) => {
    const title = textOf(childOf(node, 'title'));
    const volts = reading.figure(childOf(node, 'volts'), 'V');
    if (title === undefined || volts === undefined) return [];
    return [
      {
        id,
        title,
        ...optional('pin', reading.pinId(childOf(node, 'pin'))),
        ...optional('feeds', reading.pinId(childOf(node, 'feeds'))),
        ...optional('how', textOf(childOf(node, 'how'))),
        volts,
        ...optional('absoluteVolts', reading.figure(childOf(node, 'absoluteVolts'), 'V')),
        ...optional('maxAmps', reading.figure(childOf(node, 'maxAmps'), 'A')),
        ...optional('needsAmps', reading.figure(childOf(node, 'needsAmps'), 'A')),
        ...optional('heatWatts', reading.figure(childOf(node, 'heatWatts'), 'W')),
      },
    ];
  });
}

function readQuantity(reading: BoardReading, node: JsonNode | undefined, unit: Unit): number | undefined {
  const written = quantityOf(node);
  if (node === undefined || written === undefined) return undefined;
  const read = parseQuantity(written, unit);
  if (read.ok) return read.value;
  reading.add('wrong-figure', `This figure cannot be used: ${read.why}.`, contentSpan(node));
  return undefined;
}
