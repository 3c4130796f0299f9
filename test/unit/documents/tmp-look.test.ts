import { writeFileSync } from 'node:fs';
import { it } from 'vitest';
import { openTestBench } from '../../fixture/bench';
import * as d from '../../../server/src/documents';
it('looks', async () => {
  const bench = await openTestBench();
  const manifest = { board: 'uno-r3', title: 'Pump rig', revision: 'C', wire: { gauge: 'AWG 24', slack: '15%' },
    parts: {
      pump: { kind: 'dc-motor', purpose: 'lifts water', mount: 'cable tie to the tank', subassembly: 'pump' },
      Q1: { kind: 'npn-transistor', type: '2n2222', subassembly: 'pump' }, RB: { kind: 'resistor', value: '1k', subassembly: 'pump' }, D1: { kind: 'diode', subassembly: 'pump' },
      sel: { kind: 'toggle-switch', purpose: 'manual or automatic' },
      relay: { kind: 'relay-module', purpose: 'switches the valve' },
      ntc: { kind: 'thermistor', value: '10k' }, RN: { kind: 'resistor', value: '10k' },
      eye: { kind: 'i2c-display', purpose: 'shows the level' },
      rgb: { kind: 'rgb-led' }, RR: { kind: 'resistor', value: '330' }, RG: { kind: 'resistor', value: '330' }, RBl: { kind: 'resistor', value: '270' },
      C1: { kind: 'electrolytic-capacitor', value: '470 µF' },
    },
    wires: [
      { path: ['D9', 'RB', 'Q1.base'], colours: ['yellow', 'yellow'], lengths: ['8 cm', '3 cm'] },
      { from: 'Q1.emitter', to: 'GND', colour: 'black', length: '8 cm' }, { from: 'Q1.collector', to: 'pump.-', colour: 'blue', length: '12 cm' },
      { from: '5V', to: 'pump.+', colour: 'red', length: '12 cm', gauge: '0.5 mm2' }, { path: ['pump.-', 'D1', 'pump.+'] },
      { from: 'D4', to: 'sel.1', colour: 'white' }, { from: 'sel.2', to: 'GND' },
      { from: 'D5', to: 'relay.in' }, { from: '5V', to: 'relay.+' }, { from: 'GND', to: 'relay.-' },
      { path: ['5V', 'ntc', 'A0'] }, { path: ['A0', 'RN', 'GND'] },
      { from: 'A4', to: 'eye.sda' }, { from: 'A5', to: 'eye.scl' }, { from: 'relay.+', to: 'eye.+' }, { from: 'relay.-', to: 'eye.-' },
      { path: ['D10', 'RR', 'rgb.red'] }, { path: ['D11', 'RG', 'rgb.green'] }, { path: ['D6', 'RBl', 'rgb.blue'] }, { from: 'rgb.cathode', to: 'relay.-' },
      { from: 'C1.+', to: 'relay.+' }, { from: 'C1.-', to: 'relay.-' },
    ] };
  const ino = '#include <Wire.h>\nvoid setup(){ pinMode(9,OUTPUT); pinMode(5,OUTPUT); pinMode(4,INPUT_PULLUP); Wire.begin(); }\nvoid loop(){ digitalWrite(9, analogRead(A0)>500); digitalWrite(5, digitalRead(4)); analogWrite(10, 30); analogWrite(11, 99); analogWrite(6, 200); }\n';
  const s = bench.analyse({ 'hardware.jsonc': JSON.stringify(manifest), 'rig.ino': ino });
  console.log(s.findings.map(f => `${f.severity} ${f.rule}: ${f.message}`).join('\n'));
  const input = d.gatherPaperInput(s, [{ file: 'rig.ino', text: ino }])!;
  for (const p of [d.hookupPaper(input.build), d.partsPaper(input), d.guidePaper(input), d.testsPaper(input)]) writeFileSync(`/tmp/papers/rig-${p.id}.md`, d.writeMarkdown(p));
});
