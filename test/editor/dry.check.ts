import { cpSync, mkdtempSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { startWorkbench } from './workbench';

test('dry', async () => {
  const folder = mkdtempSync('/tmp/dry/try/harbour ä-');
  cpSync('/work/main/hardware-schemas/examples/harbour-model', folder, { recursive: true });
  const w = await startWorkbench('/tmp/dry/root/dist/wiretrue-0.1.0.vsix', folder);
  try {
    await w.open('harbour-model.ino');
    await w.picture('dry-1');
    await w.squiggles().first().waitFor({ timeout: 40000 });
    await w.picture('dry-2');
    console.log(await w.hover(w.squiggles().first()));
    await w.picture('dry-3');
    await w.page.keyboard.press('Escape');
    await w.goTo(7, 14);
    console.log(await w.fix(/resistor/, 'dry-4'));
    await expect.poll(() => w.squiggles().count(), { timeout: 10000 }).toBe(0);
    await w.picture('dry-5');
    await new Promise((r) => setTimeout(r, 3000));
    console.log(readFileSync(folder + '/hardware.jsonc', 'utf8').includes('"R9"'));
    console.log(w.log().slice(-3000));
  } catch (e) {
    await w.picture('dry-fail');
    console.log(w.log().slice(-5000));
    throw e;
  } finally {
    await w.stop();
  }
});
