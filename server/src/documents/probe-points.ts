/** Where the tips of a meter are put: a net's position on a header, or a terminal that can be reached. */
import type { Build, Net } from '../base/build';
import { endName, endWords } from './words';

/** All points of a net in words, board positions first, each once. */
export function pointsOf(build: Build, net: Net): readonly string[] {
  const own = new Set(net.wires);
  const ends = build.wires.filter(({ id }) => own.has(id)).flatMap(({ ends }) => ends);
  const pins = ends.filter(({ kind }) => kind === 'pin').map(endWords);
  const terminals = ends.filter(({ kind }) => kind === 'terminal').map(endWords);
  return [...new Set([...pins, ...terminals])];
}

/** Short names of nets by id: a pin's name or a terminal's. */
export function probeName(build: Build, netId: string): string {
  const net = build.nets.find(({ id }) => id === netId);
  if (!net) return netId;
  if (net.pins.length > 0) return net.pins[0] ?? netId;
  const wire = build.wires.find(({ id }) => id === net.wires[0]);
  const end = wire?.ends.find(
    (one) =>
      one.kind === 'terminal' &&
      net.terminals.some(({ part, terminal }) => part === one.part && terminal === one.terminal),
  );
  return end ? endName(end) : netId;
}

/** Pairs of header positions side by side, both wired and on different nets: where solder makes bridges. */
export function neighbours(
  build: Build,
): readonly { readonly a: string; readonly b: string; readonly words: string }[] {
  const netOfPin = new Map(build.nets.flatMap((net) => net.pins.map((pin) => [pin, net.id] as const)));
  const wired = new Set(
    build.wires.flatMap(({ ends }) =>
      ends.flatMap((end) =>
        end.kind === 'pin' && end.position ? [`${end.position.header} ${end.position.index}`] : [],
      ),
    ),
  );
  return build.board.headers.flatMap((header) =>
    header.positions.flatMap((pin, index) => {
      const next = header.positions[index + 1];
      if (
        next === undefined ||
        !wired.has(`${header.id} ${index + 1}`) ||
        !wired.has(`${header.id} ${index + 2}`)
      )
        return [];
      const [a, b] = [netOfPin.get(pin), netOfPin.get(next)];
      if (a === undefined || b === undefined || a === b) return [];
      return [
        {
          a,
          b,
          words: `${pin} and ${next}, ${header.title}, ${index + 1} and ${index + 2} from ${header.landmark}`,
        },
      ];
    }),
  );
}
