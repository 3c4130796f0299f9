/** Inputs of parts that what drives them never lifts to a level that is read as high for certain. */
import type { PinView, Subject } from '../subject';
import { reach } from './conduction';
import { highest, type PlacedInput, partInputs, type VoltsAt, voltsAtInput } from './input-volts';
import { type NeededLevel, neededLevel } from './needed-level';
import { partOf } from './views';

export interface WeakInput {
  readonly input: PlacedInput;
  readonly most: VoltsAt;
  readonly needed: NeededLevel;
  /** Pin of the board that drives it. */
  readonly view: PinView;
  /** True for the data input of a strip of addressable lamps. */
  readonly strip: boolean;
}

/** One a part: the first of its inputs. */
export function weakInputs(subject: Subject): readonly WeakInput[] {
  const told = new Set<string>();
  return partInputs(subject).flatMap((input) => {
    if (told.has(input.part)) return [];
    const most = highest(voltsAtInput(subject, input));
    const needed = most && neededLevel(subject, input, most.state);
    if (!most?.state || !needed || most.volts.typ >= needed.high || most.volts.typ <= needed.low) return [];
    const nets = reach(subject, input.nets[0], { switches: most.state.switches, resistances: true });
    const { drives } = most.state;
    const view = subject.pins.find(({ pin, net }) => nets.has(net.id) && drives[pin.id] === 'high');
    if (!view) return [];
    told.add(input.part);
    const [end] = input.primitive.ends;
    const terminal = partOf(subject, input.part)?.terminals.find(({ id }) => id === end);
    return [{ input, most, needed, view, strip: terminal?.roles?.includes('strip.data') ?? false }];
  });
}
