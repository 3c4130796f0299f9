/** Pins and parts of which nothing can be said, because a wire that names them could not be read. */
import type { Build } from '../base/build';
import type { Problem } from '../base/read';
import { manifestPathAt, namesInWires } from '../hardware';

/** Ids of pins and parts in the wires that have problems. */
export function findDoubtful(build: Build, text: string, problems: readonly Problem[]): readonly string[] {
  const broken = new Set<number>();
  for (const problem of problems) {
    if (problem.span.file !== build.file) continue;
    const [section, index] = manifestPathAt(text, problem.span.start)?.path ?? [];
    if (section === 'wires' && typeof index === 'number') broken.add(index);
  }
  const names = namesInWires(text, broken);
  const pins = build.board.pins.filter(
    (pin) =>
      names.includes(pin.id) ||
      pin.names.some((name) => names.includes(name)) ||
      names.includes(`${pin.number}`),
  );
  return [...names, ...pins.map((pin) => pin.id)];
}
