/** The voltage that a part's supply gives it, beside the voltages that the part works at. */
import type { Fix } from '../../base/finding';
import type { Range } from '../../base/range';
import type { Subject } from '../subject';
import { draftManifest } from './draft';
import { isInside, railEnd, setEnd, wiresAt } from './manifest-edits';
import type { PlacedOf, Supply } from './supplies';
import { onlyFeeder, placedOf } from './supplies';

export interface FedPart {
  readonly part: string;
  /** Terminal that the supply feeds. */
  readonly terminal: string;
  readonly supply: Supply;
  /** Volts at which it works. */
  readonly wanted: Range;
  /** False where something else may drop volts in front of it. */
  readonly whole: boolean;
}

/** Loads, and windings that operate something, with the one supply that metal, switches and fuses join to them. */
export function fedParts(subject: Subject): readonly FedPart[] {
  const loads = placedOf(subject, 'load').flatMap((load) => {
    const { volts } = load.primitive;
    return volts ? [fed(subject, load, 0, volts, true)] : [];
  });
  const coils = placedOf(subject, 'coil').flatMap((coil) => {
    const { volts } = coil.primitive;
    return volts ? [fed(subject, coil, 0, volts, false) ?? fed(subject, coil, 1, volts, false)] : [];
  });
  const seen = new Set<string>();
  return [...loads, ...coils].filter((part): part is FedPart => {
    const key = part && `${part.part}.${part.terminal}`;
    if (key === undefined || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function fed(
  subject: Subject,
  element: PlacedOf<'load'> | PlacedOf<'coil'>,
  end: 0 | 1,
  wanted: Range,
  whole: boolean,
): FedPart | undefined {
  const supply = onlyFeeder(subject, element.nets[end]);
  // A supply that the part itself makes feeds nothing of it, and what a regulator needs it says in another way.
  if (!supply || supply.source?.part === element.part) return undefined;
  const terminal = element.primitive.ends[end];
  const isInput = placedOf(subject, 'source').some(
    ({ part, primitive }) => part === element.part && primitive.from === terminal,
  );
  if (isInput && supply.volts.typ < wanted.min) return undefined;
  return { part: element.part, terminal, supply, wanted, whole };
}

/** Takes a part's supply wire to another rail of the board whose volts suit. */
export function takeToOtherRail(subject: Subject, detail: FedPart): readonly Fix[] {
  const { part, terminal, supply, wanted } = detail;
  const { pin: from } = supply;
  const [found, ...others] = wiresAt(subject, part, terminal).flatMap((wire) =>
    ([0, 1] as const).flatMap((far) => {
      const end = wire.ends[far];
      return end.kind === 'pin' && end.pin === from?.id ? [{ wire, far }] : [];
    }),
  );
  // Whatever else hangs on the terminal moves with it.
  if (!found || others.length > 0 || isInside(subject, found.wire, found.far)) return [];
  const { wire, far } = found;
  return subject.pins.flatMap(({ pin }) => {
    const suits =
      pin.type === 'supply' && pin.volts && pin.volts.typ >= wanted.min && pin.volts.max <= wanted.max;
    const to = suits && pin.id !== from?.id ? railEnd(subject, pin.id) : undefined;
    if (to === undefined) return [];
    return [
      {
        title: `Take the wire of ${part}.${terminal} to ${to}`,
        trust: 'ask' as const,
        edits: draftManifest(subject, [setEnd(wire, far, to)]),
      },
    ];
  });
}
