/** The first power-up, step by step: what is cheap to find goes first, what can burn or move goes last. */
import { formatRange } from '../base/quantity';
import { hasMoving, hasSource } from './cautions';
import type { PaperInput, Text } from './paper';
import { groundName } from './power-on-tests';
import { countWords, listWords } from './words';

export function powerUpSteps(input: PaperInput): readonly Text[] {
  const { build } = input;
  const ground = groundName(input);
  const sources = build.parts.filter(({ inside }) => inside.some(({ type }) => type === 'source'));
  const names = listWords(sources.map(({ id }) => id));
  const wired = new Set(build.nets.flatMap(({ pins }) => pins));
  const rails = build.board.pins.filter(
    ({ id, type, volts }) =>
      type === 'supply' && volts !== undefined && (id === build.board.logicRail || wired.has(id)),
  );
  const inputs = (build.board.supplyInputs ?? []).map(({ title }) => title);
  const polarised = build.wires.filter(({ ends }) => ends.some((end) => isPolarised(input, end))).length;
  return [
    'Every row of the test sheet with power off is ticked.',
    `Look at every polarised terminal once more: ${countWords(polarised, 'wire')} of the hookup list carry a warning.`,
    ...(hasSource(input) ? [`${names} stay${sources.length === 1 ? 's' : ''} out.`] : []),
    ...(hasMoving(input) ? ['Take the load off whatever moves, and fasten its body.'] : []),
    `Feed the board alone${inputs.length > 0 ? ` (${inputs.length > 1 ? 'one of: ' : ''}${inputs.join('; ')})` : ''}, best from a supply with a current limit of 100 to 200 mA or through a USB hub that switches off by itself (common practice). One hand stays on the plug.`,
    'For ten seconds look, smell and feel: nothing gets warm, no lamp is far too bright. Otherwise pull the plug and go back to the test sheet.',
    ...rails.map(({ id, volts }): Text => {
      const expected = volts ? formatRange(volts, 'V') : '';
      return `Measure ${id} against ${ground}: ${expected} (least / usual / most).`;
    }),
    'Load the sketch.',
    ...sources.map(({ id, inside }): Text => {
      const source = inside.find((primitive) => primitive.type === 'source');
      const volts = source?.type === 'source' ? formatRange(source.volts, 'V') : '';
      return `Measure ${id} before connecting it: ${volts}, and plus where the list says plus. Then connect it.`;
    }),
    ...(hasMoving(input) ? ['Let it move once without its load, then with it.'] : []),
    'Go through the rows of the test sheet with power on, and work every button.',
  ];
}

function isPolarised(
  { build }: PaperInput,
  end: { kind: string; part?: string; terminal?: string },
): boolean {
  const part = build.parts.find(({ id }) => id === end.part);
  return part?.terminals.some(({ id, polarity }) => id === end.terminal && polarity !== undefined) ?? false;
}
