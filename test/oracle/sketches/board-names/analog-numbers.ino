// The converter takes channels as well as pins.
int sum;
void setup() {
  Serial.begin(57600);
  pinMode(LED_BUILTIN, OUTPUT);
}
void loop() {
  sum = analogRead(0) + analogRead(A1) + analogRead(2);
  for (int channel = 3; channel < 6; channel++) {
    sum += analogRead(channel);
  }
  Serial.println(sum / 6);
  digitalWrite(LED_BUILTIN, sum / 6 > 511);
  delay(100);
}
