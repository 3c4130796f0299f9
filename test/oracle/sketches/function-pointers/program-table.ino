typedef void (*Program)();

void lighthouse() { digitalWrite(4, HIGH); delay(8); digitalWrite(4, LOW); delay(8); }
void foghorn() { digitalWrite(5, HIGH); delay(4); digitalWrite(5, LOW); delay(4); }
void market() { digitalWrite(6, !digitalRead(6)); delay(10); }
void unusedProgram() { digitalWrite(12, HIGH); }

Program programs[] = { lighthouse, foghorn, market };
byte current = 0;

void setup() {
  pinMode(4, OUTPUT);
  pinMode(5, OUTPUT);
  pinMode(6, OUTPUT);
  pinMode(2, INPUT_PULLUP);
}
void loop() {
  programs[current]();
  if (digitalRead(2) == LOW) current = (current + 1) % 3;
}
