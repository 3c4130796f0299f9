/**
 * Loads that a transistor switches. A load between two rails draws its current whatever happens; one behind a transistor
 * draws none while that blocks, and a constant current would invent a voltage there. Such a load is taken as the
 * resistance that draws its current at the supply's voltage.
 */
import type { Range } from '../base/range';
import type { PinView, Placed, Region } from '../rules/subject';

/** Share of the usual current that a load without a stated least current draws, so that its resistance is finite. */
const least = 1e-3;

/** Ohms of the switched loads of a region, by placed id. */
export function switchedLoads(
  region: Region,
  isRail: (net: string) => boolean,
  railOf: (net: string) => PinView | undefined,
): ReadonlyMap<string, Range> {
  const found = new Map<string, Range>();
  const { elements } = region;
  if (!elements.some(({ primitive: { type } }) => type === 'load')) return found;
  const ends = new Set(
    elements.flatMap(({ primitive, nets }) => (primitive.type === 'transistor' ? [...nets] : [])),
  );
  if (ends.size === 0) return found;
  // Behind a supply of the build's own nothing depends on the transistor any more.
  const held = new Set(
    elements.flatMap(({ primitive, nets }) => (primitive.type === 'source' ? [...nets] : [])),
  );
  const isHeld = (net: string) => isRail(net) || held.has(net);
  const behind = reached(elements, ends, isHeld);
  for (const { id, primitive, nets } of elements) {
    if (primitive.type !== 'load') continue;
    if (!nets.some((net) => !isHeld(net) && behind.has(net))) continue;
    const volts = supplyVolts(region, railOf) ?? primitive.volts?.typ;
    if (volts === undefined) continue;
    const { min, typ, max } = primitive.amps;
    const most = Math.max(max, 1e-9);
    const usual = Math.max(typ, most * least);
    found.set(id, { min: volts / most, typ: volts / usual, max: volts / Math.max(min, usual * least) });
  }
  return found;
}

/** Nets that resistors, coils, diodes and contacts join to some, up to the rails. */
function reached(
  elements: readonly Placed[],
  from: ReadonlySet<string>,
  isRail: (net: string) => boolean,
): ReadonlySet<string> {
  const found = new Set([...from].filter((net) => !isRail(net)));
  for (let before = -1; before < found.size; ) {
    before = found.size;
    for (const { primitive, nets } of elements) {
      if (!passing.has(primitive.type)) continue;
      const [a, b] = nets;
      if (found.has(a) && !isRail(b)) found.add(b);
      if (found.has(b) && !isRail(a)) found.add(a);
    }
  }
  return found;
}

const passing: ReadonlySet<string> = new Set(['resistor', 'coil', 'diode', 'switch']);

/** The highest voltage that feeds the region. */
function supplyVolts(region: Region, railOf: (net: string) => PinView | undefined): number | undefined {
  const all = region.elements.flatMap(({ primitive, nets }) => [
    ...nets.map((net) => railOf(net)?.pin.volts?.typ),
    primitive.type === 'source' ? primitive.volts.typ : undefined,
  ]);
  const volts = all.filter((one) => one !== undefined);
  return volts.length === 0 ? undefined : Math.max(...volts);
}
