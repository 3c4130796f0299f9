struct Lamp {
  uint8_t pin;
  uint8_t more[2];
};
Lamp a = {3, {4, 5}}, b, c = a;
void light(Lamp lamp) {
  lamp.pin = lamp.pin + 1;
  digitalWrite(lamp.pin, HIGH);
}
void setup() {
  b = a;
  a.pin = 6;
  a.more[0] = 7;
  digitalWrite(b.pin, HIGH);
  digitalWrite(c.more[0], HIGH);
  light(a);
  digitalWrite(a.pin, HIGH);
  auto d = a;
  d.pin = 8;
  pinMode(a.pin, OUTPUT);
  pinMode(d.pin, OUTPUT);
  Lamp row[2] = {a, b};
  row[0].pin = 9;
  pinMode(a.pin, OUTPUT);
  for (Lamp one : row) {
    one.more[1] = 12;
    pinMode(one.more[1], OUTPUT);
  }
  digitalWrite(row[0].more[1], HIGH);
}
void loop() {
  Lamp e;
  if (digitalRead(2)) e = a;
  else e = b;
  digitalWrite(e.pin, HIGH);
  delay(5);
  digitalWrite(e.pin, LOW);
}
