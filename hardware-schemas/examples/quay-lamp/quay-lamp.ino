// Quay lamp: shines while the model runs; the restart button stands on the reset line.
#define LAMP_PIN 10

void setup() {
  pinMode(LAMP_PIN, OUTPUT);
}

void loop() {
  digitalWrite(LAMP_PIN, HIGH);
  delay(800);
  digitalWrite(LAMP_PIN, LOW);
  delay(200);
}
