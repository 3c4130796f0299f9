/** Lines of a bus that do not come to the board. */
import { addPart, addWire, removeWires } from '../mutate';
import type { Seed } from '../seed';
import { type MakeSeeds, seed } from './book';

/** The wire to the board is left out; those between the parts, and to a pull-up, stay. */
const lineAdrift: MakeSeeds = ({ hardware }) => {
  const left = (
    build: string,
    pin: string,
    part: string,
    line: string,
    besides: readonly string[] = [],
  ): Seed =>
    seed(
      'bus-line-adrift',
      build,
      `no wire from ${pin} to ${part}.${line}`,
      removeWires(hardware(build), pin),
      [{ wire: `${part}.${line}` }],
      { says: [`${part}.${line}`], besides },
    );
  const onlyPulled = (build: string, pin: string, part: string, line: string, rail: string): Seed =>
    seed(
      'bus-line-adrift',
      build,
      `${part}.${line} at a pull-up alone`,
      [
        ...removeWires(hardware(build), pin),
        addPart('Rline', { kind: 'resistor', value: '4k7', purpose: 'x' }),
        addWire({ path: [rail, 'Rline', `${part}.${line}`] }),
      ],
      [{ wire: `${part}.${line}` }],
      { says: [`${part}.${line}`] },
    );
  return [
    left('tide-clock', 'SDA', 'screen', 'sda'),
    left('tide-clock', 'SCL', 'screen', 'scl'),
    onlyPulled('tide-clock', 'SDA', 'screen', 'sda', 'screen.+'),
    onlyPulled('tide-clock', 'SCL', 'screen', 'scl', 'screen.+'),
    onlyPulled('ferry-board', 'D1', 'screen', 'scl', 'screen.+'),
    onlyPulled('ferry-board', 'D2', 'screen', 'sda', 'screen.+'),
    onlyPulled('greenhouse', 'GP4', 'soil', 'sda', 'soil.+'),
    onlyPulled('greenhouse', 'GP5', 'soil', 'scl', 'soil.+'),
    seed(
      'bus-line-adrift',
      'tide-clock',
      'SDA through a resistor, and on to the board',
      [
        ...removeWires(hardware('tide-clock'), 'SDA'),
        addPart('Rline', { kind: 'resistor', value: '100', purpose: 'x' }),
        addWire({ path: ['SDA', 'Rline', 'screen.sda'] }),
      ],
      [],
      { silent: true },
    ),
  ];
};

export const BUS_LINE_SEEDS: readonly MakeSeeds[] = [lineAdrift];
