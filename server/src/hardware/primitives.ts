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
  switch (written.type) {
    case 'resistor':
      return {
        type: 'resistor',
        id,
        ends,
        ohms: range('ohms', written.ohms),
        ...rating('maxWatts', written.maxWatts),
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
      return { type: 'coil', id, ends, ohms: range('ohms', written.ohms) };
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
      };
    case 'switch':
      return {
        type: 'switch',
        id,
        ends,
        action: word(written.action, ['momentary', 'latching'], values, id),
        rest: word(written.rest, ['open', 'closed'], values, id),
        ...(written.operatedBy === undefined ? {} : { operatedBy: written.operatedBy }),
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
      };
    case 'load':
      return {
        type: 'load',
        id,
        ends,
        amps: range('amps', written.amps),
        ...(written.volts === undefined ? {} : { volts: range('volts', written.volts) }),
      };
    case 'logic-input':
      return {
        type: 'logic-input',
        id,
        ends,
        ohms: range('ohms', written.ohms),
        ...rating('maxVolts', written.maxVolts),
      };
    case 'logic-output':
      return {
        type: 'logic-output',
        id,
        ends,
        ohms: range('ohms', written.ohms),
        ...(written.supply === undefined ? {} : { supply: written.supply }),
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
        ...(written.gain === undefined ? {} : { gain: range('gain', written.gain) }),
        ...rating('maxAmps', written.maxAmps),
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
  if (written.type === 'logic-output' && written.supply !== undefined) names.push(written.supply);
  return names;
}

/** The figures of a primitive by key. */
export function figuresOf(written: PartPrimitive): [key: string, figure: Figure][] {
  return Object.entries(written).filter((pair): pair is [string, Figure] =>
    Object.hasOwn(figureUnits, pair[0]),
  );
}
