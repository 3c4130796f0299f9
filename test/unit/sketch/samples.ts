/** Whole sketches in several hands, for what must hold of every text. */
export const samples: readonly string[] = [
  `#define LAMP 7
const byte button = 2;
int horn = A3;
void setup() {
  pinMode(LAMP, OUTPUT);
  pinMode(button, INPUT_PULLUP);
  digitalWrite(horn, LOW);
}
void loop() {
  if (digitalRead(button) == LOW) {
    digitalWrite(LAMP, HIGH);
    tone(horn, 440);
  } else {
    digitalWrite(LAMP, LOW);
    noTone(horn);
  }
}
`,
  `#include <Servo.h>
enum Pins { DOOR = 9, HATCH };
const int row[] = {3, 5, 6};
Servo door, hatch;
static void all(int level) {
  for (unsigned i = 0; i < sizeof(row) / sizeof(row[0]); i++) digitalWrite(row[i], level);
}
void setup()
{
\tdoor.attach(DOOR);
\thatch.attach(HATCH);
\tfor (int pin : row) pinMode(pin, OUTPUT);
}
void loop()
{
\tall(HIGH);
\tdelay(500);
\tall(LOW);
\tanalogWrite(row[random(3)], analogRead(A0) / 4);
}
`,
  `class Probe {
public:
  Probe(byte pin) : pin_(pin) {}
  void begin() { pinMode(pin_, INPUT); }
  int read() const { return analogRead(pin_); }
private:
  const byte pin_;
};
Probe left(A0), right(A1);
volatile bool tripped = false;
void onTrip() { tripped = true; }
void setup() {
  left.begin();
  right.begin();
  attachInterrupt(digitalPinToInterrupt(3), onTrip, RISING);
}
void loop() {
  if (tripped || left.read() > right.read()) digitalWrite(LED_BUILTIN, HIGH);
}
`,
  '\uFEFFvoid setup() {}\r\n#ifdef __AVR__\r\n#define P 4\r\n#else\r\n#define P 5\r\n#endif\r\nvoid loop() { /* 漢字 \u{1F4A1} */ digitalWrite(P, HIGH); }\r\n',
  `const PROGMEM byte table[] = {2, 3, 4};
#define PUT(pin, level) do { digitalWrite(pin, level); } while (0)
byte at = 0;
void setup() { for (byte i = 0; i < 3; i++) pinMode(pgm_read_byte(table + i), OUTPUT); }
void loop() {
  switch (at) {
    case 0: PUT(2, HIGH); at = 1; break;
    case 1: PUT(3, HIGH); at = 2; break;
    default: PUT(4, HIGH); at = 0;
  }
  while (!digitalRead(8)) { if (millis() > 1000) return; }
}
`,
];
