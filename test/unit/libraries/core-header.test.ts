/** The core's own calls against the header of an open core: every call is declared, and its pin argument is a pin. */
import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { requireOracle } from '../../oracle/oracle';
import { libraries, type SourcedCall } from './library-files';

const root = '/usr/share/arduino/hardware/arduino/avr';
const header = `${root}/cores/arduino/Arduino.h`;

/** Names of the parameters of every declaration of a function in a header's text. */
function parametersOf(text: string, name: string): readonly (readonly string[])[] {
  return [...text.matchAll(new RegExp(`\\b${name}\\(([^;{}]*)\\)\\s*;`, 'g'))].map(([, list = '']) =>
    list
      .replaceAll(/\(\*(\w+)\)\([^)]*\)/g, '$1')
      .split(',')
      .map((one) => /(\w+)\s*(=.*)?$/.exec(one.trim())?.[1] ?? ''),
  );
}

it('are declared with pins where the file says so', (context) => {
  requireOracle(context, 'arduino-core-avr', existsSync(header));
  const text = readFileSync(header, 'utf8');
  const core = libraries.find((library) => library.id === 'core');
  const calls: readonly SourcedCall[] = core?.functions ?? [];
  const own = calls.filter((call) => call.source === undefined && call.pin !== undefined);
  expect(own.length).toBeGreaterThan(12);
  for (const call of own) {
    const forms = parametersOf(text, call.name);
    expect(forms.length, call.name).toBeGreaterThan(0);
    for (const parameters of forms) {
      const expected = call.pinIsInterruptLine === true ? /^interruptNum$/ : /pin$/i;
      expect(parameters[call.pin ?? -1], call.name).toMatch(expected);
    }
  }
});

it('know the objects of the core', (context) => {
  requireOracle(context, 'arduino-core-avr', existsSync(header));
  const files = ['cores/arduino/HardwareSerial.h', 'cores/arduino/USBAPI.h'].concat(
    ['Wire', 'SPI', 'EEPROM'].map((name) => `libraries/${name}/src/${name}.h`),
  );
  const declared = files.flatMap((file) =>
    [...readFileSync(`${root}/${file}`, 'utf8').matchAll(/^\s*(?:extern|static) [A-Z]\w* (\w+);/gm)].map(
      ([, name]) => name,
    ),
  );
  expect(declared).toEqual(expect.arrayContaining(['Serial', 'Serial1', 'Wire', 'SPI', 'EEPROM']));
  const known = new Set(libraries.flatMap((library) => library.classes.flatMap((one) => one.objects ?? [])));
  // Objects of the USB stack that a sketch does not call.
  expect(declared.filter((name) => name !== undefined && !known.has(name) && !/^USB/.test(name))).toEqual([]);
});
