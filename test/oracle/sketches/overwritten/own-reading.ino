// A beginner's slip that the compiler lets pass: the pin's variable takes the reading.
int button = 4;
int lamp = 9;
void setup() {
  pinMode(button, INPUT_PULLUP);
  pinMode(lamp, OUTPUT);
}
void loop() {
  button = digitalRead(button);
  if (button == HIGH) digitalWrite(lamp, HIGH);
  else digitalWrite(lamp, LOW);
  delay(5);
}
