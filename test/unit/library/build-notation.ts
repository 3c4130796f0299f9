/** Turns the short notation of part-builds.ts into the files of a build. */
import type { PartBuild } from './part-builds';

interface Lines {
  readonly top?: string;
  readonly setup?: string;
  readonly loop?: string;
}

const uses: Readonly<Record<string, (pin: string) => Lines>> = {
  out: (pin) => ({
    setup: `pinMode(${pin}, OUTPUT);`,
    loop: `digitalWrite(${pin}, HIGH); digitalWrite(${pin}, LOW);`,
  }),
  low: (pin) => ({ setup: `pinMode(${pin}, OUTPUT);`, loop: `digitalWrite(${pin}, LOW);` }),
  high: (pin) => ({ setup: `pinMode(${pin}, OUTPUT);`, loop: `digitalWrite(${pin}, HIGH);` }),
  in: (pin) => ({ setup: `pinMode(${pin}, INPUT);`, loop: `if (digitalRead(${pin}) == LOW) delay(1);` }),
  'pull-up': (pin) => ({
    setup: `pinMode(${pin}, INPUT_PULLUP);`,
    loop: `if (digitalRead(${pin}) == LOW) delay(1);`,
  }),
  scan: (pin) => ({ loop: `pinMode(${pin}, OUTPUT); digitalWrite(${pin}, LOW); pinMode(${pin}, INPUT);` }),
  analog: (pin) => ({ loop: `if (analogRead(${pin}) > 500) delay(1);` }),
  pwm: (pin) => ({ setup: `pinMode(${pin}, OUTPUT);`, loop: `analogWrite(${pin}, 128);` }),
  tone: (pin) => ({ loop: `tone(${pin}, 440);` }),
  servo: (pin) => ({
    top: '#include <Servo.h>\nServo arm;',
    setup: `arm.attach(${pin});`,
    loop: 'arm.write(90);',
  }),
  i2c: () => ({ top: '#include <Wire.h>', setup: 'Wire.begin();' }),
  spi: () => ({ top: '#include <SPI.h>', setup: 'SPI.begin();' }),
  serial: () => ({ setup: 'Serial.begin(9600);', loop: 'Serial.println(1);' }),
};

/** The sketch and the manifest of a build on an Uno. */
export function filesOf(build: PartBuild): Record<string, string> {
  const lines = (build.uses ?? []).map((use) => {
    const [word = '', pin = ''] = use.split(' ');
    const make = uses[word];
    if (!make) throw new Error(`no use called ${word}`);
    return make(pin);
  });
  const join = (key: keyof Lines): string => lines.map((one) => one[key] ?? '').join('\n');
  const wires = build.wires.map((wire) => {
    const ends = wire.split(' > ');
    const [from, to] = ends;
    const plain =
      ends.length === 2 && ends.every((end) => end.includes('.') || !Object.hasOwn(build.parts, end));
    return plain ? { from, to } : { path: ends };
  });
  return {
    'sketch.ino': `${join('top')}\nvoid setup() {\n${join('setup')}\n}\nvoid loop() {\n${join('loop')}\n}\n`,
    'hardware.jsonc': JSON.stringify({ format: 1, board: 'uno-r3', parts: build.parts, wires }, null, 2),
  };
}
