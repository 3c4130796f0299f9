// A macro means what it means where it is used, not where it is defined.
#define FIRST BASE
#define SECOND (BASE + 1)

#define BASE 6
void setup() {
  pinMode(FIRST, OUTPUT);
  pinMode(SECOND, OUTPUT);
  digitalWrite(FIRST, HIGH);
#undef BASE
#define BASE 10
  pinMode(FIRST, OUTPUT);
  pinMode(SECOND, OUTPUT);
  digitalWrite(SECOND, HIGH);
}

void loop() {
  digitalWrite(FIRST, LOW);
  delay(100);
  digitalWrite(FIRST, HIGH);
  delay(100);
}
