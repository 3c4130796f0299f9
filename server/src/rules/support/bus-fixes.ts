/** Pull-up resistors on the lines of a bus, all of them in one repair. */
import type { Fix } from '../../base/finding';
import { insertPart, insertWire } from '../../hardware';
import type { Subject } from '../subject';
import { draftManifest, type Step } from './draft';
import { nextName, ohmsText, railEnd } from './manifest-edits';
import { listWords, viewOf } from './views';

/** Declares a resistor from each pin's line to what feeds the parts, near a wanted value in ohms. */
export function addBusPulls(
  subject: Subject,
  pins: readonly string[],
  parts: readonly string[],
  wanted: number,
): readonly Fix[] {
  const rail = supplyEnd(subject, parts) ?? railEnd(subject, subject.build.board.logicRail);
  const value = nearest(subject.build.stock.resistors, wanted);
  const ends = pins.flatMap((pin) => viewOf(subject, pin)?.net.terminals[0] ?? []);
  if (ends.length < pins.length || rail === undefined || value === undefined) return [];
  const first = Number(nextName(subject, 'R').slice(1));
  const steps = ends.flatMap(({ part, terminal }, index): Step[] => {
    const id = `R${first + index}`;
    return [
      (text, file) => insertPart(text, id, { kind: 'resistor', value: ohmsText(value) }, file),
      (text, file) => insertWire(text, { path: [rail, id, `${part}.${terminal}`] }, file),
    ];
  });
  const title = `Declare a ${ohmsText(value)} pull-up resistor on ${listWords(pins)}`;
  return [{ title, trust: 'ask', edits: draftManifest(subject, steps) }];
}

function nearest(stock: readonly number[], wanted: number): number | undefined {
  const usable = stock.filter((ohms) => ohms >= 2200 && ohms <= 10_000);
  return usable.sort((a, b) => Math.abs(Math.log(a / wanted)) - Math.abs(Math.log(b / wanted)))[0];
}

/** The plus of the first part, where that is on a rail: the bus has to stay within what the part is fed with. */
function supplyEnd(subject: Subject, parts: readonly string[]): string | undefined {
  for (const id of parts) {
    const plus = subject.build.parts
      .find((part) => part.id === id)
      ?.terminals.find((terminal) => terminal.polarity === '+' && terminal.id === '+');
    const wired = subject.build.nets.find(({ terminals }) =>
      terminals.some((end) => end.part === id && end.terminal === plus?.id),
    );
    if (plus && wired && subject.rails[wired.id] !== undefined) return `${id}.${plus.id}`;
  }
  return undefined;
}
