/** `hookup`, `parts`, `guide`, `tests` and `addendum`: papers in files, own text in them, and revisions of git. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CLEAN, EXAMPLES, LAMP, openWorkshop, SKETCH, type Workshop } from './program';

let shop: Workshop;
beforeAll(() => {
  shop = openWorkshop();
  cpSync(EXAMPLES, join(shop.base, 'examples'), { recursive: true });
  cpSync(join(EXAMPLES, 'harbour-model'), join(shop.base, 'harbour-model'), { recursive: true });
});
afterAll(() => shop.clear());

const at = (path: string) => join(shop.base, path);
const text = (path: string) => readFileSync(at(path), 'utf8');

describe('papers', () => {
  const titles = { hookup: 'Hookup list', parts: 'Parts list', guide: 'Build guide', tests: 'Test sheet' };

  test.each(Object.entries(titles))('%s: Markdown, HTML and, where it is a list, CSV', (name, title) => {
    const markdown = shop.wiretrue([name, 'harbour-model']);
    expect(markdown.status).toBe(0);
    expect(markdown.stdout).toMatch(new RegExp(`^# ${title}: Harbour model, revision A$`, 'm'));
    const html = shop.wiretrue([name, '--format', 'html', 'harbour-model']).stdout;
    expect(html).toMatch(/^<!DOCTYPE html>/i);
    expect(html).toContain(title);
    const csv = shop.wiretrue([name, '--format', 'csv', 'harbour-model']);
    if (name === 'guide') {
      expect(csv).toMatchObject({ status: 2, stderr: expect.stringContaining('Possible: markdown, html.') });
    } else {
      expect(csv.stdout.trimEnd().split('\n').length).toBeGreaterThan(5);
    }
    // The same build gives the same bytes, from wherever it is read.
    expect(shop.wiretrue([name, '.'], 'harbour-model').stdout).toBe(markdown.stdout);
  });

  test('all of them on one page', () => {
    expect(shop.wiretrue(['guide', '--all', 'harbour-model']).stderr).toMatch(/say --format html\.\n$/);
    const { stdout } = shop.wiretrue(['guide', '--all', '--format', 'html', 'harbour-model']);
    for (const title of Object.values(titles)) {
      expect(stdout).toContain(title);
    }
    expect(stdout.match(/<html/g)).toHaveLength(1);
  });

  test('a row for every wire', () => {
    const { stdout } = shop.wiretrue(['hookup', 'examples/quay-lamp']);
    expect(stdout.split('\n').filter((line) => line.startsWith('| ☐'))).toHaveLength(5);
    expect(stdout).toContain('GND, north row, 2nd from the USB end | restart.2 | black | 12 cm |');
  });

  test('own text between the sections stays, what was changed inside one is told', () => {
    const write = () => shop.wiretrue(['parts', '-o', 'parts.md', 'harbour-model']);
    expect(write()).toEqual({ status: 0, stdout: '', stderr: '' });
    const fresh = text('parts.md');
    const [end = ''] = /^<!-- wiretrue end .*$/m.exec(fresh) ?? [];
    const own = `${end}\n\nBuy the lamps early; the shop shuts at noon.\n`;
    writeFileSync(at('parts.md'), fresh.replace(`${end}\n`, own));
    expect(write()).toEqual({ status: 0, stdout: '', stderr: '' });
    expect(text('parts.md')).toContain('the shop shuts at noon');
    writeFileSync(at('parts.md'), text('parts.md').replace('# Parts list', '# My list'));
    expect(write().stderr).toMatch(/parts\.md: what was changed inside the section "top" is made anew\.\n$/);
    expect(text('parts.md')).toContain('# Parts list');
    expect(text('parts.md')).toContain('the shop shuts at noon');
  });

  test('a file that is no paper of ours is left alone', () => {
    shop.put('mine.md', '# Mine\n');
    const { status, stderr } = shop.wiretrue(['guide', '-o', 'mine.md', 'harbour-model']);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^wiretrue: mine\.md is left as it is: .*\. Name another file, or remove it\.\n$/);
    expect(text('mine.md')).toBe('# Mine\n');
    shop.put('empty.md', '\n');
    expect(shop.wiretrue(['tests', '-o', 'empty.md', 'harbour-model']).status).toBe(0);
    expect(text('empty.md')).toContain('# Test sheet');
  });

  test('several builds, none, or a manifest that gives none are refused in words', () => {
    const why = (path: string) => {
      const { status, stdout, stderr } = shop.wiretrue(['hookup', path]);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      return stderr;
    };
    mkdirSync(at('nothing'));
    shop.putBuild('broken', '{ "parts": ');
    expect(why('examples')).toBe('wiretrue: examples holds 3 builds; name one of them\n');
    expect(why('gone')).toBe('wiretrue: gone: does not exist\n');
    expect(why('nothing')).toBe('wiretrue: nothing: has no hardware.jsonc in it or below it\n');
    expect(why('broken')).toBe('wiretrue: broken: its manifest gives no build; wiretrue check says why\n');
  });
});

describe('addendum', () => {
  const git = (...args: string[]) => {
    const { status, stdout, stderr } = spawnSync(
      'git',
      [
        '-C',
        at('repo'),
        '-c',
        'user.name=A',
        '-c',
        'user.email=a@example.org',
        '-c',
        'core.autocrlf=false',
        ...args,
      ],
      { encoding: 'utf8' },
    );
    expect(status, stderr).toBe(0);
    return stdout;
  };
  /** The first build, then one with another resistor and another line in a header outside its folder. */
  const withHeader = SKETCH.replace(/^/, '#include "../shared/pins.h"\n').replaceAll('7', 'LAMP');

  beforeAll(() => {
    mkdirSync(at('repo'));
    git('init', '--quiet');
    shop.put('repo/readme.txt', 'nothing yet\n');
    git('add', '.');
    git('commit', '--quiet', '-m', 'Nothing yet');
    git('tag', 'empty');
    shop.putBuild('repo/lamp', CLEAN, withHeader);
    shop.put('repo/shared/pins.h', '#define LAMP 7\n');
    git('add', '.');
    git('commit', '--quiet', '-m', 'A lamp');
    git('tag', 'v1');
    cpSync(at('repo/lamp'), at('kept'), { recursive: true });
    shop.put('repo/lamp/hardware.jsonc', CLEAN.replace('"value": "470"', '"value": "330"'));
    git('commit', '--quiet', '-a', '-m', 'Brighter');
    git('tag', 'v2');
    shop.put(
      'repo/lamp/hardware.jsonc',
      CLEAN.replace('"R1":', '"restart": { "kind": "push-button" }, "R1":').replace(
        '"wires": [',
        '"wires": [{ "from": "RST", "to": "restart.1" }, { "from": "restart.2", "to": "GND" }, ',
      ),
    );
  });

  const addendum = (args: readonly string[], folder = 'repo/lamp') =>
    shop.wiretrue(['addendum', ...args], folder);

  test('from a tag to the files of now', () => {
    const { status, stdout, stderr } = addendum(['--from', 'v1']);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/^# Addendum/m);
    expect(stdout).toContain('restart.1');
    expect(stdout).not.toContain('330');
    // From the folder above, and from above the repository, it is the same.
    expect(addendum(['lamp', '--from', 'v1'], 'repo').stdout).toBe(stdout);
    expect(addendum(['repo/lamp', '--from', 'v1'], '.').stdout).toBe(stdout);
    // What the working tree holds since then does not count for the revision.
    expect(addendum(['--from', 'HEAD~1']).stdout).toBe(stdout);
  });

  test('between two revisions; from one to itself nothing is to do', () => {
    const { status, stdout } = addendum(['--from', 'v1', '--to', 'v2']);
    expect(status).toBe(0);
    expect(stdout).toContain('330');
    expect(stdout).not.toContain('restart');
    const same = addendum(['--from', 'v2', '--to', 'HEAD']);
    expect(same.status).toBe(0);
    expect(same.stdout).not.toMatch(/^\| ☐/m);
  });

  test('from a copy that was kept, a folder or a manifest of another name', () => {
    const byTag = addendum(['--from', 'v1', '--to', 'v2']).stdout;
    expect(addendum(['--from', '../../kept', '--to', 'v2']).stdout).toContain('330');
    cpSync(at('kept/hardware.jsonc'), at('kept/rev-a.jsonc'));
    const alone = addendum(['--from', '../../kept/rev-a.jsonc', '--to', 'v2']);
    expect(alone.status).toBe(0);
    expect(alone.stdout).toContain('330');
    expect(byTag).not.toBe('');
  });

  test('headers beside the sketch are read at the revision too', () => {
    shop.put('repo/shared/pins.h', '#define LAMP 7 // moved\n');
    const changed = addendum(['--from', 'v2', '--to', 'HEAD']).stdout;
    expect(changed).not.toContain('moved');
    rmSync(at('repo/shared'), { recursive: true });
    // The working tree has lost it; the revision has not.
    expect(addendum(['--from', 'v2', '--to', 'HEAD']).stdout).toBe(changed);
    git('checkout', '--quiet', '--', 'shared');
  });

  test('a revision without a manifest, one that does not exist, an option in its place, no repository', () => {
    const why = (args: readonly string[], folder?: string) => {
      const { status, stdout, stderr } = addendum(args, folder);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      return stderr;
    };
    const folder = at('repo/lamp');
    expect(why(['--from', 'empty'])).toBe(
      `wiretrue: At the revision "empty" ${folder} had no hardware.jsonc.\n`,
    );
    expect(why(['--from', 'v9'])).toBe(`wiretrue: The repository of ${folder} has no revision "v9".\n`);
    expect(why(['--from=--output=/tmp/x'])).toMatch(/has no revision "--output=\/tmp\/x"\.\n$/);
    expect(why(['--from', '; touch here'])).toMatch(/has no revision "; touch here"\.\n$/);
    expect(why([])).toMatch(/^wiretrue: Say --from: /);
    expect(why(['--from', 'v1'], 'kept')).toMatch(
      /lies in no git repository, so it has no revision "v1"\.\n$/,
    );
    shop.putBuild('repo/lamp/v1', LAMP);
    expect(why(['--from', 'v1', '../lamp/lamp.ino'])).toMatch(
      /"v1" is a path and a revision\. Write \.\/v1 for the path/,
    );
    expect(addendum(['--from', 'refs/tags/v1', '../lamp/lamp.ino']).status).toBe(0);
    rmSync(at('repo/lamp/v1'), { recursive: true });
  });
});
