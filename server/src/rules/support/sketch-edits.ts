/** Edits of the sketch that fixes are made of. */

import type { PinUse } from '../../base/pin-use';
import type { Edit } from '../../base/span';
import type { PinView, Subject } from '../subject';

/** The pinMode calls of a pin. */
export function modeCalls(view: PinView): readonly PinUse[] {
  return view.uses.filter((use) => use.action === 'mode');
}

/**
 * Puts a pin into a mode: the argument of its pinMode calls is replaced, or, where there is none, a call is put at the
 * beginning of setup(). Undefined where neither place is there.
 */
export function setMode(subject: Subject, view: PinView, mode: string): readonly Edit[] | undefined {
  // A mode set through a register, or by a call of another name, is not ours to rewrite.
  if (view.uses.some((use) => use.action === 'mode' && use.call !== 'pinMode')) return undefined;
  const calls = modeCalls(view);
  if (calls.length > 0) {
    const spans = new Map<string, Edit>();
    for (const { valueSpan, pins } of calls) {
      // A call that sets several pins at once cannot be changed for one of them.
      if (!valueSpan || pins.kind !== 'known' || pins.values.length !== 1) return undefined;
      spans.set(`${valueSpan.file}:${valueSpan.start}`, { ...valueSpan, text: mode });
    }
    return [...spans.values()];
  }
  const { setup } = subject.facts;
  const use = view.uses[0];
  if (!setup || !use) return undefined;
  const pin =
    use.pins.kind === 'known' && use.pins.values.length === 1 ? use.pinText : String(view.pin.number);
  const { file, offset, indent, newline } = setup;
  const text = subject.texts[file] ?? '';
  // A body that opens and goes on in one line stays in one line.
  const alone = /^[ \t]*(\r\n|\r|\n|\/\/)/.test(text.slice(offset));
  return [
    {
      file,
      start: offset,
      end: offset,
      text: alone
        ? `${newline}${indent}pinMode(${pin}, ${mode});`
        : ` pinMode(${pin}, ${mode});${text[offset] === '}' ? ' ' : ''}`,
    },
  ];
}
