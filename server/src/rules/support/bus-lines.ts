/** Lines that everybody only pulls low (two-wire bus, one-wire bus), and what pulls them up. */
import type { PinUse } from '../../base/pin-use';
import { exactly, type Range } from '../../base/range';
import type { PinView, Subject } from '../subject';
import { isSignal, partOf, viewOf } from './views';

export interface BusLine {
  readonly view: PinView;
  readonly kind: 'two-wire' | 'one-wire';
  /** Parts on it that speak over it. */
  readonly parts: readonly string[];
  /** The use that opens the bus, or reads from the part. */
  readonly use: PinUse;
  /** Pull-ups outside the chip: the part each is in, and its ohms. */
  readonly pulls: readonly { readonly part: string; readonly ohms: Range; readonly volts: number }[];
  /** All of them in parallel, ohms; undefined where there is none. */
  readonly ohms?: Range;
  /** Volts of the highest rail they go to. */
  readonly volts: number;
}

/** Lines between a pin that the sketch uses and a part with a terminal of that bus. */
export function busLines(subject: Subject): readonly BusLine[] {
  return subject.pins.flatMap((view) => {
    if (!isSignal(view) || view.wires.length === 0 || subject.rails[view.net.id] !== undefined) return [];
    const roles = view.net.terminals.flatMap(({ part, terminal }) => {
      const found = partOf(subject, part)?.terminals.find(({ id }) => id === terminal);
      return (found?.roles ?? []).map((role) => ({ part, role }));
    });
    const onBus = (pattern: RegExp) => roles.filter(({ role }) => pattern.test(role)).map(({ part }) => part);
    const two = onBus(/^i2c\d*\.(sda|scl)$/);
    const one = onBus(/^onewire\./);
    const parts = [...new Set([...two, ...one])];
    const use = view.uses.find(({ action }) =>
      ['bus', 'transfer', 'device', 'read', 'mode'].includes(action),
    );
    // A level shifter or any other thing on the line may bring the pull-up itself.
    if (parts.length === 0 || !use || foreign(subject, view)) return [];
    const pulls = pullsOf(subject, view);
    const ohms = parallel(pulls.map((pull) => pull.ohms));
    return [
      {
        view,
        kind: two.length > 0 ? 'two-wire' : 'one-wire',
        parts,
        use,
        pulls,
        ...(ohms && { ohms }),
        volts: Math.max(0, ...pulls.map(({ volts }) => volts)),
      },
    ];
  });
}

/** True where a transistor, an output or a resistor to somewhere else is on the line. */
function foreign(subject: Subject, view: PinView): boolean {
  return subject.placed.some(({ primitive, nets, third }) => {
    if (!nets.includes(view.net.id) && third !== view.net.id) return false;
    if (primitive.type === 'resistor') return nets.every((net) => subject.rails[net] === undefined);
    return !quiet.has(primitive.type);
  });
}

const quiet: ReadonlySet<string> = new Set(['logic-input', 'capacitor', 'load']);

function pullsOf(subject: Subject, view: PinView): BusLine['pulls'] {
  return subject.placed.flatMap(({ primitive, nets, part }) => {
    if (primitive.type !== 'resistor' || !nets.includes(view.net.id)) return [];
    const far = nets[0] === view.net.id ? nets[1] : nets[0];
    const rail = viewOf(subject, subject.rails[far] ?? '');
    if (rail?.pin.type !== 'supply') return [];
    return [{ part, ohms: primitive.ohms, volts: rail.pin.volts?.typ ?? 0 }];
  });
}

function parallel(all: readonly Range[]): Range | undefined {
  if (all.length === 0) return undefined;
  const of = (key: keyof Range) => 1 / all.reduce((sum, range) => sum + 1 / Math.max(range[key], 1e-3), 0);
  return all.length === 1 ? (all[0] ?? exactly(0)) : { min: of('min'), typ: of('typ'), max: of('max') };
}

/** Lines of one bus with the same parts are told together. */
export function groupLines(lines: readonly BusLine[]): readonly (readonly [BusLine, ...BusLine[]])[] {
  const groups = new Map<string, [BusLine, ...BusLine[]]>();
  for (const line of lines) {
    const key = `${line.kind} ${[...line.parts].sort().join()}`;
    const group = groups.get(key);
    if (group) group.push(line);
    else groups.set(key, [line]);
  }
  return [...groups.values()];
}
