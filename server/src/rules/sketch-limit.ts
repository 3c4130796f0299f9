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
      // What was not read at all may hold anything; a loop known roughly is still known.
      const severity = unread.has(problem.code) ? 'warning' : 'information';
      yield {
        identity: `${problem.code}@${problem.span.start}`,
        span: problem.span,
        severity,
        detail: problem,
      };
    }
  },
  message: ({ message }) => message,
  examples: [
    {
      about: 'a loop of a hundred thousand rounds that does something late',
      build: `
//- sketch.ino board:nano-v3
void setup() {
  for (long i = 0; i < 100000; i++) {
//                 ^^^^^^^^^^ sketch-limit: This loop takes too many rounds
    if (i == 90000) pinMode(LED_BUILTIN, OUTPUT);
  }
}
void loop() {}
`,
    },
    {
      about: 'a loop over a handful of pins',
      build: `
//- sketch.ino board:nano-v3
void setup() {
  for (int i = 0; i < 4; i++) pinMode(LED_BUILTIN, OUTPUT);
}
void loop() {}
`,
    },
  ],
});

/** Limits behind which nothing is seen. */
const unread: ReadonlySet<string> = new Set(['file-too-long', 'analysis-stopped', 'not-text']);
