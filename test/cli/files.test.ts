/** The door to the disk, on real folders: which builds are found, in which order files come, what is refused in words. */
import {
  mkdirSync,
  mkdtempSync,
  rmSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  createTextReader,
  DEEPEST,
  decodeText,
  findProjects,
  isProject,
  LARGEST_FILE,
  listSources,
  loadLibrary,
  loadProject,
  projectOf,
  readProduct,
  schemasFolder,
} from '../../server/src/files';

let base = '';

beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'files-test-'));
});
afterEach(() => {
  rmSync(base, { recursive: true, force: true });
});

function put(path: string, content: string | Uint8Array = ''): string {
  const full = join(base, path);
  mkdirSync(dirname(full), { recursive: true });
  writeFileSync(full, content);
  return full;
}

describe('finding builds', () => {
  test('a folder is searched downwards; dot folders and node_modules are left out', () => {
    put('b/hardware.jsonc');
    put('a/deep/er/hardware.jsonc');
    put('hardware.jsonc');
    put('.cache/x/hardware.jsonc');
    put('node_modules/x/hardware.jsonc');
    const found = findProjects(['.'], base);
    expect(found).toEqual({
      folders: [base, join(base, 'a/deep/er'), join(base, 'b')],
      problems: [],
      notes: [],
    });
  });

  test('a source file and a manifest stand for their folder, and a folder named twice counts once', () => {
    put('x/hardware.jsonc');
    put('x/x.ino');
    put('x/help.hpp');
    const found = findProjects(['x/x.ino', 'x/hardware.jsonc', 'x', 'x/help.hpp'], base);
    expect(found).toEqual({ folders: [join(base, 'x')], problems: [], notes: [] });
    expect(isProject(join(base, 'x'))).toBe(true);
    expect(projectOf(join(base, 'x/x.ino'))).toBe(join(base, 'x'));
    expect(projectOf(join(base, 'y.ino'))).toBeUndefined();
  });

  test('what leads to no build is said with the path as it was named', () => {
    put('x/x.ino');
    put('notes.txt');
    expect(findProjects(['gone', 'x', 'x/x.ino', 'notes.txt', 'x/x.ino/y'], base)).toEqual({
      folders: [],
      problems: [
        { path: 'gone', why: 'does not exist' },
        { path: 'x', why: 'has no hardware.jsonc in it or below it' },
        { path: 'x/x.ino', why: 'has no hardware.jsonc beside it' },
        { path: 'notes.txt', why: 'is neither a hardware.jsonc nor a source file of a sketch' },
        { path: 'x/x.ino/y', why: 'does not exist' },
      ],
      notes: [],
    });
  });

  test('links that lead round in a circle end the walk, and a link to a folder is not entered', () => {
    put('x/hardware.jsonc');
    symlinkSync(base, join(base, 'x', 'up'));
    symlinkSync(join(base, 'self'), join(base, 'self'));
    expect(findProjects(['.'], base).folders).toEqual([join(base, 'x')]);
    expect(findProjects(['self'], base).problems).toEqual([
      { path: 'self', why: 'is a symbolic link that leads round in a circle' },
    ]);
  });

  test('a folder below the depth bound is not searched, and that is said', () => {
    const levels = Array.from({ length: DEEPEST + 1 }, (_, level) => `l${level}`);
    put(join(...levels.slice(0, DEEPEST), 'hardware.jsonc'));
    put(join(...levels, 'hardware.jsonc'));
    const found = findProjects(['.'], base);
    expect(found.folders).toEqual([join(base, ...levels.slice(0, DEEPEST))]);
    expect(found.notes).toEqual([`Folders more than ${DEEPEST} levels below . were not searched.`]);
  });

  test('a folder that is called hardware.jsonc makes no build', () => {
    put('x/hardware.jsonc/file.txt');
    expect(findProjects(['x'], base).folders).toEqual([]);
    expect(isProject(join(base, 'x'))).toBe(false);
  });
});

describe('loading a build', () => {
  test('the sketch named like its folder comes first, then tabs, then what is compiled along, then headers', () => {
    const names = [
      'z.h',
      'b.cpp',
      'Z.ino',
      'a.ino',
      'horn.ino',
      'a.c',
      'm.hpp',
      'a.h',
      'hardware.jsonc',
      'x.md',
    ];
    for (const name of names) {
      put(join('horn', name), `// ${name}`);
    }
    mkdirSync(join(base, 'horn', 'folder.ino'));
    const folder = join(base, 'horn');
    const main = '#include "m.hpp"\n#include "z.h"\n#include <a.h>\n';
    put('horn/horn.ino', main);
    expect(listSources(folder).map((file) => file.slice(folder.length + 1))).toEqual([
      'Z.ino',
      'a.c',
      'a.h',
      'a.ino',
      'b.cpp',
      'horn.ino',
      'm.hpp',
      'z.h',
    ]);
    const order = ['horn.ino', 'Z.ino', 'a.ino', 'b.cpp', 'a.c', 'a.h', 'z.h', 'm.hpp'];
    const project = loadProject(folder);
    expect(project.manifest).toEqual({ file: join(folder, 'hardware.jsonc'), text: '// hardware.jsonc' });
    const texts = order.map((name) => (name === 'horn.ino' ? main : `// ${name}`));
    expect(project.sources).toEqual(order.map((name, at) => ({ file: join(folder, name), text: texts[at] })));
    expect(project.problems).toEqual([]);
  });

  test('a file that is too large or no file is refused in words, and the others are read', () => {
    put('x/hardware.jsonc', '{}');
    const text = '#include "dangling.h"\n#include "endless.h"\n';
    put('x/x.ino', text);
    truncateSync(put('x/large.ino'), LARGEST_FILE + 1);
    symlinkSync(join(base, 'gone'), join(base, 'x', 'dangling.h'));
    symlinkSync('/dev/zero', join(base, 'x', 'endless.h'));
    const project = loadProject(join(base, 'x'));
    expect(project.sources.map((source) => source.text)).toEqual([text]);
    expect(project.problems).toEqual([
      { path: join(base, 'x/dangling.h'), why: 'does not exist' },
      { path: join(base, 'x/endless.h'), why: 'is not a regular file' },
      { path: join(base, 'x/large.ino'), why: 'is 20.0 MB large; files over 20 MB are not read' },
    ]);
  });

  test('a folder that is gone has no texts and says so', () => {
    const folder = join(base, 'gone');
    expect(listSources(folder)).toEqual([]);
    expect(loadProject(folder)).toEqual({
      folder,
      sources: [],
      problems: [{ path: folder, why: 'does not exist' }],
      notes: [],
      foreign: new Set(),
    });
  });
});

describe('reading text', () => {
  test('a byte order mark goes, wrong bytes become U+FFFD, UTF-16 is taken by its mark', () => {
    expect(decodeText(Buffer.from('\ufeffint ä;', 'utf8'))).toBe('int ä;');
    expect(decodeText(Uint8Array.of(0x61, 0xe4, 0x00, 0xff, 0x62))).toBe('a\ufffd\0\ufffdb');
    expect(decodeText(Buffer.from('\ufeffint ä;', 'utf16le'))).toBe('int ä;');
    expect(decodeText(Buffer.from('\ufeffint ä;', 'utf16le').swap16())).toBe('int ä;');
  });

  test('a text is kept while size and time of change stay, and read anew when one changes', () => {
    const reader = createTextReader();
    const path = put('a.ino', 'one');
    const mtime = new Date(1_700_000_000_000);
    utimesSync(path, mtime, mtime);
    expect(reader.read(path)).toEqual({ ok: true, text: 'one' });
    writeFileSync(path, 'two');
    utimesSync(path, mtime, mtime);
    expect(reader.read(path)).toEqual({ ok: true, text: 'one' });
    writeFileSync(path, 'three');
    utimesSync(path, mtime, mtime);
    expect(reader.read(path)).toEqual({ ok: true, text: 'three' });
    writeFileSync(path, 'seven');
    utimesSync(path, mtime, new Date(mtime.getTime() + 5000));
    expect(reader.read(path)).toEqual({ ok: true, text: 'seven' });
    writeFileSync(path, 'eight');
    utimesSync(path, mtime, new Date(mtime.getTime() + 5000));
    reader.keepOnly(new Set());
    expect(reader.read(path)).toEqual({ ok: true, text: 'eight' });
    rmSync(path);
    expect(reader.read(path)).toEqual({ ok: false, missing: true, why: 'does not exist' });
  });
});

describe('what is installed', () => {
  test('the library is found from any folder below it, and a broken installation is said', () => {
    for (const folder of ['boards', 'parts', 'libraries']) {
      put(`hardware-schemas/${folder}/b-${folder}.json`, `{"is":"${folder}"}`);
      put(`hardware-schemas/${folder}/a-${folder}.json`, '{}');
      put(`hardware-schemas/${folder}/notes.md`);
    }
    put('server/dist/cli.js');
    const schemas = schemasFolder(join(base, 'server', 'dist'));
    expect(schemas).toBe(join(base, 'hardware-schemas'));
    const library = loadLibrary(schemas);
    expect([...library.boards]).toEqual([
      ['a-boards', '{}'],
      ['b-boards', '{"is":"boards"}'],
    ]);
    expect([...library.parts.keys()]).toEqual(['a-parts', 'b-parts']);
    expect([...library.libraries.keys()]).toEqual(['a-libraries', 'b-libraries']);
    rmSync(join(base, 'hardware-schemas'), { recursive: true });
    expect(() => schemasFolder(join(base, 'server', 'dist'))).toThrow(/No hardware-schemas folder lies in/);
  });

  test('name and version come from the nearest package that has both', () => {
    put('package.json', '{"name":"outer","version":"1.2.3"}');
    put('server/package.json', '{"type":"commonjs"}');
    put('server/dist/package.json', 'not JSON');
    expect(readProduct(join(base, 'server', 'dist'))).toEqual({ name: 'outer', version: '1.2.3' });
  });
});
