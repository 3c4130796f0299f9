/** Pins of the board that get more volts than they stand while they do not drive. */
import type { Range } from '../../base/range';
import type { PinView, Subject } from '../subject';
import { highest, type VoltsAt, voltsAtPin } from './input-volts';
import { clampHolds, liftedBy } from './lifted';
import { isAdrift } from './parted-grounds';
import { isReversedRegion } from './reversed-supplies';
import { isSignal, regionOf, viewOf } from './views';

export interface HighPin {
  readonly volts: Range;
  readonly stands: number;
  readonly state: string;
  /** Parts and rails it comes from. */
  readonly from: readonly string[];
  /** By the usual figures, not by a corner alone. */
  readonly sure: boolean;
}

/** Only what the pin's own supply cannot reach counts as a corner: a rail and its pins rise together. */
export function tooHighAt(subject: Subject, view: PinView): HighPin | undefined {
  if (!isSignal(view) || view.wires.length === 0 || isAdrift(subject, view.net.id)) return undefined;
  if (isReversedRegion(subject, regionOf(subject, view.pin.id))) return undefined;
  const { board } = subject.build;
  const stands = (view.pin.maxInputVolts ?? board.limits.pinMaxVolts)?.max;
  const logic = viewOf(subject, board.logicRail)?.pin.volts;
  const most: VoltsAt | undefined = highest(voltsAtPin(subject, view));
  if (stands === undefined || !logic || !most) return undefined;
  const sure = most.volts.typ > stands;
  if (!sure && (most.volts.max <= stands || most.volts.typ <= logic.typ * 1.001)) return undefined;
  const from = liftedBy(subject, view.net.id, most, stands, view.pin.id);
  if (from.length === 0 || clampHolds(subject, view, most, stands)) return undefined;
  const volts = sure ? most.volts : { ...most.volts, typ: most.volts.max };
  return { volts, stands, state: most.state?.words ?? '', from, sure };
}
