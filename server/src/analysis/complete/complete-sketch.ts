/** Pins where a call of the sketch wants one: the sketch's own names first, then every pin with the part on it. */
import { numbersOf } from '../../base/build';
import type { Subject } from '../../rules/subject';
import { isSignal } from '../../rules/support/views';
import { type Completion, pinWords } from './complete';

const wantsPin =
  /\b(?:pinMode|digitalWrite|digitalRead|analogRead|analogWrite|tone|noTone|attach|digitalPinToInterrupt|pulseIn)\s*\(\s*(\w*)$/;

export function completeSketch(subject: Subject, file: string, offset: number): readonly Completion[] {
  const line = /[^\r\n]*$/.exec((subject.texts[file] ?? '').slice(0, offset))?.[0] ?? '';
  const typed = wantsPin.exec(line)?.[1];
  if (typed === undefined) return [];
  const item = (label: string, detail: string): Completion => ({
    label,
    detail,
    kind: 'pin',
    text: label,
    snippet: false,
    start: offset - typed.length,
    end: offset,
  });
  const views = subject.pins.filter(isSignal);
  const names = subject.facts.pinNames.flatMap(({ name, pins }) => {
    const view =
      pins.length === 1 ? views.find(({ pin }) => numbersOf(pin).includes(pins[0] ?? -1)) : undefined;
    return view ? [item(name, `${view.pin.id}, ${pinWords(view.pin, subject)}`)] : [];
  });
  const pins = views.map(({ pin }) => {
    const label = pin.adc !== undefined && /^A\d+$/.test(pin.id) ? pin.id : String(pin.number);
    return item(label, `${pin.id}, ${pinWords(pin, subject)}`);
  });
  return [...names, ...pins];
}
