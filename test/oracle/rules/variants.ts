/**
 * Right builds made from right builds: the same hardware and the same sketch, written otherwise. What is silent on one
 * has to be silent on the other, so each clean build tells of false alarms several times.
 */
import { type CleanBuild, type Files, MANIFEST, mainSketch } from './builds';
import { endsOf, type Hardware, hardwareOf, type WireEntry } from './mutate';

type Rewrite = (hardware: Hardware) => Hardware;

const turned = (wire: WireEntry): WireEntry =>
  wire.path ? wire : { ...wire, from: wire.to ?? '', to: wire.from ?? '' };

const reverseEntries = <T>(entries: Readonly<Record<string, T>>): Record<string, T> =>
  Object.fromEntries(Object.entries(entries).reverse());

/** A path as single wires, which enter a two-terminal part at its first terminal and leave at its second. */
function singleWires(hardware: Hardware): Hardware {
  const terminals: Readonly<Record<string, readonly [string, string]>> = {
    led: ['anode', 'cathode'],
    diode: ['anode', 'cathode'],
    'schottky-diode': ['anode', 'cathode'],
    buzzer: ['+', '-'],
    optocoupler: ['anode', 'cathode'],
  };
  const [enter, leave] = [0, 1].map((side) => (end: string): string => {
    const part = hardware.parts[end];
    return part === undefined ? end : `${end}.${terminals[part.kind]?.[side] ?? String(side + 1)}`;
  });
  const split = (wire: WireEntry): WireEntry[] => {
    const { path } = wire;
    if (!path || !enter || !leave) return [wire];
    return path.slice(1).map((to, index) => ({ from: leave(path[index] ?? ''), to: enter(to) }));
  };
  return { ...hardware, wires: hardware.wires.flatMap(split) };
}

/** Wires named from the far end first; positions that were assigned may change, and nothing else. */
const REWRITES: Readonly<Record<string, Rewrite>> = {
  'wires in reverse order': (hardware) => ({ ...hardware, wires: [...hardware.wires].reverse() }),
  'parts in reverse order': (hardware) => ({ ...hardware, parts: reverseEntries(hardware.parts) }),
  'ends exchanged': (hardware) => ({ ...hardware, wires: hardware.wires.map(turned) }),
  'paths as single wires': singleWires,
};

/** Boards that have the same pins at the same levels for what a build uses. */
const TWINS: Readonly<Record<string, readonly string[]>> = {
  'uno-r3': ['nano-v3', 'mega-2560'],
  'nano-v3': ['uno-r3'],
  pico: ['pico-w'],
  micro: ['leonardo'],
};

/** What does not carry over: pins, holes or timers that the twin has not. */
const HOME: ReadonlySet<string> = new Set([
  ...['tide-clock', 'log-book', 'boiler-watch', 'harbour-windows'],
  ...['pilot-radio', 'strongbox', 'aquarium-moon'],
]);

export function variantsOf(build: CleanBuild): readonly CleanBuild[] {
  const hardware = hardwareOf(build);
  const sketch = mainSketch(build);
  const withManifest = (about: string, changed: Hardware): CleanBuild => ({
    name: `${build.name}, ${about}`,
    files: { ...build.files, [MANIFEST]: JSON.stringify(changed, null, 2) },
  });
  const withSketch = (about: string, change: (text: string) => string): CleanBuild => ({
    name: `${build.name}, ${about}`,
    files: Object.fromEntries(
      Object.entries(build.files).map(([file, text]) => [file, file === MANIFEST ? text : change(text)]),
    ) as Files,
  });
  // A Nano has two holes for ground, an Uno three.
  const grounds = hardware.wires.flatMap(endsOf).filter((end) => end === 'GND').length;
  const boards = (HOME.has(build.name) ? [] : (TWINS[hardware.board] ?? [])).filter(
    (board) => board !== 'nano-v3' || grounds <= 2,
  );
  return [
    ...Object.entries(REWRITES).map(([about, rewrite]) => withManifest(about, rewrite(hardware))),
    ...boards.map((board) => withManifest(`on ${board}`, { ...hardware, board })),
    withSketch('lines ended by CR and LF', (text) => text.replaceAll('\n', '\r\n')),
    withSketch('a comment behind every semicolon', (text) => text.replace(/;$/gm, '; // as it was')),
    withSketch('blank lines everywhere', (text) =>
      text.replaceAll('\n', '\n\n').replaceAll('\\\n\n', '\\\n'),
    ),
    { name: `${build.name}, ${sketch} alone in front`, files: reverseEntries(build.files) },
  ];
}
