const int keyPin = 7;
const int lampPin = 12;
int lampLevel = LOW;
int stable = HIGH, lastRead = HIGH;
unsigned long changedAt = 0;
const unsigned long settle = 5;

void setup() {
  pinMode(keyPin, INPUT_PULLUP);
  pinMode(lampPin, OUTPUT);
  digitalWrite(lampPin, lampLevel);
}
void loop() {
  int reading = digitalRead(keyPin);
  if (reading != lastRead) changedAt = millis();
  lastRead = reading;
  if (millis() - changedAt > settle && reading != stable) {
    stable = reading;
    if (stable == LOW) lampLevel = lampLevel == LOW ? HIGH : LOW;
  }
  digitalWrite(lampPin, lampLevel);
}
