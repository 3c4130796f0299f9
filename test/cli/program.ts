/** The built command line as a process, and folders for it to work in. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { root } from '../fixture/bench';

export const CLI = join(root, 'server/dist/cli.js');
export const EXAMPLES = join(root, 'hardware-schemas/examples');

/** A lamp on D7 without a resistor: one error. */
export const LAMP = `{
  "format": 1,
  "board": "nano-v3",
  "stock": { "resistors": ["220", "330", "470", "1k"] },
  "parts": {
\t"beacon": { "kind": "led", "colour": "green" }
  },
  "wires": [{ "path": ["D7", "beacon", "GND"], "colours": ["red", "black"] }]
}
`;
/** The same with one: no finding. */
export const CLEAN = LAMP.replace('"beacon":', '"R1": { "kind": "resistor", "value": "470" }, "beacon":')
  .replace('"D7", "beacon"', '"D7", "R1", "beacon"')
  .replace('["red", "black"]', '["red", "red", "black"]');
export const SKETCH = 'void setup() { pinMode(7, OUTPUT); }\nvoid loop() { digitalWrite(7, HIGH); }\n';

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** A folder to work in, with its paths made real, so that messages can be compared. */
export interface Workshop {
  readonly base: string;
  put(path: string, content: string | Uint8Array): string;
  /** A folder that is one build. */
  putBuild(folder: string, manifest: string, sketch?: string): void;
  /** Runs the program there. */
  wiretrue(args: readonly string[], folder?: string, env?: Readonly<Record<string, string>>): Ended;
  /** Starts it and leaves it running. */
  start(args: readonly string[]): ChildProcess;
  clear(): void;
}

export function openWorkshop(): Workshop {
  if (!existsSync(CLI)) {
    throw new Error('server/dist/cli.js is not built: run npm run build');
  }
  const base = realpathSync(mkdtempSync(join(tmpdir(), 'cli-test-')));
  const put = (path: string, content: string | Uint8Array) => {
    const full = join(base, path);
    mkdirSync(dirname(full), { recursive: true });
    writeFileSync(full, content);
    return full;
  };
  return {
    base,
    put,
    putBuild(folder, manifest, sketch = SKETCH) {
      put(`${folder}/hardware.jsonc`, manifest);
      put(`${folder}/${folder.split('/').at(-1)}.ino`, sketch);
    },
    wiretrue(args, folder = '.', env = {}) {
      const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
        cwd: join(base, folder),
        encoding: 'utf8',
        env: { ...process.env, FORCE_COLOR: '1', ...env },
        maxBuffer: 1e8,
      });
      return { status, stdout, stderr };
    },
    start: (args) =>
      spawn(process.execPath, [CLI, ...args], { cwd: base, stdio: ['ignore', 'pipe', 'pipe'] }),
    clear: () => rmSync(base, { recursive: true, force: true }),
  };
}
