/** The printed summary of the boards tells what the comparison finds, and ends with a code that a script can use. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { requireOracle } from '../oracle';
import { avrCorePresent } from './avr-core';
import { runVerify, verifyBoards } from './verify';

const root = fileURLToPath(new URL('../../..', import.meta.url));

function print(folder: string, only: string): { readonly code: number; readonly text: string } {
  let text = '';
  const code = runVerify(folder, { only, figures: true }, (piece) => {
    text += piece;
  });
  return { code, text };
}

it('finds no mismatch in any board, and none that was not compared', (context) => {
  requireOracle(context, 'open AVR core and its compiler', avrCorePresent());
  const reports = verifyBoards(root);
  expect(reports.length).toBeGreaterThanOrEqual(9);
  expect(reports.flatMap(({ id, mismatches }) => mismatches.map((one) => `${id}: ${one}`))).toEqual([]);
  expect(reports.filter(({ against }) => against === undefined).map(({ id }) => id)).toEqual([]);
});

it('prints figures and what is from memory', () => {
  const { code, text } = print(root, 'pro-mini-5v');
  expect(code).toBe(0);
  expect(text).toMatch(/^pro-mini-5v\n/);
  expect(text).toMatch(/figures: \d+ sourced, \d+ partly from memory, \d+ from memory/);
  expect(text).toContain('from memory: limits.clampAmps');
  expect(text).toMatch(/1 boards, \d compared: 0 mismatches\n/);
});

it('tells a board that was broken, by name, and ends with 1', (context) => {
  requireOracle(context, 'open AVR core and its compiler', avrCorePresent());
  const folder = mkdtempSync(join(tmpdir(), 'boards-verify-'));
  try {
    cpSync(join(root, 'hardware-schemas'), join(folder, 'hardware-schemas'), { recursive: true });
    const file = join(folder, 'hardware-schemas/boards/mega-2560.json');
    const board = JSON.parse(readFileSync(file, 'utf8')) as {
      pins: Record<string, Record<string, unknown>>;
      limits: Record<string, unknown>;
    };
    board.pins.D22 = { ...board.pins.D22, port: 'PA1' };
    board.limits.total = null;
    board.limits.clampAmps = { max: '1 W', fromMemory: true };
    writeFileSync(file, JSON.stringify(board));
    const { code, text } = print(folder, 'mega');
    expect(code).toBe(1);
    expect(text).toContain('pin 22: port is PA1 here and PA0 in the core');
    expect(text).toContain('missing: limits.total');
    expect(text).toMatch(/problem: This figure cannot be used/);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
