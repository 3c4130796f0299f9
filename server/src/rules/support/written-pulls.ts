/** Inputs that get HIGH for their pull-up on a core that switches none by that, and that nothing else holds. */
import { levelOnInput } from '../../base/level-on-input';
import type { PinUse } from '../../base/pin-use';
import type { PinView, Subject } from '../subject';
import { findOpen } from './floating';
import { isMeant } from './views';

export interface WrittenPull {
  readonly view: PinView;
  /** The call that writes HIGH. */
  readonly write: PinUse;
  /** Switch parts that leave the pin open. */
  readonly open: readonly string[];
}

const store = new WeakMap<Subject, readonly WrittenPull[]>();

export function writtenPulls(subject: Subject): readonly WrittenPull[] {
  let found = store.get(subject);
  if (!found) {
    found = find(subject);
    store.set(subject, found);
  }
  return found;
}

function find(subject: Subject): readonly WrittenPull[] {
  const effect = levelOnInput(subject.build.board.platform);
  if (effect !== 'nothing' && effect !== 'drives-low') return [];
  if (subject.facts.damaged || subject.unresolved.some((use) => use.action === 'mode')) return [];
  return subject.pins.flatMap((view) => {
    const modes = view.uses.filter((use) => use.action === 'mode');
    if (modes.length === 0 || view.wires.length === 0) return [];
    if (!modes.every((use) => use.modes?.length === 1 && use.modes[0] === 'input')) return [];
    if (view.modes.some((mode) => mode !== 'input')) return [];
    const write = view.uses.find(
      (use) =>
        use.action === 'write' &&
        use.value?.kind === 'known' &&
        use.value.values.every((one) => one !== 0) &&
        isMeant(use),
    );
    if (!write || !view.uses.some((use) => use.action === 'read' || use.action === 'interrupt')) return [];
    const open = findOpen(subject, view)?.open ?? [];
    return open.length === 0 ? [] : [{ view, write, open }];
  });
}
