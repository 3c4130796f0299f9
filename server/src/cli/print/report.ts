/** A report in the format that was asked for. */
import { resolve } from 'node:path';
import { createTextReader } from '../../files';
import { rules } from '../../rules/generated/registry';
import type { Report } from '../check/report';
import { styleOf } from '../deliver';
import type { Given, Surroundings } from '../spec';
import { printAnnotations } from './annotations';
import { printJson } from './json';
import { printJunit } from './junit';
import { LineIndex } from './lines';
import { printSarif } from './sarif';
import { type LinesOf, printText } from './text';

/** The formats, the default first. */
export const REPORT_FORMATS = ['text', 'json', 'sarif', 'junit', 'annotations'] as const;

/** Files whose lines are kept at a time: a finding and what belongs to it lie in two or three. */
const KEPT = 8;

/** Prints a report. */
export function printReport(report: Report, format: string, given: Given, here: Surroundings): string {
  switch (format) {
    case 'json':
      return printJson(report);
    case 'sarif':
      return printSarif(report, rules);
    case 'junit':
      return printJunit(report);
    case 'annotations':
      return printAnnotations(report);
    default:
      return printText(report, readLines(here.base), styleOf(given, here));
  }
}

/** Reads lines from disk, for the excerpts. */
function readLines(base: string): LinesOf {
  const kept = new Map<string, LineIndex | undefined>();
  return (file) => {
    if (!kept.has(file)) {
      const read = createTextReader().read(resolve(base, file));
      const oldest = kept.keys().next();
      if (kept.size >= KEPT && !oldest.done) {
        kept.delete(oldest.value);
      }
      kept.set(file, read.ok ? new LineIndex(read.text) : undefined);
    }
    return kept.get(file);
  };
}
