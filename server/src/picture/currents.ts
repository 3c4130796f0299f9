/** Typical currents, of each pin and part in the state where it carries most. */
import type { Workings } from '../analysis';

export interface Currents {
  /** Amperes by pin id and by part id, never negative. */
  readonly pins: ReadonlyMap<string, number>;
  readonly parts: ReadonlyMap<string, number>;
}

/** Below this nothing flows that anybody measures, amperes. */
const nothing = 1e-6;

export function currentsOf(workings: Workings | undefined): Currents {
  const pins = new Map<string, number>();
  const parts = new Map<string, number>();
  const raise = (known: Map<string, number>, id: string, amps: number) => {
    if (amps >= nothing && amps > (known.get(id) ?? 0)) known.set(id, amps);
  };
  for (const { elements, states } of workings?.regions ?? []) {
    const owners = new Map(elements.filter(({ onBoard }) => !onBoard).map(({ id, part }) => [id, part]));
    for (const { point } of states) {
      for (const [id, { typ }] of Object.entries(point.amps)) {
        const amps = Math.abs(typ);
        const owner = owners.get(id);
        if (owner !== undefined) raise(parts, owner, amps);
        else if (id.startsWith('pin:')) raise(pins, id.slice('pin:'.length), amps);
      }
    }
  }
  return { pins, parts };
}
