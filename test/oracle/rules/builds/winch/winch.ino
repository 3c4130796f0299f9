// Winch of the salvage barge: a bridge turns the motor both ways, two buttons command it.
class Winch {
 public:
  Winch(byte out, byte in) : outPin(out), inPin(in) {}
  void begin() {
    pinMode(outPin, OUTPUT);
    pinMode(inPin, OUTPUT);
    stop();
  }
  void stop() { set(LOW, LOW); }
  void payOut() { set(HIGH, LOW); }
  void haulIn() { set(LOW, HIGH); }

 private:
  void set(byte a, byte b) {
    digitalWrite(outPin, a);
    digitalWrite(inPin, b);
  }
  byte outPin, inPin;
};

Winch winch(8, 12);
const byte UP = 2, DOWN = 4;

void setup() {
  winch.begin();
  pinMode(UP, INPUT_PULLUP);
  pinMode(DOWN, INPUT_PULLUP);
}

void loop() {
  bool up = !digitalRead(UP);
  bool down = !digitalRead(DOWN);
  if (up && !down) winch.haulIn();
  else if (down && !up) winch.payOut();
  else winch.stop();
}
