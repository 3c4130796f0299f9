/** What an input of a part needs to read a level as high: in volts, or as a share of what feeds it. */
import type { Range } from '../../base/range';
import type { StatePoint, Subject } from '../subject';
import type { PlacedInput } from './input-volts';
import { voltsOf } from './volts';

export interface NeededLevel {
  /** Volts at the input from which it is read as high for certain, and up to which as low. */
  readonly high: number;
  readonly low: number;
  /** Volts that feed it, where the level is a share of them. */
  readonly supply?: number;
}

/** Undefined where the part's data do not say, or nothing tells what feeds it. */
export function neededLevel(
  subject: Subject,
  input: PlacedInput,
  state: StatePoint | undefined,
): NeededLevel | undefined {
  const { primitive, part } = input;
  const { highVolts, lowVolts, highShare, lowShare, supply } = primitive;
  if (highVolts !== undefined) return { high: highVolts, low: lowVolts ?? 0 };
  if (highShare === undefined || supply === undefined || !state) return undefined;
  const net = netOf(subject, part, supply);
  const volts = net === undefined ? undefined : supplyVolts(subject, state, net);
  if (!volts || volts.typ <= 0 || overfed(subject, part, volts)) return undefined;
  return { high: highShare * volts.typ, low: (lowShare ?? 0) * volts.typ, supply: volts.typ };
}

/** What a part that gets too much would read is not the thing to tell. */
function overfed(subject: Subject, part: string, volts: Range): boolean {
  const primitives = subject.build.parts.find(({ id }) => id === part)?.inside ?? [];
  return primitives.some(
    (primitive) =>
      primitive.type === 'load' && primitive.volts !== undefined && volts.typ > primitive.volts.max,
  );
}

function netOf(subject: Subject, part: string, terminal: string): string | undefined {
  return subject.build.nets.find(({ terminals }) =>
    terminals.some((end) => end.part === part && end.terminal === terminal),
  )?.id;
}

/** The supply may lie in another region than the input. */
function supplyVolts(subject: Subject, state: StatePoint, net: string): Range | undefined {
  const own = voltsOf(subject, state, net);
  if (own) return own;
  const region = subject.regions.find(({ nets }) => nets.includes(net));
  return region && subject.points(region)[0]?.point.nodes[net];
}
