// Traffic lights at the swing bridge, as a table of phases.
struct Lamp {
  byte pin;
  bool onInPhase[3];
};

enum Phase { CLOSED, WARNING, OPEN, PHASES };

const Lamp lamps[] = {
  { 4, { true, false, false } },   // red
  { 5, { false, true, false } },   // yellow
  { 6, { false, false, true } },   // green
};
const unsigned long phaseTime[PHASES] = { 4000, 1000, 5000 };
#define CALL_PIN 3

Phase phase = CLOSED;
unsigned long since = 0;

void show() {
  for (const Lamp &lamp : lamps) {
    digitalWrite(lamp.pin, lamp.onInPhase[phase]);
  }
}

void setup() {
  for (const Lamp &lamp : lamps) {
    pinMode(lamp.pin, OUTPUT);
  }
  pinMode(CALL_PIN, INPUT_PULLUP);
  show();
}

void loop() {
  bool called = digitalRead(CALL_PIN) == LOW;
  if (millis() - since > phaseTime[phase] || (phase == CLOSED && called)) {
    since = millis();
    phase = phase == OPEN ? CLOSED : Phase(phase + 1);
    show();
  }
}
