const byte bars[] = {A0, A1, A2, A3, A4, A5, A6, A7};
void setup() {
  for (byte i = 0; i < 8; i++) pinMode(bars[i], OUTPUT);
  pinMode(SS, OUTPUT);
  pinMode(LED_BUILTIN, OUTPUT);
  pinMode(A15, INPUT_PULLUP);
  pinMode(SDA, INPUT_PULLUP);
  pinMode(SCL, INPUT_PULLUP);
}
void loop() {
  byte n = analogRead(A8) / 114;
  for (byte i = 0; i < 8; i++) digitalWrite(bars[i], i < n);
  digitalWrite(SS, digitalRead(SDA));
  digitalWrite(LED_BUILTIN, digitalRead(A15) && digitalRead(SCL));
  delay(10);
}
