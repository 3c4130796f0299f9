/** `size`, `bands` and `boards`: figures that can be done by hand, and everything that is refused. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COMMANDS } from '../../server/src/cli/commands';
import { openWorkshop, type Workshop } from './program';

let shop: Workshop;
beforeAll(() => {
  shop = openWorkshop();
});
afterAll(() => shop.clear());

const run = (line: string) => shop.wiretrue(line.split(' '));

describe('size', () => {
  // Each by hand: the sums stand in the expected text.
  test.each([
    [
      'series --supply 5V --forward 2V --limit 20mA --current 10mA --tolerance 5%',
      /^330 ohm, 5 % \(orange, orange, brown, gold; printed 330R\)\ncurrent: .*; 20 mA may flow\n(.*\n)+ {2}\(5\.0 V − 2\.0 V\) \/ 330 ohm = 9\.1 mA\n$/,
    ],
    [
      'series --supply 4.5..5.5V --forward 1.9..2.3V --limit 12mA --stock 220,330,470,1k',
      // (5.5 V - 1.9 V) / (330 ohm x 0.95) is 11.5 mA; the next smaller value would pass the limit.
      /^330 ohm, .*\ncurrent: 6\.3 \/ 8\.8 \/ 11\.5 mA/,
    ],
    [
      'series --supply 5V --forward 2V --limit 20mA --current 15.8mA --stock 100,120 --pair',
      /^100 ohm, .* and 100 ohm, .*, in series\n/,
    ],
    // The board gives 5 V, 25 ohm and 20 mA.
    [
      'series --board nano-v3 --forward 2.1V --current 6mA',
      /\n {2}\(5\.0 V − 2\.1 V\) \/ \(470 ohm \+ 25 ohm\) = 5\.9 mA\n$/,
    ],
    [
      'pull-up --supply 5V --current 3mA --low 0.4V --stock E24',
      /^10 kohm, .*\nwhat works: 1\.5 kohm upwards\n {2}\(5\.0 V − 400 mV\) \/ 3\.0 mA = 1\.5 kohm\n/,
    ],
    [
      'divider --input 5V --wanted 3.4V --stock 1k,2k --tolerance 1% --current 2mA',
      /^1 kohm, .* from the input to the output, 2 kohm, .*\noutput: .*\n {2}5\.0 V × 2 kohm \/ \(1 kohm \+ 2 kohm\) = 3\.3 V\n/,
    ],
    // 10 kohm and 1 uF to 63.2 % is one time constant.
    [
      'rc --supply 5V --threshold 3.1606V --time 5ms --capacitance 1uF --stock 10k',
      /^10 kohm, .*\ndelay: 10 ms, 7\.6 ms at the short end/,
    ],
    [
      'base --supply 5V --load 100mA --gain 50 --limit 20mA',
      /^1 kohm, .*\n(.*\n)* {2}100 mA × 2 \/ 50 = 4\.0 mA\n {2}\(5\.0 V − 700 mV\) \/ 4\.0 mA = 1\.1 kohm\n/,
    ],
    // Gauge 24 is 0.511 mm by the formula and 84.2 ohm a kilometre by the handbooks.
    [
      'wire --gauge 24 --length 3m --current 1.5A --supply 12V',
      /^758 mV lost, 6\.3 % of the supply\nwire: gauge 24, 0\.511 mm, 0\.205 mm², there and back\n(.*\n)+ {2}2 × 3 m × 84\.21 mohm\/m = 0\.505 ohm\n/,
    ],
    ['wire --area 1 --length 1m --current 1A --one-way', /^17\.2 mV lost\nwire: 1 mm²\n/],
  ])('%s', (line, text) => {
    const { status, stdout, stderr } = run(`size ${line}`);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(text);
  });

  test('the same for programs, in SI', () => {
    const { stdout } = run('size base --supply 5V --load 100mA --gain 50 --limit 20mA --format json');
    expect(JSON.parse(stdout)).toMatchObject({
      format: 1,
      what: 'base',
      fits: true,
      figures: { ohms: 1000 },
      sums: [expect.stringContaining('100 mA'), expect.any(String), expect.any(String)],
    });
  });

  test('where nothing fits, why, with exit code 1', () => {
    const line = 'size series --supply 12V --forward 2V --limit 5mA --stock 220,330';
    expect(run(line)).toEqual({
      status: 1,
      stdout: '',
      stderr: expect.stringMatching(/^wiretrue: the largest in stock, 330 ohm, lets .* through/),
    });
    const json = run(`${line} --format json`);
    expect(json.status).toBe(1);
    expect(JSON.parse(json.stdout)).toMatchObject({ fits: false, why: expect.stringContaining('330 ohm') });
  });

  test.each([
    ['series --supply 5V --limit 20mA', 'Say --forward.'],
    ['series --forward 2V --limit 20mA', 'Say --supply, or --board for the figure of a board.'],
    [
      'series --forward 2V --supply 5X --limit 1A',
      '--supply: "X" is not a unit of voltage; write it as in 5 V.',
    ],
    [
      'series --supply 6..5V --forward 2V --limit 1A',
      '--supply: the first figure of "6..5V" is the larger one.',
    ],
    [
      'series --supply 5V --forward 2V --limit 1A --tolerance 5',
      '--tolerance: "5" has no percent sign; write a tolerance as in 5 %.',
    ],
    ['series --supply 5V --forward 2V --limit 1A --stock E13', /^--stock: .*; or name a series \(E3, E6,/],
    ['wire --length 1m --current 1A', 'Say the thickness of the wire: --gauge or --area, one of them.'],
    ['wire --gauge thick --length 1m --current 1A', '--gauge: "thick" is not a number.'],
    [
      'wire --gain 3 --gauge 24',
      'size wire takes no --gain. It takes --gauge, --area, --length, --current, --supply, --one-way, --degrees.',
    ],
    ['series --board nano-v4 --forward 2V', 'There is no board "nano-v4". Did you mean nano-v3?'],
  ])('refused: %s', (line, why) => {
    const { status, stdout, stderr } = run(`size ${line}`);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    const said = stderr.replace(/^wiretrue: /, '').trimEnd();
    if (typeof why === 'string') {
      expect(said).toBe(why);
    } else {
      expect(said).toMatch(why);
    }
  });
});

describe('bands', () => {
  test.each([
    ['4k7', '4.7 kohm, 5 %\nbands: yellow, violet, red, gold\nprinted: 4k7 or 472\nin E3\n'],
    [
      '4.7k --tolerance 1%',
      '4.7 kohm, 1 %\nbands: yellow, violet, black, brown, brown\nprinted: 4k7 or 472\nin E3\n',
    ],
    [
      'orange orange brown gold',
      '330 ohm, 5 %\nbands: orange, orange, brown, gold\nprinted: 330R or 331\nin E6\n',
    ],
    ['Yellow,Purple,RED', '4.7 kohm, 20 %\nbands: yellow, violet, red\nprinted: 4k7 or 472\nin E3\n'],
    ['brown black black red brown red', /^10 kohm, 1 %\nbands: .*\n50 millionths per kelvin\n/],
    ['black', '0 ohm\nbands: black\na link\n'],
    ['125', /\nin no series of preferred values\n$/],
  ])('%s', (line, text) => {
    const { status, stdout } = run(`bands ${line}`);
    expect(status).toBe(0);
    if (typeof text === 'string') {
      expect(stdout).toBe(text);
    } else {
      expect(stdout).toMatch(text);
    }
  });

  test('JSON; a colour that is none, bands that say nothing and a value without bands are refused', () => {
    expect(JSON.parse(run('bands 4k7 --format json').stdout)).toEqual({
      format: 1,
      ohms: 4700,
      tolerance: 0.05,
      bands: ['yellow', 'violet', 'red', 'gold'],
      codes: ['4k7', '472'],
      series: 'E3',
    });
    const why = (line: string) => {
      const { status, stderr } = run(`bands ${line}`);
      expect(status).toBe(2);
      return stderr;
    };
    expect(why('yelow violet red')).toBe('wiretrue: "yelow" is no colour of a band. Did you mean yellow?\n');
    expect(why('gold red brown orange')).toMatch(
      /say nothing in this order\. Try them from the other end\.\n$/,
    );
    expect(why('4k7 --tolerance 7%')).toMatch(/the colour code has no band for this tolerance\.\n$/);
    expect(why('12345')).toMatch(/no more than three digits/);
    expect(why('4k7k')).toMatch(/^wiretrue: Not a value: /);
  });
});

describe('boards', () => {
  test('the list, as text and as JSON, has every board once', () => {
    const { boards } = JSON.parse(run('boards --format json').stdout) as {
      boards: { id: string; title: string }[];
    };
    expect(boards.length).toBeGreaterThan(15);
    const lines = run('boards').stdout.trimEnd().split('\n');
    expect(lines.map((line) => line.split(' ')[0])).toEqual(boards.map(({ id }) => id));
  });

  test('every board of the list can be told', () => {
    const { boards } = JSON.parse(run('boards --format json').stdout) as {
      boards: { id: string; title: string }[];
    };
    for (const { id, title } of boards) {
      const { status, stdout } = run(`boards ${id}`);
      expect(status, id).toBe(0);
      expect(stdout).toContain(`${id}: ${title}`);
      expect(stdout, id).toMatch(/\n {2}current of one pin, recommended: \d/);
      expect(stdout, id).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  test('pins, header positions, limits and sources of one', () => {
    const { stdout } = run('boards nano-v3');
    expect(stdout).toMatch(/^ {2}D3 +3 {2}PD3; PWM \(timer2\); interrupt 1/m);
    expect(stdout).toMatch(/left header, counted from the USB end\n {4}1 D13, 2 3V3, /);
    expect(stdout).toMatch(/current of one pin, absolute: 40 mA\n {6}Atmel, /);
    const board = JSON.parse(run('boards nano-v3 --format json').stdout) as {
      pins: { id: string }[];
      limits: object;
    };
    expect(board.pins.map(({ id }) => id)).toContain('RST');
    expect(board.limits).toMatchObject({ pinAbsolute: { max: 0.04 } });
  });

  test('a board file of one own counts; one that is none is refused', () => {
    shop.put('own.json', '{ "extends": "pico", "title": "Own board" }');
    expect(run('boards own.json').stdout).toMatch(/Own board, RP2040\n/);
    expect(run('boards picoo')).toEqual({
      status: 2,
      stdout: '',
      stderr: 'wiretrue: There is no board "picoo". Did you mean pico?\n',
    });
  });
});

describe('help', () => {
  test.each(COMMANDS.map((command) => [command.name, command] as const))(
    'of %s tells all of it',
    (name, command) => {
      const { status, stdout } = run(`${name} --help`);
      expect(status).toBe(0);
      expect(run(`help ${name}`).stdout).toBe(stdout);
      for (const { name: option } of command.options) {
        expect(stdout).toContain(`--${option}`);
      }
      expect(stdout).toMatch(/\nExit codes\n {2}0 {2}/);
      expect(stdout).toMatch(/\nExamples\n {2}wiretrue /);
      expect(command.examples.length).toBeGreaterThan(0);
      for (const line of stdout.split('\n')) {
        expect(line.length, line).toBeLessThanOrEqual(110);
      }
    },
  );

  test('every example of size and bands works', () => {
    const lines = COMMANDS.filter(({ name }) => ['size', 'bands'].includes(name)).flatMap(
      ({ examples }) => examples,
    );
    expect(lines.length).toBeGreaterThan(8);
    for (const [line] of lines) {
      expect(run(line), line).toMatchObject({ status: 0, stderr: '' });
    }
  });
});
