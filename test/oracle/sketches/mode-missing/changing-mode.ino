// Capacitance plate on 8: charged as output, read as input.
int count(byte pin) {
  int n = 0;
  pinMode(pin, OUTPUT);
  digitalWrite(pin, LOW);
  delay(1);
  pinMode(pin, INPUT_PULLUP);
  while (!digitalRead(pin) && n < 20) n++;
  pinMode(pin, OUTPUT);
  return n;
}
void setup() { pinMode(3, OUTPUT); }
void loop() {
  analogWrite(3, count(8) * 10);
  delay(3);
}
