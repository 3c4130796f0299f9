const byte heater = 6;
void heat(int how) {
  if (how < 0) { pinMode(heater, OUTPUT); digitalWrite(heater, LOW); }
  else if (how > 0) { pinMode(heater, OUTPUT); digitalWrite(heater, HIGH); }
  else { pinMode(heater, INPUT); }
}
void setup() { heat(0); }
void loop() { heat(map(analogRead(A0), 0, 1023, -1, 2)); delay(4); }
