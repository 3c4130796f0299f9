/** Keys of the manifest's `severity` that are no rule: a silenced finding that comes back has most often a slip here. */
import type { Build } from '../base/build';
import type { Problem } from '../base/read';
import { severitySpan, unknownName } from '../hardware';
import { rules } from '../rules/generated/registry';

const ids: readonly string[] = rules.map((rule) => rule.id);

/** A problem for each severity that is set for no rule. */
export function unknownRules(build: Build, text: string): readonly Problem[] {
  return Object.keys(build.severity).flatMap((id) => {
    const span = ids.includes(id) ? undefined : severitySpan(build.file, text, id);
    return span
      ? [unknownName('unknown-rule', `There is no rule ${JSON.stringify(id)}.`, span, id, ids)]
      : [];
  });
}
