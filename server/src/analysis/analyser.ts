/**
 * The façade over everything below: texts go in, a snapshot comes out that answers an editor's questions. Synchronous
 * and without files, clocks or protocol. What it keeps between calls is the last good build of each manifest and the
 * solved operating points.
 */
import type { Build } from '../base/build';
import type { Finding, Fix } from '../base/finding';
import type { SketchFacts } from '../base/pin-use';
import type { Problem, Read } from '../base/read';
import type { Span } from '../base/span';
import { solveNetwork } from '../circuit';
import { describeKey, manifestPathAt, readManifest } from '../hardware';
import { rules } from '../rules/generated/registry';
import type { Subject } from '../rules/subject';
import { type ParsedFile, readSketch } from '../sketch';
import { approveFixes } from './approve-fixes';
import { type Asker, makeAsker } from './complete/ask';
import { hoverObject } from './complete/hover-object';
import { findDoubtful } from './doubtful';
import { type Draft, type DraftInput, draftManifest } from './draft/draft';
import { describePart } from './hover-part';
import { describePin, describeUse } from './hover-pin';
import { type LibraryTexts, type OpenLibrary, openLibrary } from './library';
import { heedRemarks } from './ok-remarks';
import { findDefinition, findPlace } from './places';
import { rememberPoints, type Solve } from './points';
import { type RuleFault, runRules } from './run-rules';
import { joinSubject, readingSubject } from './subject';
import { unknownRules } from './unknown-rules';
import { plain } from './words';
import { collectWorkings, type Workings } from './workings';

/** One sketch folder: the manifest and the sources in the order the build joins them, the main tab first. */
export interface ProjectInput {
  readonly manifest?: { readonly file: string; readonly text: string };
  readonly sources: readonly Pick<ParsedFile, 'file' | 'text' | 'form'>[];
  /** How serious rules are where the manifest says nothing of them. */
  readonly severity?: Build['severity'];
}

export interface Hover {
  readonly span: Span;
  readonly markdown: string;
}

/** What was known at one moment. Offsets are those of the texts that went in. */
export interface Snapshot {
  /** Ordered by file and place. */
  readonly findings: readonly Finding[];
  /** Rules that threw; the others' findings are there all the same. */
  readonly faults: readonly RuleFault[];
  readonly facts: SketchFacts;
  /** Absent where no build could be read. */
  readonly build?: Build;
  hover(file: string, offset: number): Hover | undefined;
  definition(file: string, offset: number): readonly Span[];
  /** The repairs of a finding, by its key; empty where it is gone. */
  fixes(findingKey: string): readonly Fix[];
  /** The figures behind the findings, for papers; undefined where no build could be read. */
  workings(): Workings | undefined;
  /** Completion, outline and the like; absent where there is no manifest. */
  readonly ask?: Asker;
}

export interface Analyser {
  analyse(input: ProjectInput): Snapshot;
  /** A manifest for a bare sketch, or what is still missing in one. */
  draft(input: DraftInput): Draft;
}

/** Manifests whose last reading and last good build are kept. */
const keptManifests = 64;

const noFacts: SketchFacts = { uses: [], pinNames: [], problems: [] };

interface Kept {
  readonly text: string;
  /** Board files beside the manifest that went into the reading, with their texts of that moment. */
  readonly beside: ReadonlyMap<string, string | undefined>;
  readonly read: Read<Build | undefined>;
  /** The last build that came out of a text without syntax errors, with that text. */
  readonly good?: { readonly build: Build; readonly text: string };
}

/** @param readText gives the text of a board file beside a manifest, or undefined where there is none. */
export function createAnalyser(
  texts: LibraryTexts,
  readText: (path: string) => string | undefined,
): Analyser {
  let beside = new Map<string, string | undefined>();
  const library = openLibrary(texts, (path) => {
    const text = readText(path);
    beside.set(path, text);
    return text;
  });
  const solve = rememberPoints(solveNetwork);
  const kept = new Map<string, Kept>();

  const read = (file: string, text: string): Kept => {
    const before = kept.get(file);
    if (before?.text === text && [...before.beside].every(([path, then]) => readText(path) === then))
      return before;
    beside = new Map();
    const fresh = readManifest(file, text, library.hardware);
    const broken = fresh.problems.some((problem) => problem.code.startsWith('syntax'));
    const good = fresh.value && !broken ? { build: fresh.value, text } : before?.good;
    const now: Kept = { text, beside, read: fresh, ...(good && { good }) };
    kept.delete(file);
    kept.set(file, now);
    if (kept.size > keptManifests) {
      const oldest = kept.keys().next().value;
      if (oldest !== undefined) kept.delete(oldest);
    }
    return now;
  };

  return {
    draft: (input) => draftManifest(library, input),
    analyse({ manifest, sources, severity }) {
      if (!manifest) return emptySnapshot;
      const { read: fresh, good } = read(manifest.file, manifest.text);
      // A half-typed manifest: the sketch is still checked against the last whole one, whose places no longer count.
      const stale = good !== undefined && good.text !== manifest.text;
      const build = good?.build ?? fresh.value;
      if (!build) {
        const ask = makeAsker(library, manifest, undefined, true);
        return { ...snapshotOfReading(manifest.file, fresh.problems), ask };
      }
      const facts = readSketch(sources, build.board.platform, library.calls);
      const sketchTexts = sources.map(({ file, text }) => [file, text] as const);
      const wished =
        severity === undefined ? build : { ...build, severity: { ...severity, ...build.severity } };
      const subject = joinSubject({
        facts,
        build: wished,
        texts: Object.fromEntries([...sketchTexts, [manifest.file, good?.text ?? manifest.text]]),
        problems: [...fresh.problems, ...unknownRules(build, good?.text ?? manifest.text), ...facts.problems],
        doubtful: findDoubtful(build, manifest.text, fresh.problems),
        libraries: library.calls,
        partKinds: library.hardware.partKinds,
        solve,
      });
      const snapshot = stale
        ? snapshotOfStale(subject, library, fresh.problems)
        : snapshotOf(subject, library, solve);
      return { ...snapshot, ask: makeAsker(library, manifest, subject, stale) };
    },
  };
}

const emptySnapshot: Snapshot = {
  findings: [],
  faults: [],
  facts: noFacts,
  hover: () => undefined,
  definition: () => [],
  fixes: () => [],
  workings: () => undefined,
};

/** No build at all: only what the readers found. */
function snapshotOfReading(file: string, problems: readonly Problem[]): Snapshot {
  const reading = rules.filter((rule) => rule.needs === 'reading');
  const results = runRules(reading, readingSubject(file, problems));
  return { ...emptySnapshot, findings: results.findings, faults: results.faults, fixes: results.fixesOf };
}

function snapshotOf(subject: Subject, library: OpenLibrary, solve: Solve = solveNetwork): Snapshot {
  const results = runRules(rules, subject, approveFixes(subject, library, solve));
  return {
    findings: heedRemarks(subject, results.findings),
    faults: results.faults,
    facts: subject.facts,
    build: subject.build,
    hover: (file, offset) => hover(subject, library, file, offset),
    definition: (file, offset) => findDefinition(subject, file, offset),
    fixes: results.fixesOf,
    workings: () => collectWorkings(subject),
  };
}

/** The sketch's findings from the last good build; of the manifest only what the readers say of its present text. */
function snapshotOfStale(subject: Subject, library: OpenLibrary, problems: readonly Problem[]): Snapshot {
  const { file } = subject.build;
  const reading = snapshotOfReading(file, problems);
  const whole = snapshotOf(subject, library);
  const inSketch = whole.findings
    .filter((finding) => finding.span.file !== file)
    .map((finding) => ({
      ...finding,
      related: finding.related.filter((place) => place.span.file !== file),
      fixes: [],
    }));
  return {
    ...whole,
    findings: [...reading.findings, ...inSketch],
    hover: (at, offset) => (at === file ? undefined : whole.hover(at, offset)),
    definition: (at, offset) =>
      whole.definition(at, offset).filter((span) => at !== file && span.file !== file),
    fixes: reading.fixes,
  };
}

function hover(subject: Subject, library: OpenLibrary, file: string, offset: number): Hover | undefined {
  const place = findPlace(subject, file, offset);
  if (!place) {
    return file === subject.build.file
      ? hoverKey(subject, library, offset)
      : hoverObject(subject, file, offset);
  }
  const { span } = place;
  switch (place.kind) {
    case 'unresolved':
      return { span, markdown: describeUse(place.use) };
    case 'part':
      return { span, markdown: describePart(subject, place.part) };
    case 'pins': {
      const how = place.use ? describeUse(place.use) : '';
      // An argument in a loop can mean many pins; past a handful nobody reads on.
      const shown = place.views.slice(0, 4).map((view) => describePin(subject, view));
      const more = place.views.length - shown.length;
      const missing = place.views.length === 0 ? plain(`${subject.build.board.title} has no such pin.`) : '';
      const rest = more > 0 ? `and ${more} more pins` : '';
      return { span, markdown: [how, ...shown, rest, missing].filter((text) => text !== '').join('\n\n') };
    }
  }
}

function hoverKey(subject: Subject, library: OpenLibrary, offset: number): Hover | undefined {
  const { file } = subject.build;
  const place = manifestPathAt(subject.texts[file] ?? '', offset);
  const part =
    place?.path[0] === 'parts' && subject.build.parts.find((candidate) => candidate.id === place.path[1]);
  const kind = part ? library.hardware.partKinds.get(part.kind) : undefined;
  const description = place?.isKey ? describeKey(place.path, kind) : undefined;
  if (!place || description === undefined) return undefined;
  return { span: { ...place.span, file }, markdown: plain(description) };
}
