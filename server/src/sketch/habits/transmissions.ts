/** What is written between beginTransmission and endTransmission, as far as the form of one body tells it. */
import type { Expression, Item, Place } from '../form/ast';

type CallExpression = Extract<Expression, { kind: 'call' }>;
type MemberExpression = Extract<Expression, { kind: 'member' }>;
type ForItem = Extract<Item, { kind: 'for' }>;

export interface WriteNote {
  /** Bytes of one call. */
  readonly bytes: number | Expression;
  /** Loops around it, inside of the transmission. */
  readonly loops: readonly ForItem[];
}

export interface TransmissionNote extends Place {
  readonly name: string;
  readonly writes: readonly WriteNote[];
}

interface Open extends Place {
  readonly name: string;
  readonly writes: WriteNote[];
}

export class TransmissionNotes {
  readonly found: TransmissionNote[] = [];
  private open: Open | undefined;

  meet(callee: MemberExpression, call: CallExpression, above: readonly Item[]): void {
    const name = callee.base.kind === 'name' ? callee.base.name : undefined;
    if (name === undefined) return;
    if (callee.name === 'beginTransmission') {
      // One that was never ended, or that begins again in a loop, is nothing to count.
      this.open = { name, writes: [], start: call.start, end: call.end };
      return;
    }
    const { open } = this;
    if (open?.name !== name) return;
    const inside = above.filter(
      (item) => item.start > open.start && item.kind !== 'block' && item.kind !== 'expression',
    );
    if (callee.name === 'endTransmission') {
      if (inside.length === 0 && open.writes.length > 0) this.found.push(open);
      this.open = undefined;
    } else if (/^(?:write|print)$/.test(callee.name)) {
      const loops = inside.filter((item): item is ForItem => item.kind === 'for');
      // What is only perhaps written does not count.
      const bytes = loops.length === inside.length ? bytesOf(callee.name, call.arguments) : 0;
      if (bytes !== 0) open.writes.push({ bytes, loops });
    }
  }
}

function bytesOf(name: string, [first, second]: readonly Expression[]): number | Expression {
  if (first === undefined) return 0;
  if (second !== undefined) return name === 'write' ? second : 0;
  if (first.kind === 'text') return first.length;
  return name === 'write' ? 1 : 0;
}
