/** Builds whose pictures are kept, each for what it makes the picture do. */
import { readFileSync } from 'node:fs';
import { type PictureModel, pictureOf } from '../../../server/src/picture';
import { root, type TestBench } from '../../fixture/bench';

export type Files = Readonly<Record<string, string>>;

const idle = 'void setup() {}\nvoid loop() {}\n';
export const manifest = (title: string, board: string, parts: object, wires: readonly object[]): Files => ({
  'hardware.jsonc': JSON.stringify({ format: 1, title, board, parts, wires }),
  'main.ino': idle,
});
const example = (name: string, ...others: readonly string[]): Files =>
  Object.fromEntries(
    ['hardware.jsonc', `${name}.ino`, ...others].map((file) => [
      file,
      readFileSync(`${root}/hardware-schemas/examples/${name}/${file}`, 'utf8'),
    ]),
  );

/** By the name of the kept file. */
export const builds: Readonly<Record<string, Files>> = {
  'harbour-model': example('harbour-model'),
  'harbour-faulty': example('harbour-faulty'),
  'quay-lamp': example('quay-lamp', 'quay-board.json'),
  // Coil with contacts, transistor, diode across, battery, potentiometer with an end that leads nowhere.
  capstan: manifest(
    'Capstan',
    'uno-r3',
    {
      Q1: { kind: 'npn-transistor' },
      Rb: { kind: 'resistor', value: '1k' },
      pull: { kind: 'relay' },
      D1: { kind: 'diode' },
      drum: { kind: 'dc-motor' },
      cells: { kind: 'battery', volts: '6' },
      speed: { kind: 'potentiometer', value: '10k' },
    },
    [
      { path: ['D5', 'Rb', 'Q1.base'], colours: ['yellow', 'yellow'] },
      { from: 'Q1.emitter', to: 'GND', colour: 'black' },
      { from: 'Q1.collector', to: 'pull.coil-2', colour: 'white' },
      { from: 'pull.coil-1', to: '5V', colour: 'red' },
      { from: 'D1.cathode', to: 'pull.coil-1', colour: 'red' },
      { from: 'D1.anode', to: 'pull.coil-2', colour: 'white' },
      { from: 'cells.+', to: 'pull.common', colour: 'red' },
      { from: 'pull.no', to: 'drum.1', colour: 'blue' },
      { from: 'drum.2', to: 'cells.-', colour: 'black' },
      { from: 'A2', to: 'speed.wiper', colour: 'green/yellow' },
      { from: 'speed.1', to: '5V' },
    ],
  ),
  // A fan of lamps, metal that only joins, wires of striped, unknown and no colour.
  'tide-lights': manifest(
    'Tide lights',
    'nano-v3',
    {
      sea: { kind: 'rgb-led', common: 'cathode' },
      Rr: { kind: 'resistor', value: '330' },
      Rg: { kind: 'resistor', value: '220' },
      Rb: { kind: 'resistor', value: '220' },
      bar: { kind: 'wire-joint' },
      surf: { kind: 'speaker' },
    },
    [
      { path: ['D9', 'Rr', 'sea.red'], colours: ['red', 'red/white'] },
      { path: ['D10', 'Rg', 'sea.green'], colours: ['green', 'seaweed'] },
      { path: ['D11', 'Rb', 'sea.blue'] },
      { from: 'sea.common', to: 'bar.1', colour: 'black' },
      { from: 'bar.2', to: 'GND', colour: 'black' },
      { from: 'surf.2', to: 'bar.3', colour: 'black' },
      { from: 'D3', to: 'surf.1', colour: 'violet' },
    ],
  ),
  // Blocks with many terminals, a bus shared by two parts, a part that nothing leads to.
  'signal-mast': manifest(
    'Signal mast',
    'mega-2560',
    {
      screen: { kind: 'character-lcd' },
      glass: { kind: 'i2c-display' },
      level: { kind: 'i2c-device' },
      spare: { kind: 'led', colour: 'blue' },
    },
    [
      { from: '5V', to: 'screen.+', colour: 'red' },
      { from: 'GND', to: 'screen.-', colour: 'black' },
      { from: 'D30', to: 'screen.register-select', colour: 'violet' },
      { from: 'D31', to: 'screen.enable', colour: 'blue' },
      ...['d4', 'd5', 'd6', 'd7'].map((end, index) => ({
        from: `D${32 + index}`,
        to: `screen.${end}`,
        colour: 'yellow',
      })),
      { from: 'screen.read-write', to: 'screen.-', colour: 'black' },
      { from: 'D20', to: 'glass.sda', colour: 'green' },
      { from: 'D21', to: 'glass.scl', colour: 'white' },
      { from: 'glass.sda', to: 'level.sda', colour: 'green' },
      { from: 'glass.scl', to: 'level.scl', colour: 'white' },
      { from: 'screen.+', to: 'glass.+', colour: 'red' },
      { from: 'screen.-', to: 'glass.-', colour: 'black' },
      { from: 'glass.+', to: 'level.+', colour: 'red' },
      { from: 'glass.-', to: 'level.-', colour: 'black' },
    ],
  ),
  // Names that try to be markup, links, formulas; names too long, of wide signs and of signs no file may hold.
  'hostile-names': manifest(
    '</title><script>alert(1)</script> & "more"',
    'nano-v3',
    {
      '<script>x</script>': { kind: 'led', colour: '"><a href="https://example.org">', purpose: ']]><!--' },
      'javascript:alert(1)': { kind: 'resistor', value: '470' },
      [`${'a very long name '.repeat(8)}`.trim()]: { kind: 'push-button' },
      '浮標灯🚢': { kind: 'led', colour: 'green' },
      'odd\ufffe\ud800\u0001': { kind: 'buzzer' },
    },
    [
      {
        path: ['D7', 'javascript:alert(1)', '<script>x</script>', 'GND'],
        colours: ['"><script>', 'url(#x)', 'red;}'],
      },
      { from: 'D8', to: '浮標灯🚢.anode', colour: 'red' },
      { from: '浮標灯🚢.cathode', to: 'GND', colour: 'black' },
      { from: 'D9', to: `${'a very long name '.repeat(8)}`.trim().concat('.1') },
      { from: 'D10', to: 'odd\ufffe\ud800\u0001.+' },
    ],
  ),
};

export function modelOf(bench: TestBench, files: Files): PictureModel {
  const model = pictureOf(bench.analyse(files));
  if (!model) throw new Error('the manifest gives no build');
  return model;
}

/** A build of about so many wires: lamps with resistors, buttons, and grounds in chains. */
export function wide(wires: number): Files {
  const parts: Record<string, object> = {};
  const list: object[] = [];
  const pins = [
    ...Array.from({ length: 50 }, (_, index) => `D${index + 2}`),
    ...Array.from({ length: 16 }, (_, i) => `A${i}`),
  ];
  for (let index = 0; list.length < wires; index++) {
    const pin = pins[index % pins.length];
    parts[`R${index}`] = { kind: 'resistor', value: '470' };
    parts[`lamp${index}`] = { kind: 'led', colour: 'red' };
    list.push({ from: pin, to: `R${index}.1`, colour: 'red' });
    list.push({ from: `R${index}.2`, to: `lamp${index}.anode`, colour: 'red' });
    const ground = index % 8 === 0 ? 'GND' : `lamp${index - 1}.cathode`;
    list.push({ from: `lamp${index}.cathode`, to: ground, colour: 'black' });
  }
  return manifest('Many wires', 'mega-2560', parts, list);
}
