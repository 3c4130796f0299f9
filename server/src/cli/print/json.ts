/** A report for programs, and back again. */
import type { Report } from '../check/report';

/** One JSON object and a line end. */
export function printJson(report: Report): string {
  return `${JSON.stringify(report, undefined, 2)}\n`;
}

/** The report, or a phrase that goes behind the file's name and a colon. */
export type ReportRead =
  | { readonly ok: true; readonly report: Report }
  | { readonly ok: false; readonly why: string };

/** Reads what `check --format json` wrote. */
export function readReport(text: string): ReportRead {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return { ok: false, why: `is no JSON (${error instanceof Error ? error.message : String(error)})` };
  }
  if (!isObject(data) || typeof data.format !== 'number' || !isObject(data.tool)) {
    return { ok: false, why: 'is no report of wiretrue check --format json' };
  }
  if (data.format !== 1) {
    return { ok: false, why: `has format ${data.format}; this program knows format 1. Update the program` };
  }
  return isReport(data)
    ? { ok: true, report: data }
    : { ok: false, why: 'is a report with a piece missing; make it anew' };
}

/** As much as the printing relies on; the schema says all of it. */
function isReport(data: Record<string, unknown>): data is Record<string, unknown> & Report {
  const { tool, shard, sketches, findings, problems, notes, summary, baseline } = data;
  return (
    isObject(tool) &&
    isText(tool.name) &&
    isText(tool.version) &&
    (shard === undefined || isText(shard)) &&
    isListOf(sketches, isText) &&
    isListOf(notes, isText) &&
    isListOf(problems, (each) => isObject(each) && isText(each.path) && isText(each.why)) &&
    isListOf(findings, isFinding) &&
    isObject(summary) &&
    (baseline === undefined ||
      (isObject(baseline) && typeof baseline.known === 'number' && typeof baseline.gone === 'number'))
  );
}

function isFinding(each: unknown): boolean {
  return (
    isPlaced(each) &&
    [each.rule, each.key, each.sketch].every(isText) &&
    ['error', 'warning', 'information', 'hint'].some((severity) => severity === each.severity) &&
    isListOf(each.related, isPlaced) &&
    isListOf(each.fixes, isText) &&
    isListOf(each.ask, isText)
  );
}

function isPlaced(each: unknown): each is Record<string, unknown> {
  return (
    isObject(each) &&
    isText(each.message) &&
    isText(each.file) &&
    isObject(each.range) &&
    isPlace(each.range.start) &&
    isPlace(each.range.end)
  );
}

function isPlace(each: unknown): boolean {
  return isObject(each) && Number.isInteger(each.line) && Number.isInteger(each.character);
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

function isListOf(value: unknown, is: (each: unknown) => boolean): boolean {
  return Array.isArray(value) && value.every(is);
}
