/** Which files make one sketch and in which order: on texts in memory, and on real folders where links matter. */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  arrangeSketch,
  countsInSketch,
  loadSketch,
  MOST_CHARACTERS,
  MOST_SOURCES,
  scanIncludes,
} from '../../server/src/files';

/** Arranges the sketch in /yard/horn out of texts by path below /yard; what leads above /yard is never asked for. */
function arrange(texts: Readonly<Record<string, string>>, ceiling = '/yard/horn', only?: string) {
  const folder = '/yard/horn';
  const listed = Object.keys(texts)
    .map((name) => join('/yard', name))
    .filter((file) => countsInSketch(folder, file));
  const place = { folder, ceiling, ...(only === undefined ? {} : { only: `/yard/${only}` }) };
  const arranged = arrangeSketch(place, listed, (file) => {
    const name = file.slice('/yard/'.length);
    return Object.hasOwn(texts, name) ? texts[name] : undefined;
  });
  return {
    order: arranged.sources.map(({ file }) => file.slice('/yard/'.length)),
    notes: arranged.notes,
    foreign: [...arranged.foreign],
  };
}

describe('what counts', () => {
  test('tabs and what is compiled along always, a header only where it is included', () => {
    expect(
      arrange({
        'horn/horn.ino': '#include <Servo.h>\n#include "config.h"\nvoid setup() {}',
        'horn/a.ino': '',
        'horn/config.h': '#include "src/deep/limits.hpp"',
        'horn/config.example.h': 'int pin = 5;',
        'horn/lamp.cpp': '#include "lamp.h"',
        'horn/lamp.h': '',
        'horn/src/deep/er/far.cpp': '#include "../limits.hpp"',
        'horn/src/deep/limits.hpp': '',
        'horn/src/old.ino': '',
        'horn/docs/x.cpp': '',
        'horn/notes.txt': '',
      }),
    ).toEqual({
      order: [
        'horn/horn.ino',
        'horn/a.ino',
        'horn/lamp.cpp',
        'horn/src/deep/er/far.cpp',
        'horn/config.h',
        'horn/lamp.h',
        'horn/src/deep/limits.hpp',
      ],
      notes: [],
      foreign: ['Servo.h'],
    });
  });

  test('all headers, where an include names its file by a macro', () => {
    const { order } = arrange({
      'horn/horn.ino': '#define BOARD_PINS "nano.h"\n#include BOARD_PINS\n',
      'horn/nano.h': '',
      'horn/uno.h': '',
    });
    expect(order).toEqual(['horn/horn.ino', 'horn/nano.h', 'horn/uno.h']);
  });

  test('a plain project: main.cpp first, with the headers of its two source folders', () => {
    const { order, foreign } = arrange({
      'horn/src/main.cpp': '#include <Arduino.h>\n#include "pins.h"\n#include "lamp.h"',
      'horn/src/beep.cpp': '',
      'horn/src/lamp.h': '',
      'horn/include/pins.h': '',
      'horn/include/spare.cpp': '',
    });
    expect(order).toEqual([
      'horn/src/main.cpp',
      'horn/src/beep.cpp',
      'horn/include/pins.h',
      'horn/src/lamp.h',
    ]);
    expect(foreign).toEqual(['Arduino.h']);
  });

  test('the only tab with a setup() leads where none is named like the folder', () => {
    const texts = { 'horn/a.ino': 'void beep() {}', 'horn/main.ino': 'void setup()\n{}', 'horn/b.ino': '' };
    expect(arrange(texts).order).toEqual(['horn/main.ino', 'horn/a.ino', 'horn/b.ino']);
    expect(arrange({ ...texts, 'horn/HORN.ino': '' }).order[0]).toBe('horn/HORN.ino');
  });

  test('a tab that stands alone takes its headers and what belongs to them', () => {
    const { order } = arrange(
      {
        'horn/one.ino': '#include "lamp.h"',
        'horn/two.ino': '',
        'horn/lamp.h': '',
        'horn/lamp.cpp': '#include "lamp.h"\n#include "dim.h"',
        'horn/dim.h': '',
        'horn/dim.c': '',
        'horn/other.cpp': '',
      },
      '/yard/horn',
      'horn/one.ino',
    );
    expect(order).toEqual(['horn/one.ino', 'horn/lamp.cpp', 'horn/dim.c', 'horn/dim.h', 'horn/lamp.h']);
  });
});

describe('includes', () => {
  test('a header beside the folder counts below the ceiling, with what it includes, each once', () => {
    const texts = {
      'horn/horn.ino': '#include "wire.h"\n',
      'horn/tab.ino': '#include "../shared/pins.h"\n',
      'horn/wire.h': '#include "../shared/pins.h"\n',
      'shared/pins.h': '#include "./levels.inc"\n',
      'shared/levels.inc': '',
    };
    const own = ['horn/horn.ino', 'horn/tab.ino', 'horn/wire.h'];
    expect(arrange(texts, '/yard').order).toEqual([...own, 'shared/pins.h', 'shared/levels.inc']);
    expect(arrange(texts)).toMatchObject({ order: own, foreign: ['../shared/pins.h'] });
  });

  test('of two of one name, the one beside the includer', () => {
    const texts = {
      'horn/horn.ino': '',
      'horn/pins.h': '',
      'horn/src/gate/gate.cpp': '#include "pins.h"\n',
      'horn/src/gate/pins.h': '',
    };
    expect(arrange(texts).order).toEqual(['horn/horn.ino', 'horn/src/gate/gate.cpp', 'horn/src/gate/pins.h']);
  });

  test('headers that include each other, and one that includes itself, end', () => {
    const { order } = arrange({
      'horn/horn.ino': '#include "./a.h"\n',
      'horn/a.h': '#include "./b.h"\n#include "./a.h"\n',
      'horn/b.h': '#include "./a.h"\n',
    });
    expect(order).toEqual(['horn/horn.ino', 'horn/a.h', 'horn/b.h']);
  });
});

describe('bounds', () => {
  test('more files than are read, and more characters: the rest is left out and that is said', () => {
    const many = Object.fromEntries(
      Array.from({ length: MOST_SOURCES + 5 }, (_, at) => [`horn/t${at}.cpp`, `int v${at};`]),
    );
    const { order, notes } = arrange({ 'horn/horn.ino': '', ...many });
    expect(order).toHaveLength(MOST_SOURCES);
    expect(notes).toEqual([expect.stringContaining(`more than ${MOST_SOURCES} files`)]);
    const large = arrange({ 'horn/horn.ino': ' '.repeat(MOST_CHARACTERS), 'horn/a.ino': 'int a;' });
    expect(large.order).toEqual(['horn/horn.ino']);
    expect(large.notes).toHaveLength(1);
  });

  test('include lines are found by the text alone, never in comments and strings, and in linear time', () => {
    const text = [
      '#include "a.h" // #include "no.h"',
      '/* #include "no.h"',
      '#include "no.h" */ # include <b.h>',
      '  #  include\t"c/d.h"',
      'const char *s = "\\',
      '#include \\"no.h\\"";',
      "char q = '\"';",
      '#include "e.h"\r\n#include "f.h"\r#include "g.h"',
    ].join('\n');
    expect(scanIncludes(text).paths.map(({ path }) => path)).toEqual(['a.h', 'c/d.h', 'e.h', 'f.h', 'g.h']);
    for (const unit of ['/*', '"', "'", '"\\', '\\', '# ', ' ', '\n']) {
      expect(scanIncludes(`include\n${unit.repeat(1_000_000)}`).paths).toEqual([]);
    }
  });
});

describe('on disk', () => {
  let base = '';
  beforeEach(() => {
    base = realpathSync(mkdtempSync(join(tmpdir(), 'arrange-test-')));
  });
  afterEach(() => {
    rmSync(base, { recursive: true, force: true });
  });
  const put = (path: string, text: string) => {
    mkdirSync(dirname(join(base, path)), { recursive: true });
    writeFileSync(join(base, path), text);
  };

  test('an include does not lead out of the ceiling, by dots or by a link', () => {
    put('outside/secret.h', '');
    put('top/shared/pins.h', '');
    put(
      'top/horn/horn.ino',
      '#include "../shared/pins.h"\n#include "../../outside/secret.h"\n#include "door/secret.h"\n#include "/etc/hosts"\n',
    );
    symlinkSync(join(base, 'outside'), join(base, 'top/horn/door'));
    symlinkSync(join(base, 'top'), join(base, 'top/horn/src'));
    const folder = join(base, 'top/horn');
    const read = loadSketch({ folder, ceiling: join(base, 'top') });
    expect(read.sources.map(({ file }) => file.slice(base.length))).toEqual([
      '/top/horn/horn.ino',
      '/top/shared/pins.h',
    ]);
    expect(read.problems).toEqual([]);
  });
});
