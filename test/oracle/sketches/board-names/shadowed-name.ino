// Somebody took a name the core has too.
#define MISO 7
const int lampOnA0 = A0;
#undef SS
#define SS 4
void setup() {
  pinMode(MISO, OUTPUT);
  pinMode(SS, OUTPUT);
  pinMode(lampOnA0, OUTPUT);
}
void loop() {
  digitalWrite(MISO, HIGH);
  digitalWrite(SS, LOW);
  digitalWrite(lampOnA0, HIGH);
  delay(15);
  digitalWrite(MISO, LOW);
  digitalWrite(SS, HIGH);
  digitalWrite(lampOnA0, LOW);
  delay(15);
}
