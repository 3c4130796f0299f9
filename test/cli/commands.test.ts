/** The built command line besides `check`: explain, hookup, serve, help, and what is refused. */
import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rules } from '../../server/src/rules/generated/registry';
import { root } from '../fixture/bench';

const CLI = join(root, 'server/dist/cli.js');

function wiretrue(args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

describe('explain', () => {
  test('every rule is listed and explained in its own words', () => {
    const { status, stdout } = wiretrue(['explain']);
    expect(status).toBe(0);
    expect(rules.length).toBeGreaterThan(0);
    expect(stdout.trimEnd().split('\n')).toHaveLength(rules.length);
    for (const rule of rules) {
      expect(stdout).toContain(`${rule.id} `);
    }
    const rule = rules.find((each) => each.id === 'lamp-unlimited');
    const explained = wiretrue(['explain', 'lamp-unlimited']);
    expect(explained.status).toBe(0);
    for (const text of [rule?.title, rule?.why, rule?.source]) {
      expect(explained.stdout).toContain(text);
    }
  });

  test('a rule that does not exist gets the nearest name, exit 2', () => {
    expect(wiretrue(['explain', 'lamp-unlimitted'])).toEqual({
      status: 2,
      stdout: '',
      stderr: 'wiretrue: There is no rule "lamp-unlimitted". Did you mean lamp-unlimited?\n',
    });
  });
});

describe('the rest', () => {
  test('help and version', () => {
    expect(wiretrue(['--help'])).toMatchObject({
      status: 0,
      stdout: expect.stringContaining('check [path ...]'),
    });
    expect(wiretrue(['--version']).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  test('a wrong argument is refused with the nearest right one, exit 2', () => {
    expect(wiretrue(['chekc'])).toEqual({
      status: 2,
      stdout: '',
      stderr: 'wiretrue: There is no command "chekc". Did you mean check? See wiretrue --help.\n',
    });
  });

  test('serve answers in the protocol', async () => {
    const server = spawn(process.execPath, [CLI, 'serve', '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const send = (message: object) => {
      const body = JSON.stringify({ jsonrpc: '2.0', ...message });
      server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    };
    let output = '';
    const answered = new Promise<void>((resolve) => {
      server.stdout.setEncoding('utf8').on('data', (text: string) => {
        output += text;
        if (output.includes('"capabilities"')) {
          resolve();
        }
      });
    });
    const ended = new Promise<number | null>((resolve) => server.on('close', resolve));
    send({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
    await answered;
    send({ id: 2, method: 'shutdown' });
    send({ method: 'exit' });
    expect(await ended).toBe(0);
    expect(output).toMatch(/^Content-Length: \d+\r\n/);
  });
});
