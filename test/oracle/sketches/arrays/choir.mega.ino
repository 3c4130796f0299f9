struct Voice { byte speaker, lamp; unsigned int hertz; };
const Voice choir[] = {
  {22, 30, 131}, {23, 31, 165}, {24, 32, 196}, {25, 33, 262},
  {26, 34, 330}, {27, 35, 392}, {28, 36, 523}, {29, 37, 659},
};
#define VOICES (int)(sizeof(choir) / sizeof(Voice))

void setup() {
  for (int v = 0; v < VOICES; v++) {
    pinMode(choir[v].speaker, OUTPUT);
    pinMode(choir[v].lamp, OUTPUT);
  }
}

void sing(const Voice &voice, unsigned long ms) {
  unsigned long half = 500000UL / voice.hertz;
  digitalWrite(voice.lamp, HIGH);
  for (unsigned long end = millis() + ms; millis() < end; ) {
    digitalWrite(voice.speaker, HIGH);
    delayMicroseconds(half);
    digitalWrite(voice.speaker, LOW);
    delayMicroseconds(half);
  }
  digitalWrite(voice.lamp, LOW);
}

void loop() {
  for (int v = 0; v < VOICES; v++) sing(choir[v], 8);
}
