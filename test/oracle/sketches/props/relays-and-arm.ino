#include <SoftwareSerial.h>
#include <Servo.h>
/* pins from constants computed of others */
const int BASE = 4;
const int SERVO_PIN = BASE + 5;
const int RX_ = BASE - 2, TX_ = RX_ + 1;
enum { FIRST_RELAY = BASE, SECOND_RELAY, THIRD_RELAY };
const int pinOf[] = { FIRST_RELAY, SECOND_RELAY, THIRD_RELAY };
SoftwareSerial bt = SoftwareSerial(RX_, TX_);
Servo *arm;
char cmd;
int arg;
void setup() {
  bt.begin(9600);
  arm = new Servo();
  arm->attach(SERVO_PIN);
  for (int r = FIRST_RELAY; r <= THIRD_RELAY; r++) { digitalWrite(r, HIGH); pinMode(r, OUTPUT); }
  Serial.begin(9600);
}
void loop() {
  if (Serial.available()) {
    cmd = Serial.read();
    arg = Serial.parseInt();
  }
  switch (cmd) {
    case 'r': case 'R':
      if (arg >= 1 && arg <= 3) digitalWrite(pinOf[arg - 1], cmd == 'R');
      break;
    case 's': arm->write(arg); break;
    case 'x': for (int p : pinOf) digitalWrite(p, HIGH); break;
  }
  cmd = 0;
}
