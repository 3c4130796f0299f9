// functions and their pins live in the later tab; only what is used here is above
#define HORN 8
void setup() {
  pinMode(HORN, OUTPUT);
  windowsBegin();
}
void loop() {
  windowsShow(0b101);
  digitalWrite(HORN, HIGH);
  delay(5);
  digitalWrite(HORN, LOW);
  windowsShow(0b010);
  delay(5);
}
