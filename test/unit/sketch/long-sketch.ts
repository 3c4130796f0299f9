/** A long sketch of the kinds of code that sketches are made of, for timing, memory and random edits. */
export function longSketch(lines: number): string {
  const parts: string[] = ['// a long sketch\n#include <Servo.h>\n', '#define SPEED 9600\n'];
  const setup: string[] = [];
  const loop: string[] = [];
  let count = 4;
  for (let block = 0; count < lines - 12; block += 1) {
    const pin = 2 + (block % 18);
    const text = `
/* Station ${block}: a lamp, a button and a row of valves. */
#define LAMP_${block} ${pin}
const byte button${block} = ${2 + ((block * 5) % 18)};
const int valves${block}[] = {${pin}, ${2 + ((block + 3) % 18)}, ${2 + ((block + 7) % 18)}};
int level${block} = 0;
unsigned long last${block} = 0;

void begin${block}() {
  pinMode(LAMP_${block}, OUTPUT);
  pinMode(button${block}, INPUT_PULLUP);
  for (unsigned i = 0; i < sizeof(valves${block}) / sizeof(valves${block}[0]); i++) {
    pinMode(valves${block}[i], OUTPUT);
  }
}

void serve${block}(bool armed) {
  if (digitalRead(button${block}) == LOW && armed) {
    level${block} = (level${block} + 1) % 3;
    digitalWrite(valves${block}[level${block}], HIGH);
  } else {
    digitalWrite(LAMP_${block}, millis() - last${block} > 500 ? HIGH : LOW);
  }
  switch (level${block}) {
    case 0:
      last${block} = millis();
      break;
    default:
      Serial.println(level${block});
  }
}
`;
    parts.push(text);
    setup.push(`  begin${block}();\n`);
    loop.push(`  serve${block}(${block % 2 === 0 ? 'true' : 'false'});\n`);
    count += text.split('\n').length + 1;
  }
  parts.push(`\nvoid setup() {\n  Serial.begin(SPEED);\n${setup.join('')}}\n`);
  parts.push(`\nvoid loop() {\n${loop.join('')}  delay(10);\n}\n`);
  return parts.join('');
}
