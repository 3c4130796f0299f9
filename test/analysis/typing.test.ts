/** While a line is being typed, nothing may be told that is only so because the line is not finished. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type Analyser, createAnalyser } from '../../server/src/analysis';
import { loadLibrary } from '../../server/src/files';
import { createSketchParser, type ParsedFile, type SketchParser } from '../../server/src/sketch';
import { root } from '../fixture/bench';
import { bodyLines, type TypingBuild, topLines, typingBuilds } from './typing-builds';

const library = loadLibrary(`${root}/hardware-schemas`);
let parser: SketchParser;
beforeAll(async () => {
  parser = await createSketchParser();
});

/** One build in one editor: every state of the text goes through the same parser and analyser. */
class Desk {
  private readonly analyser: Analyser;
  private parsed: ParsedFile;
  /** End of what stands in place of the text from `start` on. */
  private typedEnd: number | undefined;

  constructor(private readonly build: TypingBuild) {
    this.analyser = createAnalyser(library, (path) => build.beside?.[path]);
    this.parsed = parser.parse('sketch.ino', build.sketch);
  }

  /** What is told of the sketch with `line` in place of what stands from `start` to `end`. */
  told(start: number, end: number, line: string): string[] {
    const { sketch, manifest } = this.build;
    const text = sketch.slice(0, start) + line + sketch.slice(end);
    const change = { start, end: this.typedEnd ?? end, text: line };
    this.parsed = parser.reparse(this.parsed, text, [change]);
    this.typedEnd = start + line.length;
    const { findings, faults } = this.analyser.analyse({
      sources: [this.parsed],
      manifest: { file: 'hardware.jsonc', text: manifest },
    });
    expect(faults).toEqual([]);
    return findings.filter(({ rule }) => rule !== 'sketch-limit').map(({ key }) => key);
  }
}

/** Types `line` into the sketch, character by character; gives what was told on the way. */
function typed(desk: Desk, at: number, before: string, line: string): string[] {
  const told: string[] = [];
  for (let length = 1; length <= line.length; length += 1) {
    const part = line.slice(0, length);
    for (const key of desk.told(at, at, before + part)) told.push(`${JSON.stringify(part)}: ${key}`);
  }
  return told;
}

/** Place behind the only occurrence of `text`. */
function behind(sketch: string, text: string): number {
  const at = sketch.indexOf(text);
  expect(at, text).toBeGreaterThanOrEqual(0);
  return at + text.length;
}

/** White space of the line that is typed after a place: that of the line below, or above where a block ends. */
function indentAfter(sketch: string, at: number): string {
  const below = /^[^\n]*\n([ \t]*)(?=[^\s}])/.exec(sketch.slice(at))?.[1];
  return below ?? /(?:^|\n)([ \t]*)[^\n]*$/.exec(sketch.slice(0, at))?.[1] ?? '';
}

describe.each(Object.entries(typingBuilds))('%s', (_, build) => {
  const { sketch } = build;

  it('has nothing to tell', () => {
    expect(new Desk(build).told(0, 0, '')).toEqual([]);
  });

  // Every line is typed in every second place: all of them in all places take too long for every run.
  it.each(build.inside.map((place, index) => ({ place, index })))(
    'typed in a body, behind $place',
    ({ place, index }) => {
      const desk = new Desk(build);
      const at = behind(sketch, place);
      const before = `\n${indentAfter(sketch, at)}`;
      const lines = bodyLines.filter((_line, nth) => nth % 2 === index % 2);
      const told = lines.flatMap((line) => typed(desk, at, before, line));
      expect(told).toEqual([]);
    },
  );

  it.each(build.outside.map((place, index) => ({ place, index })))(
    'typed at the top, behind $place',
    ({ place, index }) => {
      const desk = new Desk(build);
      const at = behind(sketch, place);
      const lines = topLines.filter((_line, nth) => nth % 2 === index % 2);
      const told = lines.flatMap((line) =>
        place === '' ? typed(desk, 0, '', line) : typed(desk, at, '\n', line),
      );
      expect(told).toEqual([]);
    },
  );

  it.each(build.lines)('%j deleted from its end, and typed again', (line) => {
    const desk = new Desk(build);
    const end = behind(sketch, line);
    const told: string[] = [];
    for (let left = line.length; left >= 0; left -= 1) {
      const part = line.slice(0, left);
      for (const key of desk.told(end - line.length, end, part)) told.push(`${JSON.stringify(part)}: ${key}`);
    }
    expect(told).toEqual([]);
  });
});
