/** Whether anything holds a pin while the switches on it are open. */
import { leverOf } from '../../base/primitive';
import type { PinView, Placed, Subject } from '../subject';
import { railsAmong, reach } from './conduction';

export interface OpenInput {
  /** Switch parts that leave it open; empty where nothing ever ties the pin. */
  readonly open: readonly string[];
  /** Rail that the closed switch ties it to. */
  readonly closedTo?: string;
}

/** Contacts that share a lever are never all open: they are in one of its two places. */
function placeOf(
  { part, primitive }: Placed,
  position: 'open' | 'closed',
  moved: boolean,
  switches: readonly Placed[],
): 'open' | 'closed' {
  if (primitive.type !== 'switch') return position;
  const changeOver = switches.some(
    (other) =>
      other.part === part &&
      other.primitive.type === 'switch' &&
      leverOf(other.primitive) === leverOf(primitive) &&
      other.primitive.rest !== primitive.rest,
  );
  if (!changeOver || position === 'closed') return position;
  return (primitive.rest === 'closed') === moved ? 'open' : 'closed';
}

/** The switches that leave a pin without a level, and the rail they tie it to when closed. */
export function findOpen(subject: Subject, view: PinView): OpenInput | undefined {
  const switches = subject.placed.filter((element) => element.primitive.type === 'switch');
  const all = (position: 'open' | 'closed', moved: boolean) =>
    Object.fromEntries(switches.map((element) => [element.id, placeOf(element, position, moved, switches)]));
  const look = (position: 'open' | 'closed', moved = false) =>
    reach(subject, view.net.id, { switches: all(position, moved), resistances: true });
  const tied = (nets: ReadonlySet<string>) =>
    railsAmong(subject, nets).length > 0 ||
    subject.pins.some((other) => other !== view && nets.has(other.net.id) && !other.drives.includes('input'));
  if (tied(look('open')) && tied(look('open', true))) return undefined;
  const closed = look('closed');
  const rail = railsAmong(subject, closed)[0];
  if (rail === undefined) {
    // Something with a life of its own (a signal of a module) may hold it; only bare switches are known not to.
    const others = view.net.terminals.some((end) => !switches.some((element) => element.part === end.part));
    return others ? undefined : { open: [] };
  }
  const open = switches.filter((element) =>
    element.nets.some((net) => closed.has(net) && subject.rails[net] === undefined),
  );
  return { open: [...new Set(open.map((element) => element.part))], closedTo: rail };
}
