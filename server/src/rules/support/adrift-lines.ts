/** Lines of a bus that join parts, with their pull-ups at most, and come to no pin of the board. */
import type { Part } from '../../base/build';
import type { Span } from '../../base/span';
import type { Subject } from '../subject';
import { partOf } from './views';

export interface AdriftLine {
  /** `i2c`, `spi`. */
  readonly bus: string;
  /** `sda`, `sck`. */
  readonly line: string;
  readonly ends: readonly { readonly part: Part; readonly terminal: string; readonly span: Span }[];
}

export function adriftLines(subject: Subject): readonly AdriftLine[] {
  return subject.build.nets.flatMap((net): AdriftLine[] => {
    if (net.pins.length > 0 || net.wires.length === 0 || subject.rails[net.id] !== undefined) return [];
    const found = net.terminals.map(({ part: id, terminal }) => {
      const part = partOf(subject, id);
      const roles = part?.terminals.find((one) => one.id === terminal)?.roles ?? [];
      const [, bus, line] =
        roles.map((role) => /^(i2c|spi)\.(sda|scl|sck|mosi)$/.exec(role)).find(Boolean) ?? [];
      return { part, terminal, bus, line };
    });
    const onBus = found.flatMap(({ part, terminal, bus, line }) => {
      return part && bus !== undefined && line !== undefined ? [{ part, terminal, bus, line }] : [];
    });
    const [first] = onBus;
    if (!first || onBus.some(({ line }) => line !== first.line)) return [];
    // Whatever else is on the line may lead on to the board: only a pull-up is known not to.
    const own = new Set(onBus.map(({ part }) => part.id));
    const others = subject.placed.filter(
      ({ part, nets, third }) => !own.has(part) && (nets.includes(net.id) || third === net.id),
    );
    const isPull = others.every(
      ({ primitive, nets }) =>
        primitive.type === 'resistor' &&
        nets.some((one) => one !== net.id && subject.rails[one] !== undefined),
    );
    const strangers = found.filter(({ part }) => part && !own.has(part.id)).map(({ part }) => part?.id);
    if (!isPull || strangers.some((id) => !others.some(({ part }) => part === id))) return [];
    const ends = onBus.map(({ part, terminal }) => ({
      part,
      terminal,
      span: spanOf(subject, part, terminal),
    }));
    return [{ bus: first.bus, line: first.line, ends }];
  });
}

/** Where a wire names the terminal. */
function spanOf(subject: Subject, part: Part, terminal: string): Span {
  const ends = subject.build.wires.flatMap((wire) => wire.ends);
  const end = ends.find(
    (one) => one.kind === 'terminal' && one.part === part.id && one.terminal === terminal,
  );
  return end?.span ?? part.span;
}
