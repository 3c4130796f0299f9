/**
 * What a board's core means to the text of a sketch. Names and lines that follow from the pin table are taken from
 * there, so that a board file does not say them twice.
 */
import type { BoardPin } from '../../base/build';
import type { PinMode } from '../../base/pin-use';
import type { Platform } from '../../base/platform';
import { childOf, integerOf, type JsonNode, textOf } from '../json/node';

const modes: readonly PinMode[] = ['input', 'output', 'input-pullup', 'input-pulldown'];

/**
 * Macros of the cores whose analogRead counts the analog inputs from 0: wiring_analog.c of the AVR and SAMD cores,
 * digitalPinToAnalogPin of the Renesas core, analogInputToDigitalPin of the STM32 core, __analogRead of the ESP8266's,
 * pin_to_channel in analog.c of teensy4.
 */
const countingChannels = new Set([
  'ARDUINO_ARCH_AVR',
  'ARDUINO_ARCH_SAMD',
  'ARDUINO_ARCH_RENESAS',
  'ARDUINO_ARCH_STM32',
  'ARDUINO_ARCH_ESP8266',
  'ARDUINO_TEENSY40',
]);

export function readPlatform(node: JsonNode | undefined, pins: readonly BoardPin[]): Platform {
  const names = new Map<string, number>();
  const interruptPins = new Map<string, number>();
  const ports = new Map<string, number>();
  const roles = new Map<string, number>();
  for (const pin of pins) {
    if (pin.number === undefined) continue;
    const analogName = [pin.id, ...pin.names].find((name) => /^A\d+$/.test(name));
    if (analogName !== undefined && pin.adc !== undefined) names.set(analogName, pin.number);
    if (pin.port !== undefined) ports.set(pin.port, pin.number);
    // A role that several pins can serve is served by the first of the table, as the cores choose it.
    for (const role of pin.roles) if (!roles.has(role)) roles.set(role, pin.number);
    if (pin.interrupt !== undefined) interruptPins.set(String(pin.interrupt), pin.number);
  }
  for (const [name, number] of integers(childOf(node, 'names'))) names.set(name, number);
  for (const [line, number] of integers(childOf(node, 'interruptPins'))) interruptPins.set(line, number);
  const macros = [...(childOf(node, 'macros')?.entries ?? [])].flatMap(([name, { value }]) => {
    const text = textOf(value);
    return text === undefined ? [] : [[name, text] as const];
  });
  const modeNumbers = [...(childOf(node, 'modes')?.entries ?? [])].flatMap(([number, { value }]) => {
    const mode = modes.find((one) => one === textOf(value));
    return mode === undefined ? [] : [[number, mode] as const];
  });
  // These cores take a small number for a channel; elsewhere analogRead wants the pin.
  const analogNumbers = new Map<string, number>();
  if (macros.some(([name]) => countingChannels.has(name))) {
    const first = names.get('A0') ?? 0;
    for (const [name, number] of names) {
      const channel = /^A(\d+)$/.exec(name)?.[1];
      if (channel !== undefined && Number(channel) < first) analogNumbers.set(channel, number);
    }
  }
  return {
    macros: Object.fromEntries(macros),
    names: Object.fromEntries(names),
    modes: Object.fromEntries(modeNumbers),
    intBits: integerOf(childOf(node, 'intBits')) === 32 ? 32 : 16,
    analogNumbers: Object.fromEntries(analogNumbers),
    ports: Object.fromEntries(ports),
    roles: Object.fromEntries(roles),
    interruptPins: Object.fromEntries(interruptPins),
  };
}

function integers(node: JsonNode | undefined): [string, number][] {
  return [...(node?.entries ?? [])].flatMap(([name, { value }]) => {
    const number = integerOf(value);
    return number === undefined ? [] : [[name, number] as [string, number]];
  });
}
