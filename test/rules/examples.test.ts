/** Every rule's examples are its tests: found as marked, silent where unmarked, fixed as shown. */
import { beforeAll, describe, it } from 'vitest';
import { rules } from '../../server/src/rules/generated/registry';
import { openTestBench, type TestBench } from '../fixture/bench';
import { checkExample } from '../fixture/check-example';

let bench: TestBench;
beforeAll(async () => {
  bench = await openTestBench();
});

describe.each(rules.map((rule) => [rule.id, rule] as const))('%s', (_, rule) => {
  it.each(rule.examples.map((example) => [example.about, example] as const))('%s', (_about, example) => {
    checkExample(bench, example);
  });
});
