void engineBegin() {
  pinMode(enginePwm, OUTPUT);
  pinMode(engineDir, OUTPUT);
}
void engineRun(int speed) {
  digitalWrite(engineDir, speed < 0);
  analogWrite(enginePwm, speed < 0 ? -speed : speed);
}
