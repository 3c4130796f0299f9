/** What a library's object in the sketch is and which pins it has, in Markdown. */
import { numbersOf } from '../../base/build';
import type { Subject } from '../../rules/subject';
import type { Hover } from '../analyser';
import { plain } from '../words';

export function hoverObject(subject: Subject, file: string, offset: number): Hover | undefined {
  const text = subject.texts[file] ?? '';
  const before = /\w*$/.exec(text.slice(0, offset))?.[0] ?? '';
  const behind = /^\w*/.exec(text.slice(offset))?.[0] ?? '';
  const name = before + behind;
  if (!/^[A-Za-z_]/.test(name)) return undefined;
  const uses = subject.facts.uses.filter(({ call, callSpan }) => {
    const owner = call.split('.')[0] ?? '';
    const written =
      subject.texts[callSpan.file]?.slice(callSpan.start, callSpan.start + name.length + 1) ?? '';
    const isObject =
      call.includes('.') ||
      subject.libraries.some(({ classes }) => classes.some((each) => each.name === owner));
    return isObject && (owner === name || new RegExp(`^${name}\\W`).test(written));
  });
  const [first] = uses;
  if (!first) return undefined;
  const className = first.call.split('.')[0] ?? '';
  const library = subject.libraries.find(({ classes }) =>
    classes.some(
      (each) =>
        each.name === className ||
        className.endsWith(each.name.replace(/^\*/, '')) ||
        each.objects?.includes(className) === true,
    ),
  );
  const numbers = [...new Set(uses.flatMap(({ pins }) => (pins.kind === 'known' ? pins.values : [])))];
  const rows = numbers.flatMap((number) => {
    const view = subject.pins.find(({ pin }) => numbersOf(pin).includes(number));
    if (!view) return [];
    const parts = [...new Set(view.net.terminals.map(({ part, terminal }) => `${part}.${terminal}`))];
    const terminal = uses.find(
      ({ pins, terminal: own }) => own && pins.kind === 'known' && pins.values.includes(number),
    )?.terminal;
    const meant = terminal === undefined ? '' : ` (${terminal})`;
    return [
      `- ${plain(`${view.pin.id}${meant}: ${parts.length > 0 ? parts.join(', ') : 'nothing is wired to it'}`)}`,
    ];
  });
  const head = `**${plain(name)}** · ${plain(name === className ? '' : `an object of ${className}, `)}${plain(library?.headers?.[0] ?? 'of the core')}`;
  const end = offset + behind.length;
  return {
    span: { file, start: end - name.length, end },
    markdown: [head, rows.join('\n')].filter(Boolean).join('\n\n'),
  };
}
