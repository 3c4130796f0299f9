/**
 * A parser and an analysis whose every step is written down. The parser refuses changes that do not lead to the text and
 * trees that are freed twice; the analysis finds the word BAD.
 */
import type { Analyser, ProjectInput, Snapshot } from '../../server/src/analysis';
import type { Finding, Fix } from '../../server/src/base/finding';
import type { ParsedFile, SketchParser, TextChange } from '../../server/src/sketch';

export interface Ledger {
  /** Inputs of all analyses. */
  readonly inputs: ProjectInput[];
  /** Files parsed from nothing, and files whose tree was re-used. */
  readonly parsed: string[];
  readonly reparsed: string[];
  /** Trees that exist now. */
  trees: number;
  /** Thrown by the next analyses while it is set. */
  fault: Error | undefined;
  /** Rules that throw, as the analysis tells them. */
  ruleFaults: Snapshot['faults'];
}

export function parserOf(ledger: Ledger): SketchParser {
  const make = (file: string, text: string): ParsedFile => {
    let alive = true;
    ledger.trees += 1;
    // The analysis below reads the text alone.
    const form = {} as ParsedFile['form'];
    const dispose = () => {
      if (!alive) {
        throw new Error(`the tree of ${file} was freed twice`);
      }
      alive = false;
      ledger.trees -= 1;
    };
    return { file, text, form, dispose };
  };
  return {
    engine: 'wasm',
    parse(file, text) {
      ledger.parsed.push(file);
      return make(file, text);
    },
    reparse(previous, text, changes) {
      ledger.reparsed.push(previous.file);
      const replayed = changes.reduce(applyChange, previous.text);
      if (replayed !== text) {
        throw new Error(
          `the changes lead to ${JSON.stringify(replayed)}, the text is ${JSON.stringify(text)}`,
        );
      }
      previous.dispose();
      return make(previous.file, text);
    },
  };
}

function applyChange(text: string, change: TextChange): string {
  return text.slice(0, change.start) + change.text + text.slice(change.end);
}

/** Finds every BAD of the sources and of the manifest. The fix takes it out and notes that in the manifest. */
export function analyserOf(ledger: Ledger): Analyser {
  return {
    draft: () => ({ ok: false, why: 'nothing is drafted here', boards: [] }),
    analyse(input): Snapshot {
      if (ledger.fault !== undefined) {
        throw ledger.fault;
      }
      ledger.inputs.push(input);
      const manifest = input.manifest;
      const files = [...input.sources, ...(manifest === undefined ? [] : [manifest])];
      const found = files.flatMap(({ file, text }) =>
        [...text.matchAll(/BAD(\d*)/g)].map((match) => ({ file, start: match.index, word: match[0] })),
      );
      const findings = found.map(({ file, start, word }): Finding => {
        const span = { file, start, end: start + word.length };
        const related =
          manifest === undefined
            ? []
            : [{ message: 'Declared here', span: { file: manifest.file, start: 0, end: 1 } }];
        return {
          rule: 'bad-word',
          key: `bad-word:${word}`,
          severity: 'warning',
          message: `${word} is bad`,
          span,
          related,
          fixes: fixesOf(word, span, manifest?.file ?? '').map(({ title, trust }) => ({ title, trust })),
        };
      });
      return {
        findings,
        faults: ledger.ruleFaults,
        facts: { uses: [], pinNames: [], problems: [] },
        workings: () => undefined,
        hover: (file, offset) => {
          const finding = findings.find(
            ({ span }) => span.file === file && span.start <= offset && offset <= span.end,
          );
          return (
            finding && { span: finding.span, markdown: `**${finding.message}**, see \`hardware.jsonc\`` }
          );
        },
        definition: (file) =>
          manifest === undefined
            ? []
            : [
                { file: manifest.file, start: 0, end: 1 },
                { file, start: 0, end: 0 },
              ],
        fixes: (key) =>
          findings
            .filter((finding) => finding.key === key)
            .flatMap(({ span }) => fixesOf(key.slice('bad-word:'.length), span, manifest?.file ?? '')),
      };
    },
  };
}

function fixesOf(word: string, span: Finding['span'], manifest: string): readonly Fix[] {
  return [
    { title: `Solder ${word} anew`, trust: 'ask', edits: [{ ...span, text: 'NEW' }] },
    {
      title: `Take ${word} out`,
      trust: 'safe',
      edits: [
        { ...span, text: '' },
        { file: manifest, start: 0, end: 0, text: `// no ${word}\n` },
      ],
    },
  ];
}
