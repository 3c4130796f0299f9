// Makes folders of sketches of the size that people write, no two alike, a tenth of them with a fault.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateBuild } from './generate.mjs';

/** Ohms that lamps get. */
const VALUES = ['820', '1k', '1k2', '1k5', '1k8', '2k2', '2k7'];

/**
 * Writes `count` folders, named so that their order is that of their numbers.
 * @returns the sketch files, and lines of all of them together.
 */
export function makeFolders(folder, count) {
  const files = [];
  let lines = 0;
  for (let index = 0; index < count; index += 1) {
    // 40 to 240 lines, 14 to 24 wires.
    const build = generateBuild(40 + ((index * 37) % 200), 14 + ((index * 13) % 11), index + 1);
    let lamp = 0;
    const manifest = build.manifest
      .replace(/"value": "470"/g, () => {
        lamp += 1;
        return `"value": "${VALUES[(index * 5 + lamp * lamp) % VALUES.length]}"`;
      })
      // The first lamp of every tenth build has lost its resistor.
      .replace(index % 10 === 3 ? /, "R_lamp0", "lamp0"/ : /$^/, ', "lamp0"');
    const name = `sketch${String(index).padStart(5, '0')}`;
    const place = join(folder, name);
    mkdirSync(place, { recursive: true });
    const file = join(place, `${name}.ino`);
    writeFileSync(file, build.sketch);
    writeFileSync(join(place, 'hardware.jsonc'), manifest);
    files.push(file);
    lines += build.lines;
  }
  return { files, lines };
}
