// The bolt is drawn for two seconds: it would get hot for longer.
void openBolt() {
  digitalWrite(bolt, HIGH);
  delay(2000);
  digitalWrite(bolt, LOW);
}
