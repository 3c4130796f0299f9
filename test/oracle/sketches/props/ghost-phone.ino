#include <SoftwareSerial.h>

const byte RX_PIN = 10, TX_PIN = 11;
const byte HOOK = 2, DIAL = 3, RINGER_A = 5, RINGER_B = 6;
SoftwareSerial player(RX_PIN, TX_PIN);

volatile byte pulses = 0;
void countPulse() { pulses++; }

void playTrack(byte n) {
  byte frame[] = {0x7E, 0xFF, 0x06, 0x03, 0x00, 0x00, n, 0xEF};
  player.write(frame, sizeof(frame));
}

void ring(int cycles) {
  for (int i = 0; i < cycles; i++) {
    digitalWrite(RINGER_A, i % 2);
    digitalWrite(RINGER_B, !(i % 2));
    delay(25);
    if (digitalRead(HOOK) == HIGH) break;
  }
  digitalWrite(RINGER_A, 0);
  digitalWrite(RINGER_B, 0);
}

void setup() {
  pinMode(HOOK, INPUT_PULLUP);
  pinMode(DIAL, INPUT_PULLUP);
  pinMode(RINGER_A, OUTPUT);
  pinMode(RINGER_B, OUTPUT);
  attachInterrupt(digitalPinToInterrupt(DIAL), countPulse, FALLING);
  player.begin(9600);
}

void loop() {
  if (digitalRead(HOOK)) {
    playTrack(1);
    byte seen;
    noInterrupts();
    seen = pulses;
    pulses = 0;
    interrupts();
    if (seen > 0) playTrack(seen + 1);
  } else {
    ring(20);
    delay(500);
  }
}
