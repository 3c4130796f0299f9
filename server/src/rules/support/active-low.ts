/** Loads that work while their pin is low, and how long the sketch leaves such a pin low at its start. */
import type { PinUse } from '../../base/pin-use';
import type { PinView, Subject } from '../subject';
import { regionOf } from './views';

/** The mode call after which the pin is low, and the write that ends it; undefined where nothing is sure. */
export function lowAtFirst(
  uses: readonly PinUse[],
): { readonly mode: PinUse; readonly high: PinUse } | undefined {
  const ordered = [...uses].sort((a, b) => a.order - b.order);
  const mode = ordered.find((use) => use.modes?.includes('output'));
  if (!mode?.certain || mode.action !== 'mode' || mode.call !== 'pinMode' || mode.phase !== 'setup')
    return undefined;
  const writes = ordered.filter(({ action }) => action === 'write' || action === 'pwm');
  const [first] = writes;
  // A first write of LOW means that the load shall work from the start on.
  const isHigh = first?.value?.kind === 'known' && first.value.values.every((value) => value !== 0);
  return first?.certain && isHigh && first.order > mode.order ? { mode, high: first } : undefined;
}

/** Current of a control below which nothing acts, and that of one that acts, amperes. */
const none = 5e-5;
const some = 2e-4;

/** A part with contacts or a transistor that conducts only while the pin is low. */
export function loadWhenLow(subject: Subject, view: PinView): string | undefined {
  const region = regionOf(subject, view.pin.id);
  if (!region || region.limit !== undefined) return undefined;
  const points = subject.points(region);
  const most = (id: string, drive: 'high' | 'low') =>
    points
      .filter((state) => state.drives[view.pin.id] === drive)
      .reduce((worst, { point }) => Math.max(worst, Math.abs(point.amps[id]?.typ ?? 0)), 0);
  return region.elements.find(({ id, part, onBoard, primitive }) => {
    const acts =
      (primitive.type === 'transistor' && primitive.channel === 'p') ||
      (primitive.type === 'diode' && !primitive.lamp && switchesSomething(subject, part));
    return !onBoard && acts && most(id, 'low') > some && most(id, 'high') < none;
  })?.part;
}

function switchesSomething(subject: Subject, part: string): boolean {
  return subject.placed.some(
    (element) =>
      element.part === part &&
      element.primitive.type === 'switch' &&
      element.primitive.operatedBy !== undefined,
  );
}
