// Harbour model: the beacon and the gate follow the tide, the horn warns when the gate moves.
// The restart button stands on the reset line, its lamp shows that the model is running.
#include <Servo.h>

#define GATE_PIN 9

const byte beacon = 7;
const byte horn = 8;
const byte tide = A0;
const int restartLamp = 4;

const int highWater = 600;   // counts of the converter, of 1023
const int gateOpen = 95;     // degrees
const int gateShut = 10;

Servo gate;
bool wasHigh = false;

void setLamp(byte pin, bool on) {
  digitalWrite(pin, on ? HIGH : LOW);
}

void moveGate(bool shut) {
  tone(horn, 440, 300);
  delay(350);
  gate.write(shut ? gateShut : gateOpen);
}

void setup() {
  pinMode(beacon, OUTPUT);
  pinMode(horn, OUTPUT);
  pinMode(restartLamp, OUTPUT);
  gate.attach(GATE_PIN);
  gate.write(gateOpen);
  setLamp(restartLamp, true);
}

void loop() {
  bool isHigh = analogRead(tide) > highWater;
  setLamp(beacon, isHigh);
  if (isHigh != wasHigh) {
    moveGate(isHigh);
    wasHigh = isHigh;
  }
  delay(50);
}
