/**
 * Primitives as files write them, turned into primitives with figures. Part kinds and the parts soldered to a board
 * are written alike, so both readers come here.
 */
import type { Primitive } from '../base/build';
import type { Range } from '../base/range';
import { figureUnits, type ParameterValues, resolveFigure } from './figures';
import type { Choice, Condition, Figure, PartPrimitive } from './generated/part';

/** A primitive, undefined where this variant has none, or why it cannot be made. */
export type Resolved =
  | { readonly ok: true; readonly value: Primitive | undefined }
  | { readonly ok: false; readonly why: string };

/** Signals a figure without value inside `resolvePrimitive`; never leaves this file. */
class Unresolved extends Error {}

/** True where all named parameters have one of the values asked for. */
export function conditionHolds(condition: Condition | undefined, values: ParameterValues): boolean {
  return Object.entries(condition ?? {}).every(([name, wanted]) => {
    const value = values.get(name);
    return value !== undefined && [wanted].flat().some((one) => String(one) === String(value));
  });
}

/** The primitive of one part, by the values of its parameters. */
export function resolvePrimitive(written: PartPrimitive, values: ParameterValues): Resolved {
  if (!conditionHolds(written.when, values)) return { ok: true, value: undefined };
  try {
    return { ok: true, value: build(written, values) };
  } catch (error) {
    if (error instanceof Unresolved) return { ok: false, why: error.message };
    throw error;
  }
}

function build(written: PartPrimitive, values: ParameterValues): Primitive {
  const { id } = written;
  const ends: readonly [string, string] = [written.ends[0], written.ends[1]];
  const range = (key: string, figure: Figure): Range => {
    const result = resolveFigure(figure, figureUnits[key] ?? 'number', values);
    if (result === undefined) throw new Unresolved(`"${key}" of "${id}" has no value`);
    if (!result.ok) throw new Unresolved(`"${key}" of "${id}": ${result.why}`);
    return result.value;
  };
  // A rating without a value is no rating. Of a range the lowest counts: more is not promised.
  const rating = <K extends string>(key: K, figure: Figure | undefined): { readonly [P in K]?: number } => {
    const known =
      figure !== undefined && resolveFigure(figure, figureUnits[key] ?? 'number', values) !== undefined;
    return (known ? { [key]: range(key, figure).min } : {}) as { readonly [P in K]?: number };
  };
  // What has to be reached for certain counts at its highest.
  const floor = <K extends string>(key: K, figure: Figure | undefined): { readonly [P in K]?: number } =>
    (figure === undefined ? {} : { [key]: range(key, figure).max }) as { readonly [P in K]?: number };
  const optional = <K extends string>(key: K, figure: Figure | undefined): { readonly [P in K]?: Range } =>
    (figure === undefined ? {} : { [key]: range(key, figure) }) as { readonly [P in K]?: Range };
  switch (written.type) {
    case 'resistor':
      return {
        type: 'resistor',
        id,
        ends,
        ohms: range('ohms', written.ohms),
        ...rating('maxWatts', written.maxWatts),
        ...rating('maxAmps', written.maxAmps),
      };
    case 'capacitor':
      return {
        type: 'capacitor',
        id,
        ends,
        farads: range('farads', written.farads),
        ...rating('maxVolts', written.maxVolts),
        ...(written.polarised === undefined ? {} : { polarised: written.polarised }),
      };
    case 'coil':
      return {
        type: 'coil',
        id,
        ends,
        ohms: range('ohms', written.ohms),
        ...optional('volts', written.volts),
      };
    case 'diode':
      return {
        type: 'diode',
        id,
        ends,
        volts: range('volts', written.volts),
        atAmps: range('atAmps', written.atAmps).typ,
        lamp: written.lamp,
        ...rating('maxAmps', written.maxAmps),
        ...rating('maxReverseVolts', written.maxReverseVolts),
        ...rating('visibleAmps', written.visibleAmps),
        ...optional('breakdownVolts', written.breakdownVolts),
        ...(written.breakdownAmps === undefined
          ? {}
          : { breakdownAmps: range('breakdownAmps', written.breakdownAmps).typ }),
        ...rating('maxWatts', written.maxWatts),
      };
    case 'switch':
      return {
        type: 'switch',
        id,
        ends,
        action: word(written.action, ['momentary', 'latching'], values, id),
        rest: word(written.rest, ['open', 'closed'], values, id),
        ...(written.operatedBy === undefined ? {} : { operatedBy: written.operatedBy }),
        ...(written.movesWith === undefined ? {} : { movesWith: written.movesWith }),
        ...rating('maxAmps', written.maxAmps),
      };
    case 'potentiometer':
      return { type: 'potentiometer', id, ends, wiper: written.wiper, ohms: range('ohms', written.ohms) };
    case 'source':
      return {
        type: 'source',
        id,
        ends,
        volts: range('volts', written.volts),
        ohms: range('ohms', written.ohms),
        ...rating('maxAmps', written.maxAmps),
        ...rating('ampHours', written.ampHours),
        ...(written.from === undefined ? {} : { from: written.from }),
        ...optional('dropout', written.dropout),
        ...optional('efficiency', written.efficiency),
        ...rating('maxWatts', written.maxWatts),
      };
    case 'load':
      return {
        type: 'load',
        id,
        ends,
        amps: range('amps', written.amps),
        ...optional('volts', written.volts),
      };
    case 'logic-input':
      return {
        type: 'logic-input',
        id,
        ends,
        ohms: range('ohms', written.ohms),
        ...rating('maxVolts', written.maxVolts),
        ...(written.supply === undefined ? {} : { supply: written.supply }),
        ...rating('lowVolts', written.lowVolts),
        ...floor('highVolts', written.highVolts),
        ...rating('lowShare', written.lowShare),
        ...floor('highShare', written.highShare),
      };
    case 'logic-output':
      return {
        type: 'logic-output',
        id,
        ends,
        ohms: range('ohms', written.ohms),
        ...(written.supply === undefined ? {} : { supply: written.supply }),
        ...rating('maxAmps', written.maxAmps),
      };
    case 'transistor':
      return {
        type: 'transistor',
        id,
        ends,
        control: written.control,
        channel: written.channel,
        volts: range('volts', written.volts),
        ohms: range('ohms', written.ohms),
        ...optional('gain', written.gain),
        ...rating('maxAmps', written.maxAmps),
        ...rating('maxVolts', written.maxVolts),
        ...floor('fullVolts', written.fullVolts),
        ...rating('maxControlVolts', written.maxControlVolts),
      };
  }
}

function word<W extends string>(choice: Choice, words: readonly W[], values: ParameterValues, id: string): W {
  const value = typeof choice === 'object' ? values.get(choice.parameter) : choice;
  const found = words.find((one) => one === value);
  if (found === undefined) throw new Unresolved(`"${id}" must be ${words.join(' or ')}`);
  return found;
}

/** Names of the terminals and inner nodes that a primitive touches. */
export function touchedNames(written: PartPrimitive): string[] {
  const names: string[] = [...written.ends];
  if (written.type === 'potentiometer') names.push(written.wiper);
  if (written.type === 'transistor') names.push(written.control);
  if ('supply' in written && written.supply !== undefined) names.push(written.supply);
  if (written.type === 'source' && written.from !== undefined) names.push(written.from);
  return names;
}

/** The figures of a primitive by key. */
export function figuresOf(written: PartPrimitive): [key: string, figure: Figure][] {
  return Object.entries(written).filter((pair): pair is [string, Figure] =>
    Object.hasOwn(figureUnits, pair[0]),
  );
}
