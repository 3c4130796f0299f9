/**
 * A second editor as a second opinion: its own client opens the faulty example, and must see what the command line
 * prints, and be able to take a fix that edits the manifest.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../lsp/json-rpc';
import { requireOracle } from '../oracle/oracle';

interface Seen {
  readonly file: string;
  readonly line: number;
  readonly character: number;
  readonly endLine: number;
  readonly endCharacter: number;
  readonly severity: string;
  readonly rule: string;
  readonly message: string;
  readonly source: string;
}

interface Sitting {
  readonly failure?: string;
  readonly before: readonly Seen[];
  readonly after: readonly Seen[];
  readonly hover: { readonly contents: { readonly kind: string; readonly value: string } };
  readonly fixed: { readonly title: string; readonly rule: string };
}

interface Place {
  readonly line: number;
  readonly character: number;
}

/** What the command line's JSON has of a finding. */
interface Printed {
  readonly rule: string;
  readonly severity: string;
  readonly message: string;
  readonly file: string;
  readonly range: { readonly start: Place; readonly end: Place };
}

const present = spawnSync('nvim', ['--version']).status === 0;
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'wiretrue nvim-'));
  cpSync(join(root, 'hardware-schemas/examples/harbour-faulty'), folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function print(): readonly Printed[] {
  const cli = join(root, 'server/dist/cli.js');
  const { stdout, stderr } = spawnSync(process.execPath, [cli, 'check', '--format', 'json', '.'], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  return (JSON.parse(stdout) as { readonly findings: readonly Printed[] }).findings;
}

function sit(): Sitting {
  const output = join(folder, '.sitting.json');
  const { stdout, stderr } = spawnSync(
    'nvim',
    ['--headless', '-u', 'NONE', '-i', 'NONE', '-n', '-S', join(root, 'test/neovim/session.lua')],
    {
      encoding: 'utf8',
      timeout: 60_000,
      env: {
        ...process.env,
        XDG_STATE_HOME: join(folder, '.state'),
        XDG_CACHE_HOME: join(folder, '.cache'),
        NODE: process.execPath,
        SERVER: join(root, 'server/dist/server.js'),
        FOLDER: folder,
        FIX: 'resistor from stock into the wire of beacon',
        OUTPUT: output,
      },
    },
  );
  if (!existsSync(output)) {
    throw new Error(`the editor wrote nothing: ${stdout}${stderr}`);
  }
  const sitting = JSON.parse(readFileSync(output, 'utf8')) as Sitting;
  expect(sitting.failure).toBeUndefined();
  return sitting;
}

const byPlace = (a: Seen, b: Seen) =>
  a.file.localeCompare(b.file) ||
  a.line - b.line ||
  a.character - b.character ||
  a.rule.localeCompare(b.rule);

function asSeen(printed: readonly Printed[]): readonly Seen[] {
  return printed
    .map(({ rule, severity, message, file, range }) => ({
      file,
      line: range.start.line,
      character: range.start.character,
      endLine: range.end.line,
      endCharacter: range.end.character,
      severity: shortName(severity),
      rule,
      message,
      source: 'wiretrue',
    }))
    .sort(byPlace);
}

/** The editor's own words for severities. */
function shortName(severity: string): string {
  return { warning: 'warn', information: 'info' }[severity] ?? severity;
}

/** The related places, which this client shows in the message or not at all, are not compared. */
const sorted = (seen: readonly Seen[]) => [...seen].sort(byPlace);

describe('the faulty example in a second editor', { timeout: 120_000 }, () => {
  test('the same findings as the command line before and after a fix, which lands in the manifest', (context) => {
    requireOracle(context, 'nvim', present);
    const printedBefore = print();
    const manifestBefore = readFileSync(join(folder, 'hardware.jsonc'), 'utf8');
    expect(printedBefore.length).toBeGreaterThan(5);
    const sitting = sit();
    expect(sorted(sitting.before)).toEqual(asSeen(printedBefore));
    expect(sitting.hover.contents.kind).toBe('markdown');
    expect(sitting.hover.contents.value).not.toBe('');
    expect(sitting.fixed.rule).toBe('lamp-unlimited');
    const manifestAfter = readFileSync(join(folder, 'hardware.jsonc'), 'utf8');
    expect(manifestAfter).not.toBe(manifestBefore);
    expect(manifestAfter).toMatch(/\["D7", "R\d+", "beacon", "GND@right\.12"\]/);
    const printedAfter = print();
    expect(sorted(sitting.after)).toEqual(asSeen(printedAfter));
    const gone = printedBefore.filter(({ rule }) => rule === 'lamp-unlimited').length;
    expect(printedAfter.filter(({ rule }) => rule === 'lamp-unlimited')).toHaveLength(gone - 1);
  });
});
