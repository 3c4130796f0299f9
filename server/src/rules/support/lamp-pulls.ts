/** A lamp of the board that hangs on a pin whose pull-up is on: it holds the pin at its own forward volts. */
import type { PinView, Subject } from '../subject';
import { voltsAtPin } from './input-volts';
import { isRead } from './low-pins';

export interface LampPull {
  readonly lamp: string;
  readonly volts: number;
}

/** Where the pull-up alone does not lift the pin over its high level because of the board's own lamp. */
export function pulledByLamp(subject: Subject, view: PinView): LampPull | undefined {
  if (!view.drives.includes('pull-up') || !isRead(view)) return undefined;
  const { board } = subject.build;
  const own = board.onBoard.find(({ lamp }) => lamp?.direct === true && lamp.pin === view.pin.id);
  if (!own) return undefined;
  const pulled = voltsAtPin(subject, view).filter(({ state }) => state?.drives[view.pin.id] === 'pull-up');
  const most = Math.max(...pulled.map(({ volts }) => volts.typ));
  return pulled.length > 0 && most < board.limits.inputHighVolts.min
    ? { lamp: own.title, volts: most }
    : undefined;
}
