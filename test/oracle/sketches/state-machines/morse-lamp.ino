// The lighthouse sends its name.
const char text[] = "HARBOUR";
const char *const codes[26] = {
  ".-", "-...", "-.-.", "-..", ".", "..-.", "--.", "....", "..", ".---", "-.-", ".-..", "--",
  "-.", "---", ".--.", "--.-", ".-.", "...", "-", "..-", "...-", ".--", "-..-", "-.--", "--.."
};
const int lamp = 13, buzzer = 11, unit = 6;

void sign(int units) {
  digitalWrite(lamp, HIGH);
  tone(buzzer, 700);
  delay(units * unit);
  digitalWrite(lamp, LOW);
  noTone(buzzer);
  delay(unit);
}
void setup() {
  pinMode(lamp, OUTPUT);
  pinMode(buzzer, OUTPUT);
}
void loop() {
  for (const char *c = text; *c; c++) {
    for (const char *s = codes[*c - 'A']; *s; s++) sign(*s == '-' ? 3 : 1);
    delay(2 * unit);
  }
  delay(6 * unit);
}
