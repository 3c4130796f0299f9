/** The built program as a process: what it prints, what it refuses, how it ends. */
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CLI, EXAMPLES, LAMP, openWorkshop, SKETCH, type Workshop } from './program';

let shop: Workshop;
let base = '';
let put: Workshop['put'];

beforeAll(() => {
  shop = openWorkshop();
  ({ base, put } = shop);
  cpSync(join(EXAMPLES, 'harbour-model'), join(base, 'clean'), { recursive: true });
  shop.putBuild('lamp', LAMP);
  put('bare/bare.ino', SKETCH);
  shop.putBuild('off', LAMP.replace('"wires"', '"severity": { "lamp-unlimited": "hint" },\n  "wires"'));
});
afterAll(() => shop.clear());

const wiretrue = (args: readonly string[]) => shop.wiretrue(args);

interface JsonPlace {
  readonly line: number;
  readonly character: number;
}

interface JsonOutput {
  readonly format: number;
  readonly tool: { readonly name: string; readonly version: string };
  readonly findings: readonly {
    readonly rule: string;
    readonly severity: string;
    readonly message: string;
    readonly file: string;
    readonly range: { readonly start: JsonPlace; readonly end: JsonPlace };
    readonly related: readonly { readonly file: string; readonly message: string }[];
    readonly fixes: readonly string[];
  }[];
  readonly problems: readonly { readonly path: string; readonly why: string }[];
  readonly summary: Readonly<Record<string, number>>;
}

function json(args: readonly string[], folder = '.'): { status: number | null; output: JsonOutput } {
  const { status, stdout } = shop.wiretrue(['check', '--format', 'json', ...args], folder);
  return { status, output: JSON.parse(stdout) as JsonOutput };
}

describe('check', () => {
  test('a clean build: nothing but the summary, exit 0', () => {
    expect(wiretrue(['check', 'clean'])).toEqual({
      status: 0,
      stdout: 'No findings in 1 sketch\n',
      stderr: '',
    });
  });

  test('a faulty build: place, rule, line, marker, related places, fixes, summary, exit 1', () => {
    const { status, stdout, stderr } = wiretrue(['check', 'lamp']);
    expect(stderr).toBe('');
    expect(status).toBe(1);
    const lines = stdout.split('\n');
    // Whether the quotes of a key belong to its place is the manifest reader's business.
    expect(lines[0]).toMatch(/^lamp\/hardware\.jsonc:6:[23] error lamp-unlimited$/);
    expect(lines[1]).toMatch(/^ {2}beacon has no resistor in series on D7: /);
    expect(lines[2]).toBe('    6 |     "beacon": { "kind": "led", "colour": "green" }');
    expect(lines[3]).toMatch(/^ {6}\| {5,6}\^{6,8}$/);
    expect(lines[2]?.slice(lines[3]?.indexOf('^'), lines[3]?.length)).toMatch(/^"?beacon"?$/);
    expect(stdout).toMatch(/^ {2}see lamp\/lamp\.ino:\d+:\d+ .+\n {4}\d \| .+\n {6}\| +\^+$/m);
    expect(stdout).toMatch(/^ {2}fix \(ask\): \S/m);
    expect(lines.at(-2)).toMatch(/^1 error(, .*)? in 1 sketch$/);
    // Not a terminal: no colours, whatever the environment says.
    expect(stdout).not.toContain('\u001b');
  });

  test('the same as JSON, with the same places counted from zero', () => {
    const { status, output } = json(['lamp']);
    expect(status).toBe(1);
    expect(output.format).toBe(1);
    expect(output.tool).toEqual({ name: 'wiretrue', version: expect.stringMatching(/^\d+\.\d+\.\d+$/) });
    const finding = output.findings.find((each) => each.rule === 'lamp-unlimited');
    expect(finding).toMatchObject({ severity: 'error', file: 'lamp/hardware.jsonc' });
    const { start, end } = finding?.range ?? {};
    expect([start?.line, end?.line]).toEqual([5, 5]);
    expect(LAMP.split('\n')[5]?.slice(start?.character, end?.character)).toMatch(/^"?beacon"?$/);
    expect(finding?.related.some((other) => other.file === 'lamp/lamp.ino')).toBe(true);
    expect(finding?.fixes.length).toBeGreaterThan(0);
    expect(output.problems).toEqual([]);
    expect(output.summary).toMatchObject({ sketches: 1, errors: 1 });
  });

  test('several builds: ordered by file, and twice the same output', () => {
    const once = wiretrue(['check', '--format', 'json', 'off', 'lamp', 'clean']);
    const { findings, summary } = JSON.parse(once.stdout) as JsonOutput;
    const files = findings.map((finding) => finding.file);
    expect(files).toEqual([...files].sort());
    expect(new Set(files).size).toBeGreaterThan(1);
    expect(summary.sketches).toBe(3);
    expect(wiretrue(['check', '--format', 'json', 'clean', 'off', 'lamp']).stdout).toBe(once.stdout);
  });

  test('information and hints alone are printed and do not fail', () => {
    const { status, output } = json(['off']);
    expect(output.findings.filter((finding) => finding.rule === 'lamp-unlimited')).toHaveLength(1);
    expect(output.summary).toMatchObject({ errors: 0, warnings: 0 });
    expect(status).toBe(0);
  });

  test('the current folder is checked where no path is named; files are named relative to it', () => {
    const { output } = json([], 'lamp');
    expect(output.findings[0]?.file).toBe('hardware.jsonc');
    expect(json(['../lamp/lamp.ino'], 'off').output.findings[0]?.file).toBe('../lamp/hardware.jsonc');
  });

  test('a path that leads nowhere ends with 2, and what can be checked still is', () => {
    const { status, stdout, stderr } = wiretrue(['check', 'gone', 'bare', 'lamp']);
    expect(status).toBe(2);
    expect(stderr).toBe(
      'wiretrue: bare: has no hardware.jsonc in it or below it\nwiretrue: gone: does not exist\n',
    );
    expect(stdout).toMatch(/in 1 sketch\n$/);
    expect(wiretrue(['check', 'bare'])).toMatchObject({ status: 2, stdout: '' });
    expect(json(['gone']).output.problems).toEqual([{ path: 'gone', why: 'does not exist' }]);
  });

  test('a file that may not be read ends with 2 and is named', () => {
    put('locked/hardware.jsonc', LAMP);
    const sketch = put('locked/locked.ino', SKETCH);
    chmodSync(sketch, 0);
    const { status, stderr } = wiretrue(['check', 'locked']);
    if (process.getuid?.() === 0) {
      // Root may read everything: the build is checked like any other.
      expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
    } else {
      expect(status).toBe(2);
      expect(stderr).toBe('wiretrue: locked/locked.ino: may not be read by this user\n');
    }
  });

  test('bytes that are no text, half a manifest, a list for a manifest, an empty file: no crash', () => {
    const noise = Uint8Array.from({ length: 4096 }, (_, index) => (index * 167 + (index >> 3)) & 255);
    const manifests = [
      noise,
      '',
      '[]',
      '{ "parts": { "a": { "kind": "le',
      '\ufeff{}',
      '{"__proto__": {"a": 1}}',
    ];
    for (const [index, manifest] of manifests.entries()) {
      put(`odd${index}/hardware.jsonc`, manifest);
      put(`odd${index}/odd${index}.ino`, index % 2 === 0 ? noise : '');
    }
    const { status, stdout, stderr } = wiretrue(['check', ...manifests.map((_, index) => `odd${index}`)]);
    expect(stderr).toBe('');
    expect(status).toBe(1);
    expect(stdout).toMatch(/in 6 sketches\n$/);
    // What stands in the files never reaches the terminal as a command.
    expect(stdout.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });

  test('a line of megabytes is checked or refused in words, and its excerpt is cut', () => {
    const widest = (text: string) => Math.max(...text.split('\n').map((line) => line.length));
    const oneLine = `${SKETCH.replaceAll('\n', ' ')}void also() {}`;
    put('long/hardware.jsonc', LAMP);
    put('long/long.ino', `/*${'x'.repeat(1_000_000)}*/ ${oneLine}`);
    const long = wiretrue(['check', 'long']);
    expect({ status: long.status, stderr: long.stderr }).toEqual({ status: 1, stderr: '' });
    expect(long.stdout).toMatch(/long\/long\.ino:1:10000\d\d /);
    expect(widest(long.stdout)).toBeLessThan(400);

    put('long/long.ino', `/*${'x'.repeat(5_000_000)}*/ ${oneLine}`);
    const longer = wiretrue(['check', 'long']);
    expect(longer.stderr).toBe('');
    expect(longer.stdout).toMatch(
      /long\/long\.ino:1:\d+ .*\n {2}The file is longer than \d+ characters and is not read/,
    );
    expect(widest(longer.stdout)).toBeLessThan(400);
  });

  test('a reader that closes the pipe early is no fault', () => {
    const command = `"${process.execPath}" "${CLI}" check --format json lamp off clean | head -c 1`;
    const { status, stdout, stderr } = spawnSync('bash', ['-c', command], { cwd: base, encoding: 'utf8' });
    expect({ status, stdout, stderr }).toEqual({ status: 0, stdout: '{', stderr: '' });
  });
});
