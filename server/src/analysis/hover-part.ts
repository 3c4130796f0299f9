/** What a part is and how it is wired, in Markdown. */
import type { Part } from '../base/build';
import type { Subject } from '../rules/subject';
import { traceRuns } from './runs';
import { ampsWords, partWords, plain, runWords } from './words';

/** Several paragraphs on one part: what it is, its terminals, the runs through it, its current at the worst. */
export function describePart(subject: Subject, part: Part): string {
  const { build } = subject;
  const lines = [`**${plain(part.id)}** · ${partWords(part, build.stock.tolerance)}`];
  if (part.purpose !== undefined) lines.push(plain(part.purpose));
  if (part.caution !== undefined) lines.push(`**Caution.** ${plain(part.caution)}`);
  const terminals = part.terminals.map((terminal) => {
    const ends = build.wires.flatMap((wire) => {
      const index = wire.ends.findIndex(
        (end) => end.kind === 'terminal' && end.part === part.id && end.terminal === terminal.id,
      );
      if (index < 0) return [];
      const other = wire.ends[index === 0 ? 1 : 0];
      const far =
        other.kind === 'pin' ? (other.position?.words ?? other.pin) : `${other.part}.${other.terminal}`;
      return [`${wire.colour ? `${wire.colour} wire` : 'wire'} to ${far}`];
    });
    const tell = terminal.tell ? ` (${terminal.tell})` : '';
    return `- ${plain(terminal.id + tell)}: ${plain(ends.length > 0 ? ends.join('; ') : 'no wire')}`;
  });
  lines.push(terminals.join('\n'));
  for (const view of subject.pins) {
    if (view.wires.length === 0 || view.pin.number === undefined) continue;
    for (const run of traceRuns(build, view.pin.id)) {
      if (run.hops.some((hop) => hop.part?.id === part.id)) lines.push(runWords(build, view.pin.id, run));
    }
  }
  const amps = partAmps(subject, part);
  if (amps) lines.push(amps);
  return lines.join('\n\n');
}

/** The current through a part's lamp, resistor or winding in the state where most flows. */
function partAmps(subject: Subject, part: Part): string | undefined {
  const shown = new Set(['diode', 'resistor', 'coil', 'load']);
  const element = subject.placed.find(
    (placed) => placed.part === part.id && shown.has(placed.primitive.type),
  );
  const region = element && subject.regions.find((candidate) => candidate.elements.includes(element));
  if (!element || !region) return undefined;
  let most: { amps: Parameters<typeof ampsWords>[0]; words: string } | undefined;
  for (const state of subject.points(region)) {
    const amps = state.point.amps[element.id];
    if (amps && (!most || Math.abs(amps.typ) > Math.abs(most.amps.typ))) most = { amps, words: state.words };
  }
  if (!most || Math.abs(most.amps.max) < 1e-7) return undefined;
  return `Current: ${plain(ampsWords(most.amps))}${most.words ? `, ${plain(most.words)}` : ''}.`;
}
