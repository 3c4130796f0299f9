const bool mirrored = true;
const byte leftLamp = mirrored ? 8 : 7;
const byte rightLamp = mirrored ? 7 : 8;
int count;
void setup() {
  pinMode(leftLamp, OUTPUT);
  pinMode(rightLamp, OUTPUT);
  pinMode(analogRead(A0) > 512 ? 4 : 5, OUTPUT);
}
void loop() {
  count++;
  digitalWrite(count % 2 ? leftLamp : rightLamp, HIGH);
  digitalWrite(count % 2 ? rightLamp : leftLamp, LOW);
  digitalWrite(count % 3 == 0 ? 4 : count % 3 == 1 ? 5 : 6, count & 4 ? HIGH : LOW);
  delay(6);
}
