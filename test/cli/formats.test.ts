/** The formats of `check`: each read back by somebody else, and held against the findings themselves. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Report, ReportFinding } from '../../server/src/cli/check/report';
import { rules } from '../../server/src/rules/generated/registry';
import { root } from '../fixture/bench';
import { requireOracle } from '../oracle/oracle';
import { CLEAN, LAMP, openWorkshop, type Workshop } from './program';

let shop: Workshop;
let report: Report;

/** Names that want escaping in one format or the other. */
const ODD = 'a b, %3A;"x" <&> ü:1';

beforeAll(() => {
  shop = openWorkshop();
  shop.putBuild('lamp', LAMP);
  shop.putBuild('clean', CLEAN);
  shop.putBuild('mild', LAMP.replace('"wires"', '"severity": { "lamp-unlimited": "hint" },\n  "wires"'));
  shop.putBuild(
    ODD,
    LAMP.replace('beacon', 'l <&> \\u0007 ]]> 🚦').replace('D7", "beacon"', 'D7", "l <&> \\u0007 ]]> 🚦"'),
  );
  report = JSON.parse(check('json').stdout) as Report;
  expect(report.findings.length).toBeGreaterThan(3);
});
afterAll(() => shop.clear());

const check = (format: string, ...rest: string[]) => shop.wiretrue(['check', '--format', format, ...rest]);

function schemaOf(path: string) {
  // The formats that SARIF's schema names are JSON Schema's own words for what the standard library can read.
  const isUri = (text: string) => URL.canParse(text);
  const formats = {
    uri: isUri,
    'uri-reference': (text: string) => URL.canParse(text, 'file:///x/') && !/[\s<>"]/.test(text),
    'date-time': (text: string) => !Number.isNaN(Date.parse(text)),
  };
  const ajv = new Ajv({ strict: false, allErrors: true, formats });
  const validate = ajv.compile(JSON.parse(readFileSync(join(root, path), 'utf8')) as object);
  return (data: unknown) => {
    validate(data);
    return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
  };
}

describe('json', () => {
  const errorsOf = schemaOf('hardware-schemas/check-report.schema.json');

  test('keeps to its published schema, with and without findings, shard, baseline and problems', () => {
    expect(errorsOf(report)).toEqual([]);
    shop.wiretrue(['check', '--write-baseline', 'known.json', 'lamp']);
    for (const rest of [['clean'], ['--shard', '2/2'], ['--baseline', 'known.json'], ['gone', 'lamp']]) {
      const { stdout } = check('json', ...rest);
      expect(errorsOf(JSON.parse(stdout)), rest.join(' ')).toEqual([]);
    }
  });

  test('the schema refuses what is none', () => {
    expect(errorsOf({ ...report, format: 2 })).not.toEqual([]);
    expect(errorsOf({ ...report, findings: [{ rule: 'x' }] })).not.toEqual([]);
    expect(errorsOf({ ...report, extra: 1 })).not.toEqual([]);
  });
});

describe('sarif', () => {
  interface Region {
    readonly startLine: number;
    readonly startColumn: number;
    readonly endLine: number;
    readonly endColumn: number;
  }
  interface Physical {
    readonly artifactLocation: { readonly uri: string };
    readonly region: Region;
  }
  interface Log {
    readonly runs: readonly {
      readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string }[] } };
      readonly invocations: readonly { readonly executionSuccessful: boolean }[];
      readonly results: readonly {
        readonly ruleId: string;
        readonly ruleIndex: number;
        readonly level: string;
        readonly message: { readonly text: string };
        readonly locations: readonly { readonly physicalLocation: Physical }[];
        readonly partialFingerprints: Readonly<Record<string, string>>;
      }[];
    }[];
  }
  const errorsOf = schemaOf('test/fixture/sarif-2.1.0.schema.json');

  test('keeps to the schema of SARIF 2.1.0, with problems too', () => {
    for (const rest of [['.'], ['clean'], ['gone', 'lamp']]) {
      expect(errorsOf(JSON.parse(check('sarif', ...rest).stdout)), rest.join(' ')).toEqual([]);
    }
    expect(errorsOf({ version: '2.1.0', runs: [{ results: [] }] })).not.toEqual([]);
  });

  test('holds every finding with its place, rule and fingerprint', () => {
    const [run] = (JSON.parse(check('sarif').stdout) as Log).runs;
    expect(run?.tool.driver.rules.map(({ id }) => id)).toEqual(rules.map(({ id }) => id));
    expect(run?.invocations[0]?.executionSuccessful).toBe(true);
    const back = run?.results.map(({ ruleId, ruleIndex, level, message, locations, partialFingerprints }) => {
      expect(rules[ruleIndex]?.id).toBe(ruleId);
      const { artifactLocation, region } = locations[0]?.physicalLocation ?? {
        artifactLocation: { uri: '' },
      };
      return [
        ruleId,
        level,
        message.text,
        decodeURIComponent(artifactLocation.uri),
        [region?.startLine, region?.startColumn, region?.endLine, region?.endColumn],
        Object.values(partialFingerprints),
      ];
    });
    const levels = { error: 'error', warning: 'warning', information: 'note', hint: 'note' };
    expect(back).toEqual(
      report.findings.map(({ rule, severity, message, file, range: { start, end }, sketch, key }) => [
        rule,
        levels[severity],
        message,
        file,
        [start.line + 1, start.character + 1, end.line + 1, end.character + 1],
        [`${sketch} ${key}`],
      ]),
    );
    // No two findings have the same fingerprint, or a host would drop one.
    expect(new Set(back?.map((each) => String(each[5]))).size).toBe(report.findings.length);
  });

  test('says of a run with problems that it did not succeed', () => {
    const [run] = (JSON.parse(check('sarif', 'gone', 'lamp').stdout) as Log).runs;
    expect(run?.invocations[0]).toMatchObject({
      executionSuccessful: false,
      toolExecutionNotifications: [{ level: 'error', message: { text: 'gone: does not exist' } }],
    });
  });
});

describe('junit', () => {
  /** Python's own XML parser; a reader that nobody of this project wrote. */
  const READ = `
import json, sys, xml.etree.ElementTree as tree
def read(e): return {'tag': e.tag, 'at': e.attrib, 'text': (e.text or ''), 'in': [read(c) for c in e]}
json.dump(read(tree.fromstring(sys.stdin.buffer.read())), sys.stdout)`;
  interface Element {
    readonly tag: string;
    readonly at: Readonly<Record<string, string>>;
    readonly text: string;
    readonly in: readonly Element[];
  }
  const hasPython = spawnSync('python3', ['-c', 'import xml.etree.ElementTree']).status === 0;
  function parse(xml: string): Element {
    const { status, stdout, stderr } = spawnSync('python3', ['-c', READ], { input: xml, encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    return JSON.parse(stdout) as Element;
  }

  test('is XML that another parser reads, a suite a sketch, a case a finding, and the sums are right', (context) => {
    requireOracle(context, 'python3', hasPython);
    const top = parse(check('junit').stdout);
    expect(top.tag).toBe('testsuites');
    expect(top.in.map(({ at }) => at.name)).toEqual(report.sketches);
    for (const suite of top.in) {
      const findings = report.findings.filter(({ sketch }) => sketch === suite.at.name);
      const fails = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
      expect(suite.at).toMatchObject({
        tests: String(Math.max(1, findings.length)),
        failures: String(fails.length),
        errors: '0',
      });
      expect(suite.in.flatMap((each) => each.in.filter(({ tag }) => tag === 'failure'))).toHaveLength(
        fails.length,
      );
      if (findings.length > 0) {
        expect(suite.in.map(({ at }) => at.name)).toEqual(
          findings.map(({ key }) => key.replaceAll('\u0007', '\ufffd')),
        );
      }
    }
    expect(top.at).toMatchObject({
      tests: String(top.in.reduce((sum, { in: cases }) => sum + cases.length, 0)),
      failures: String(report.summary.errors + report.summary.warnings),
    });
  });

  test('what could not be checked is an error', (context) => {
    requireOracle(context, 'python3', hasPython);
    const top = parse(check('junit', 'gone', 'clean').stdout);
    expect(top.at.errors).toBe('1');
    const [error] = top.in.at(-1)?.in[0]?.in ?? [];
    expect(error).toMatchObject({ tag: 'error', at: { message: 'gone: does not exist' } });
  });
});

describe('annotations', () => {
  /** The way back, written from the convention alone. */
  function parse(line: string) {
    const [, command, properties = '', text = ''] = /^::(\w+) ([^:]*)::(.*)$/.exec(line) ?? [];
    const back = (escaped: string) =>
      escaped
        .replaceAll('%3A', ':')
        .replaceAll('%2C', ',')
        .replaceAll('%0D', '\r')
        .replaceAll('%0A', '\n')
        .replaceAll('%25', '%');
    const pairs = properties.split(',').map((pair) => pair.split('='));
    return {
      command,
      at: Object.fromEntries(pairs.map(([name, value = '']) => [name, back(value)])),
      text: back(text),
    };
  }

  test('one line a finding, at its place, with nothing that could begin a command of its own', () => {
    const { stdout, status } = check('annotations');
    expect(status).toBe(1);
    const lines = stdout.trimEnd().split('\n');
    const commands = { error: 'error', warning: 'warning', information: 'notice', hint: 'notice' };
    expect(lines.map(parse).map(({ command, at, text }) => [command, at, text.split('\n')[0]])).toEqual(
      report.findings.map(({ severity, file, range: { start, end }, rule, message }: ReportFinding) => [
        commands[severity],
        {
          file,
          line: String(start.line + 1),
          endLine: String(end.line + 1),
          col: String(start.character + 1),
          endColumn: String(end.character + 1),
          title: rule,
        },
        message,
      ]),
    );
  });

  test('nothing where there is nothing to say; a problem is an error', () => {
    expect(check('annotations', 'clean')).toEqual({ status: 0, stdout: '', stderr: '' });
    expect(check('annotations', 'gone')).toMatchObject({
      status: 2,
      stdout: '::error file=gone,title=not checked::gone: does not exist\n',
    });
  });
});

test('on a terminal there are colours, but not with NO_COLOR', (context) => {
  const hasScript = spawnSync('script', ['--version']).status === 0;
  requireOracle(context, 'script', hasScript);
  const onTerminal = (env: Readonly<Record<string, string>>) =>
    spawnSync(
      'script',
      ['-qec', `"${process.execPath}" "${join(root, 'server/dist/cli.js')}" check lamp`, '/dev/null'],
      {
        cwd: shop.base,
        encoding: 'utf8',
        env: { PATH: process.env.PATH ?? '', TERM: 'xterm', ...env },
        input: '',
      },
    ).stdout;
  expect(onTerminal({})).toContain('\u001b[31merror\u001b[0m');
  const plain = onTerminal({ NO_COLOR: '1' });
  expect(plain).toContain('error lamp-unlimited');
  expect(plain).not.toContain('\u001b');
});
