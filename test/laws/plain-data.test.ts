/** What crosses a border is plain data: it survives a round trip through JSON. */
import { expect, it } from 'vitest';
import { rules } from '../../server/src/rules/generated/registry';
import { openTestBench } from '../fixture/bench';
import { readFixture } from '../fixture/read-fixture';

it('passes facts, builds, findings and fixes through JSON unchanged', async () => {
  const bench = await openTestBench();
  let findings = 0;
  for (const rule of rules) {
    for (const example of rule.examples) {
      const snapshot = bench.analyse(readFixture(example.build).files);
      const fixes = snapshot.findings.flatMap((finding) => snapshot.fixes(finding.key));
      const data = { facts: snapshot.facts, build: snapshot.build, findings: snapshot.findings, fixes };
      expect(JSON.parse(JSON.stringify(data))).toEqual(data);
      findings += snapshot.findings.length;
    }
  }
  expect(findings).toBeGreaterThan(10);
});
