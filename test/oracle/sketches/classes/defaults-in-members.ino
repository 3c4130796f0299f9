struct Settings {
  byte lamp = 6;
  byte motor = 9;
  byte speed = 120;
};
Settings normal;
Settings quiet = [] { Settings s; s.motor = 10; s.speed = 60; return s; }();
struct Pins { int a = 2, b = a + 1; } pins;

void run(const Settings &s) {
  digitalWrite(s.lamp, HIGH);
  analogWrite(s.motor, s.speed);
  delay(6);
  analogWrite(s.motor, 0);
  digitalWrite(s.lamp, LOW);
}
void setup() {
  pinMode(normal.lamp, OUTPUT);
  pinMode(normal.motor, OUTPUT);
  pinMode(quiet.motor, OUTPUT);
  pinMode(pins.a, INPUT_PULLUP);
  pinMode(pins.b, INPUT_PULLUP);
}
void loop() {
  if (digitalRead(pins.a) == LOW) run(normal);
  if (digitalRead(pins.b) == LOW) run(quiet);
}
