// Harbour model after a busy weekend: a dozen faults are planted here and in hardware.jsonc beside it.
#include <Servo.h>

#define GATE_PIN 9

const byte beacon = 7;
const byte horn = 8;
const byte fogLamp = 12;      // added in the code, never in the wiring
const byte pierLamp = 5;
const byte gateLamp = 10;
const byte callButton = 2;
const byte gateSwitch = 3;
const byte tide = A0;
const int restartLamp = 4;
const int spare[] = {24};     // the board ends before this number

Servo gate;

void setLamp(byte pin, bool on) {
  digitalWrite(pin, on ? HIGH : LOW);
}

void setup() {
  pinMode(beacon, OUTPUT);
  pinMode(horn, OUTPUT);
  pinMode(fogLamp, OUTPUT);
  pinMode(pierLamp, OUTPUT);
  pinMode(restartLamp, OUTPUT);
  pinMode(callButton, OUTPUT);
  digitalWrite(callButton, HIGH);
  pinMode(gateSwitch, INPUT);
  pinMode(spare[0], OUTPUT);
  gate.attach(GATE_PIN);
  setLamp(restartLamp, true);
}

void loop() {
  int level = analogRead(tide);
  analogWrite(beacon, level / 4);
  setLamp(fogLamp, level > 600);
  setLamp(pierLamp, level > 300);
  digitalWrite(gateLamp, level > 600);
  if (digitalRead(gateSwitch) == LOW) {
    tone(horn, 440, 300);
    gate.write(10);
  }
  delay(50);
}
