namespace panel {
  const byte lamp = 6;
  namespace keys {
    const byte up = 2;
    const byte down = 3;
  }
  void begin() {
    pinMode(lamp, OUTPUT);
    pinMode(keys::up, INPUT_PULLUP);
    pinMode(keys::down, INPUT_PULLUP);
  }
}

namespace lift {
  const byte lamp = 9;       // same name, another pin
  byte motor = 5;
  void run(bool on) {
    digitalWrite(motor, on);
    digitalWrite(lamp, on);
    digitalWrite(panel::lamp, !on);
  }
}

using namespace panel::keys;

void setup() {
  panel::begin();
  pinMode(lift::lamp, OUTPUT);
  pinMode(lift::motor, OUTPUT);
}

void loop() {
  lift::run(digitalRead(up) == LOW || digitalRead(panel::keys::down) == LOW);
  delay(10);
}
