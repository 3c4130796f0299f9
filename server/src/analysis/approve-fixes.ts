/**
 * No repair is offered that does not cure. A fix of the manifest is tried on its text: the finding must be gone, and no
 * new error or warning may come. Fixes of the sketch would need the parser, so those stand on their examples alone.
 */
import { applyEdits } from '../base/span';
import { readManifest } from '../hardware';
import { rules } from '../rules/generated/registry';
import type { Subject } from '../rules/subject';
import { findDoubtful } from './doubtful';
import type { OpenLibrary } from './library';
import type { Solve } from './points';
import { type Approve, runRules } from './run-rules';
import { joinSubject } from './subject';

export function approveFixes(subject: Subject, library: OpenLibrary, solve: Solve): Approve {
  let known: { readonly keys: ReadonlySet<string>; readonly words: ReadonlySet<string> } | undefined;
  const before = () => {
    if (!known) {
      const { findings } = runRules(rules, subject);
      known = {
        keys: new Set(findings.map((finding) => finding.key)),
        words: new Set(findings.map((finding) => finding.rule + finding.message)),
      };
    }
    return known;
  };
  return (fix, rule, key) => {
    const { file } = subject.build;
    // A slip in the manifest hides whatever stands behind it: what comes to light is no fault of the repair.
    if (rule.needs === 'reading' || fix.edits.some((edit) => edit.file !== file)) return true;
    const text = applyEdits(subject.texts[file] ?? '', fix.edits);
    const { value: build, problems } = readManifest(file, text, library.hardware);
    if (!build) return false;
    const after = joinSubject({
      facts: subject.facts,
      build,
      texts: { ...subject.texts, [file]: text },
      problems: [...problems, ...subject.facts.problems],
      doubtful: findDoubtful(build, text, problems),
      libraries: subject.libraries,
      partKinds: library.hardware.partKinds,
      solve,
    });
    const { keys, words } = before();
    return runRules(rules, after).findings.every((finding) => {
      if (finding.key === key) return false;
      const weighs = finding.severity === 'error' || finding.severity === 'warning';
      return !weighs || keys.has(finding.key) || words.has(finding.rule + finding.message);
    });
  };
}
