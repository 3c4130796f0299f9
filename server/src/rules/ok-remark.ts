/** A remark that lets a finding be, without a reason or without a finding. */
import { findOkRemarks } from '../base/ok-remark';
import { defineRule } from './rule';

interface Detail {
  readonly rule: string;
}

export default defineRule<Detail>({
  id: 'ok-remark',
  title: 'A remark that lets a finding be gives no reason, or there is no such finding.',
  why: 'Without its reason nobody can tell later whether the remark still holds; one that is left over hides the next fault.',
  source: 'common practice',
  severity: 'warning',
  maturity: 'new',
  needs: 'sketch',
  // Remarks without a finding are told by the analysis, which alone sees what they let be.
  *check(subject) {
    for (const [file, text] of Object.entries(subject.texts)) {
      for (const { rule, because, span } of findOkRemarks(file, text)) {
        if (because === undefined) yield { identity: `${rule}@${file}`, span, detail: { rule } };
      }
    }
  },
  message: ({ rule }) =>
    rule === ''
      ? 'This remark names no rule and no reason: write "wiretrue: ok RULE because …".'
      : `This remark gives no reason: write "wiretrue: ok ${rule} because …".`,
  examples: [
    {
      about: 'no reason is given',
      build: `
//- sketch.ino board:nano-v3
void setup() {} // wiretrue: ok unwired-pin
//                 ^^^^^^^^^^^^^^^^^^^^^^^^ ok-remark: This remark gives no reason
void loop() {}
`,
    },
    {
      about: 'nothing is found there',
      build: `
//- sketch.ino board:nano-v3
// wiretrue: ok unwired-pin because the lamp comes later
// ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ ok-remark: unwired-pin finds nothing here
void setup() {}
void loop() {}
`,
    },
    {
      about: 'with its reason it lets the finding be',
      build: `
//- sketch.ino board:nano-v3
void setup() {
  // wiretrue: ok unwired-pin because the lamp comes later
  pinMode(7, OUTPUT);
}
void loop() {}
`,
    },
  ],
});
