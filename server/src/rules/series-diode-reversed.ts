/** Say in a sentence what goes wrong on the bench. */
import { relatedOf } from './support/views';
import { defineRule } from './rule';

interface Detail {
  readonly pin: string;
}

export default defineRule<Detail>({
  id: 'series-diode-reversed',
  title: 'One sentence that says what is wrong.',
  why: 'What it costs on the bench.',
  source: 'document and clause, or "common practice"',
  severity: 'hint',
  maturity: 'new',
  needs: 'hardware',
  *check(subject) {
    for (const view of subject.pins) {
      const use = view.uses[0];
      if (!use) continue;
      yield { identity: view.pin.id, span: use.span, related: relatedOf(view, use), detail: { pin: view.pin.id } };
    }
  },
  message: ({ pin }) => `${pin} …`,
  examples: [],
});
