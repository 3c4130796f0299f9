// The editor test takes minutes and needs a browser, so it is not part of `npm test`: `npm run test:editor` runs it.
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: dirname(fileURLToPath(import.meta.url)),
    include: ['*.check.ts'],
    testTimeout: 180_000,
    hookTimeout: 600_000,
    fileParallelism: false,
  },
});
