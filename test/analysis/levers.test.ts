/** Contacts that share a lever are looked at together: a change-over contact never joins both of its throws. */
import { expect, it } from 'vitest';
import { statesOf } from '../../server/src/analysis/states';
import type { Placed, Region } from '../../server/src/rules/subject';

function contact(id: string, rest: 'open' | 'closed', more: object = {}): Placed {
  const primitive = { type: 'switch', id, ends: ['a', 'b'], action: 'latching', rest, ...more } as const;
  return { id: `x/${id}`, part: 'x', onBoard: false, primitive, nets: ['n1', 'n2'] };
}

function states(elements: readonly Placed[]) {
  const region: Region = { nets: ['n1', 'n2'], pins: [], elements };
  return statesOf(region, () => undefined, undefined).states.map(({ words, switches }) => [
    words,
    { ...switches },
  ]);
}

it('moves both contacts of a change-over switch at once', () => {
  expect(states([contact('one', 'closed'), contact('two', 'open', { movesWith: 'one' })])).toEqual([
    ['x at rest', { 'x/one': 'closed', 'x/two': 'open' }],
    ['x moved', { 'x/one': 'open', 'x/two': 'closed' }],
  ]);
});

it('moves all contacts of a relay at once, wherever its coil stands', () => {
  const both = { operatedBy: 'coil' };
  expect(states([contact('no', 'open', both), contact('nc', 'closed', both)])).toEqual([
    ['x at rest', { 'x/no': 'open', 'x/nc': 'closed' }],
    ['x moved', { 'x/no': 'closed', 'x/nc': 'open' }],
  ]);
});

it('moves two poles of a kind alike, and says so as of one switch', () => {
  expect(states([contact('one', 'open'), contact('two', 'open', { movesWith: 'one' })])).toEqual([
    ['x open', { 'x/one': 'open', 'x/two': 'open' }],
    ['x closed', { 'x/one': 'closed', 'x/two': 'closed' }],
  ]);
});

it('lets contacts of their own be in every combination', () => {
  expect(states([contact('one', 'open'), contact('two', 'open')])).toHaveLength(4);
});

it('lets an open collector pull low or let go, and an output with a supply be high or low', () => {
  const output = (more: object): Placed => {
    const ohms = { min: 20, typ: 50, max: 200 };
    const primitive = { type: 'logic-output', id: 'q', ends: ['a', 'b'], ohms, ...more } as const;
    return { id: 'x/q', part: 'x', onBoard: false, primitive, nets: ['n1', 'n2'] };
  };
  const settings = (element: Placed) => {
    const region: Region = { nets: ['n1', 'n2'], pins: [], elements: [element] };
    return statesOf(region, () => undefined, undefined).states.map((state) => state.settings['x/q']);
  };
  expect(settings(output({}))).toEqual(['low', 'released']);
  expect(settings({ ...output({ supply: 'c' }), third: 'n3' })).toEqual(['low', 'high']);
});
