const byte lamp = 7, oldLamp = 8;
void oldBlink() {
  pinMode(oldLamp, OUTPUT);
  digitalWrite(oldLamp, HIGH);
}
void test(int pin) { digitalWrite(pin, HIGH); oldBlink(); }
void blink() { digitalWrite(lamp, !digitalRead(lamp)); }
void setup() { pinMode(lamp, OUTPUT); }
void loop() { blink(); delay(7); }
