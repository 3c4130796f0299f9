// Marble run, exhibit 4. Gates by servo, counter by light barrier, score by lamps.
#include <Servo.h>

#define GATE_PIN     9
#define BARRIER_PIN  2
#define RESET_KEY    A0
#define LAMP_COUNT   4

const byte lampPins[LAMP_COUNT] = {4, 5, 6, 7};
Servo gate;

volatile byte marbles = 0;
bool gateOpen = false;
unsigned long gateSince = 0;

struct Rhythm {
  unsigned int openMs;
  unsigned int closedMs;
} rhythm = {30, 50};

void onMarble() {
  if (marbles < LAMP_COUNT) marbles++;
}

void moveGate(bool open) {
  gateOpen = open;
  gateSince = millis();
  gate.write(open ? 120 : 30);
}

void showScore() {
  for (byte i = 0; i < LAMP_COUNT; i++) {
    digitalWrite(lampPins[i], i < marbles ? HIGH : LOW);
  }
}

void setup() {
  Serial.begin(9600);
  gate.attach(GATE_PIN);
  moveGate(false);
  for (byte i = 0; i < LAMP_COUNT; i++) pinMode(lampPins[i], OUTPUT);
  pinMode(BARRIER_PIN, INPUT_PULLUP);
  pinMode(RESET_KEY, INPUT_PULLUP);
  attachInterrupt(digitalPinToInterrupt(BARRIER_PIN), onMarble, FALLING);
}

void loop() {
  unsigned int wait = gateOpen ? rhythm.openMs : rhythm.closedMs;
  if (millis() - gateSince > wait) moveGate(!gateOpen);
  if (digitalRead(RESET_KEY) == LOW) {
    noInterrupts();
    marbles = 0;
    interrupts();
    Serial.println(F("score cleared"));
  }
  showScore();
}
