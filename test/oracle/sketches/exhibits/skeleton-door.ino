#include <Servo.h>

Servo door;
Servo jaw;

#define DOOR_PIN 9
#define JAW_PIN 10
#define PIR_PIN 2
#define EYES_PIN 6
#define STROBE_PIN A1

bool open_ = false;
long lastSeen = 0;

void setup() {
  door.attach(DOOR_PIN);
  jaw.attach(JAW_PIN);
  pinMode(PIR_PIN, INPUT);
  pinMode(EYES_PIN, OUTPUT);
  pinMode(STROBE_PIN, OUTPUT);
  door.write(0);
}

void chatter(int times) {
  while (times-- > 0) {
    jaw.write(40);
    digitalWrite(STROBE_PIN, !digitalRead(STROBE_PIN));
    delay(80);
    jaw.write(0);
    delay(60);
  }
}

void loop() {
  bool seen = digitalRead(PIR_PIN);
  if (seen) lastSeen = millis();
  if (seen && !open_) {
    open_ = true;
    door.write(90);
    for (int v = 0; v <= 255; v += 5) analogWrite(EYES_PIN, v);
    chatter(3);
  } else if (!seen && open_ && millis() - lastSeen > 200) {
    open_ = false;
    door.write(0);
    analogWrite(EYES_PIN, 0);
    digitalWrite(STROBE_PIN, LOW);
  }
}
