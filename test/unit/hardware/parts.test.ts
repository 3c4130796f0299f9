// What a kind of part can say beyond terminals and primitives: metal that joins terminals, terminals that may stay
// open, contacts on one lever, ratings and thresholds.
import { describe, expect, test } from 'vitest';
import type { Primitive } from '../../../server/src/base/build';
import { leverOf } from '../../../server/src/base/primitive';
import { type HardwareLibrary, readPartKind } from '../../../server/src/hardware';
import { openLibrary, readClean } from './library';

const open = openLibrary();

function kindProblems(kind: object): string[] {
  const terminals = [{ id: '1' }, { id: '2' }, { id: '3' }];
  return readPartKind(
    'x.json',
    JSON.stringify({ kind: 'x', title: 'x', terminals, inside: [], ...kind }),
  ).problems.map(({ code }) => code);
}

function libraryWith(kind: object): HardwareLibrary {
  const { value, problems } = readPartKind(
    'own.json',
    JSON.stringify({ kind: 'own', title: 'own', ...kind }),
  );
  expect(problems).toEqual([]);
  if (value === undefined) throw new Error('no kind');
  return { ...open, partKinds: new Map([...open.partKinds, ['own', value]]) };
}

function partOf(kind: object, entry: object = {}) {
  const text = JSON.stringify({ board: 'nano-v3', parts: { x: { kind: 'own', ...entry } } });
  const [part] = readClean(text, libraryWith(kind)).parts;
  if (part === undefined) throw new Error('no part');
  return part;
}

const nets = (parts: object, wires: readonly object[]) =>
  readClean(JSON.stringify({ board: 'nano-v3', parts, wires })).nets.map(({ id, terminals }) => [
    id,
    ...terminals.map(({ part, terminal }) => `${part}.${terminal}`),
  ]);

describe('joined terminals', () => {
  test('are one net, the unwired ones among them too', () => {
    const made = nets({ b: { kind: 'tact-switch' } }, [
      { from: 'D2', to: 'b.1b' },
      { from: 'b.2a', to: 'GND' },
    ]);
    expect(made).toEqual([
      ['D2', 'b.1b', 'b.1a'],
      ['GND', 'b.2a', 'b.2b'],
    ]);
  });

  test('carry a net across a connector, each way by itself', () => {
    const made = nets({ j: { kind: 'connector', ways: '2' } }, [
      { from: 'D2', to: 'j.1a' },
      { from: 'GND', to: 'j.2a' },
      { from: 'j.1b', to: 'D3' },
    ]);
    expect(made).toEqual([
      ['D2', 'j.1a', 'j.1b'],
      ['GND', 'j.2a', 'j.2b'],
    ]);
    expect(
      readClean(
        '{ "board": "nano-v3", "parts": { "j": { "kind": "connector" } }, "wires": [{ "path": ["D2", "j", "D3"] }] }',
      ).nets[0]?.pins,
    ).toEqual(['D2', 'D3']);
  });

  test('of a variant that is not there join nothing', () => {
    const text = '{ "board": "nano-v3", "parts": { "j": { "kind": "connector", "ways": "1" } } }';
    expect(readClean(text).parts[0]?.joined).toEqual([['1a', '1b']]);
  });

  test('of no wire make no net', () => {
    expect(nets({ b: { kind: 'tact-switch' } }, [])).toEqual([]);
  });
});

describe('a kind', () => {
  const terminals = [{ id: '1', optional: true }, { id: '2' }, { id: '3' }];

  test('hands on what may stay open, and what can hurt', () => {
    const part = partOf({ terminals, inside: [], caution: 'Hot.' });
    expect(part.terminals.map(({ optional }) => optional)).toEqual([true, undefined, undefined]);
    expect(part.caution).toBe('Hot.');
  });

  test('resolves ratings to what is promised, and thresholds to what is certain', () => {
    const figure = (min: string, max: string) => ({ min, max });
    const inside = [
      { type: 'resistor', id: 'fuse', ends: ['1', '2'], ohms: '0.1', maxAmps: figure('0.9 A', '1 A') },
      { type: 'coil', id: 'coil', ends: ['1', '2'], ohms: '70', volts: figure('3.75 V', '6 V') },
      { type: 'switch', id: 'no', ends: ['1', '3'], action: 'momentary', rest: 'open', operatedBy: 'coil' },
      { type: 'switch', id: 'a', ends: ['1', '2'], action: 'latching', rest: 'closed' },
      { type: 'switch', id: 'b', ends: ['1', '3'], action: 'latching', rest: 'open', movesWith: 'a' },
      {
        ...{ type: 'diode', id: 'zener', ends: ['1', '2'], volts: '0.9 V', atAmps: '0.2 A', lamp: false },
        ...{ breakdownVolts: figure('4.8 V', '5.4 V'), breakdownAmps: '49 mA', maxWatts: '1 W' },
      },
      {
        ...{ type: 'source', id: 'out', ends: ['2', '3'], volts: '5 V', ohms: '0.1', from: '1' },
        ...{ dropout: figure('1.5 V', '2 V'), efficiency: figure('80%', '90%') },
      },
      {
        ...{ type: 'logic-input', id: 'in', ends: ['1', '3'], ohms: '1M', supply: '2' },
        ...{ lowVolts: '0.8 V', highVolts: figure('2 V', '2.2 V'), lowShare: '30%', highShare: '70%' },
      },
      { type: 'logic-output', id: 'q', ends: ['1', '3'], ohms: '50', maxAmps: '25 mA' },
      {
        ...{
          type: 'transistor',
          id: 't',
          ends: ['1', '3'],
          control: '2',
          channel: 'n',
          volts: '2 V',
          ohms: '0.02',
        },
        ...{ fullVolts: '10 V', maxControlVolts: '20 V', maxVolts: '55 V', maxAmps: '49 A' },
      },
    ];
    const made = new Map(partOf({ terminals, inside }).inside.map((piece) => [piece.id, piece]));
    expect(made.get('fuse')).toMatchObject({ maxAmps: 0.9 });
    expect(made.get('coil')).toMatchObject({ volts: { min: 3.75, max: 6 } });
    expect(made.get('zener')).toMatchObject({
      breakdownVolts: { min: 4.8 },
      breakdownAmps: 0.049,
      maxWatts: 1,
    });
    expect(made.get('out')).toMatchObject({
      from: '1',
      dropout: { max: 2 },
      efficiency: { min: 0.8, max: 0.9 },
    });
    expect(made.get('in')).toMatchObject({
      supply: '2',
      lowVolts: 0.8,
      highVolts: 2.2,
      lowShare: 0.3,
      highShare: 0.7,
    });
    expect(made.get('q')).toMatchObject({ maxAmps: 0.025 });
    expect(made.get('t')).toMatchObject({ fullVolts: 10, maxControlVolts: 20, maxVolts: 55, maxAmps: 49 });
    const levers = [...made.values()].flatMap((piece: Primitive) =>
      piece.type === 'switch' ? [leverOf(piece)] : [],
    );
    expect(levers).toEqual(['coil', 'a', 'a']);
  });

  test('is told where it names what it has not', () => {
    const contact = { type: 'switch', id: 'a', ends: ['1', '2'], action: 'latching', rest: 'open' };
    expect(kindProblems({ joined: [['1', '4']] })).toEqual(['unknown-terminal']);
    expect(kindProblems({ inside: [{ ...contact, movesWith: 'b' }] })).toEqual(['unknown-switch']);
    expect(kindProblems({ inside: [{ ...contact, movesWith: 'a' }] })).toEqual(['unknown-switch']);
    expect(kindProblems({ inside: [{ ...contact, operatedBy: 'coil' }] })).toEqual(['unknown-coil']);
    const source = { type: 'source', id: 's', ends: ['1', '2'], volts: '5 V', ohms: '1', from: 'in' };
    expect(kindProblems({ inside: [source] })).toEqual(['unknown-terminal']);
    const input = { type: 'logic-input', id: 'i', ends: ['1', '2'], ohms: '1M', supply: 'vcc' };
    expect(kindProblems({ inside: [input] })).toEqual(['unknown-terminal']);
  });

  test('lets a load or a lamp move a contact, as on a module or in an optocoupler', () => {
    const kinds = ['relay-module', 'optocoupler'].map((kind) => open.partKinds.get(kind));
    const movers = kinds.flatMap((kind) =>
      (kind?.inside ?? []).flatMap((piece) => (piece.type === 'switch' ? [piece.operatedBy] : [])),
    );
    expect(movers).toEqual(['coil', 'coil', 'lamp']);
  });
});
