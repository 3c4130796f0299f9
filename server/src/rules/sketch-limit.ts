/** Says where the sketch was not followed to its end, so that silence is not taken for a clean bill. */
import { defineRule } from './rule';

interface Detail {
  readonly message: string;
}

export default defineRule<Detail>({
  id: 'sketch-limit',
  title: 'A part of the sketch was not followed to its end.',
  why: 'What lies behind a limit is not checked. It is said so that silence is not taken for approval.',
  source: 'limits of the analysis, in server/src/sketch/README.md',
  severity: 'information',
  maturity: 'settled',
  needs: 'reading',
  *check(subject) {
    for (const problem of subject.facts.problems) {
      yield { identity: `${problem.code}@${problem.span.start}`, span: problem.span, detail: problem };
    }
  },
  message: ({ message }) => message,
  examples: [],
});
