/** Where the supplies and grounds of new parts are soldered: free header positions, each given once, else a joined wire. */
import { freePosition, holesOf, type PartKind } from '../../../hardware';
import type { Subject } from '../../subject';
import { railEnd } from '../manifest-edits';

export class Rails {
  readonly #given = new Set<string>();

  constructor(
    readonly subject: Subject,
    /** Which of the supplies that fit, 0 is the first. */
    readonly supply: number,
  ) {}

  ground(): string | undefined {
    const grounds = this.subject.pins.filter((view) => view.pin.type === 'ground');
    return this.#first(grounds.map((view) => view.pin.id));
  }

  logic(): string | undefined {
    return this.#end(this.subject.build.board.logicRail);
  }

  /** A supply for a module: the logic rail where that fits its volts, else another of the board's. */
  feed(kind: PartKind): string | undefined {
    const { board } = this.subject.build;
    const supplies = board.pins.filter((pin) => pin.type === 'supply' && pin.volts !== undefined);
    const wanted = voltsOf(kind);
    const logic = supplies.filter((pin) => pin.id === board.logicRail);
    const fitting = [...logic, ...supplies.filter((pin) => pin.id !== board.logicRail)].filter((pin) => {
      const volts = pin.volts?.typ ?? 0;
      return wanted === undefined || (volts >= wanted.min && volts <= wanted.max);
    });
    const chosen = (fitting.length > 0 ? fitting : logic)[this.supply] ?? undefined;
    return chosen && this.#end(chosen.id);
  }

  #first(pins: readonly string[]): string | undefined {
    for (const pin of pins) {
      const end = this.#end(pin);
      if (end?.includes('@')) return end;
    }
    return pins.map((pin) => this.#end(pin)).find((end) => end !== undefined);
  }

  /** A free position, not one that this draft has given away; else a terminal on the rail. */
  #end(pin: string): string | undefined {
    const { build } = this.subject;
    const free = freePosition(build, pin);
    if (free === undefined) return railEnd(this.subject, pin);
    const taken = new Set(
      build.wires.flatMap(({ ends }) =>
        ends.flatMap((end) =>
          end.kind === 'pin' && end.position ? `${end.position.header}.${end.position.index}` : [],
        ),
      ),
    );
    for (const hole of holesOf(build.board, pin)) {
      const key = `${hole.header}.${hole.index}`;
      if (taken.has(key) || this.#given.has(key)) continue;
      this.#given.add(key);
      return `${pin}@${key}`;
    }
    return railEnd(this.subject, pin);
  }
}

/** Volts a module says it works at, where it says so plainly. */
function voltsOf(kind: PartKind): { readonly min: number; readonly max: number } | undefined {
  for (const primitive of kind.inside) {
    if (primitive.type !== 'load' || primitive.volts === undefined) continue;
    const { volts } = primitive;
    if (typeof volts !== 'object' || !('min' in volts || 'max' in volts)) continue;
    const figure = (value: unknown) => Number.parseFloat(String(value));
    const low = figure('min' in volts ? volts.min : undefined);
    const high = figure('max' in volts ? volts.max : undefined);
    return { min: Number.isNaN(low) ? 0 : low, max: Number.isNaN(high) ? 99 : high };
  }
  return undefined;
}
