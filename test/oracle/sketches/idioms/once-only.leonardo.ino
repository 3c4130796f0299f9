bool first = true;
static int calls;
void loop() {
  if (first) {
    first = false;
    pinMode(5, OUTPUT);
    digitalWrite(5, HIGH);
  }
  if (++calls > 3) {
    digitalWrite(6, HIGH);
  }
  delay(3);
}
void setup() { pinMode(6, OUTPUT); }
