struct Motor { byte pwm; byte dir; int speed; };

void begin(const Motor &m) {
  pinMode(m.pwm, OUTPUT);
  pinMode(m.dir, OUTPUT);
}
void setSpeed(Motor *m, int speed) {
  m->speed = constrain(speed, -255, 255);
  digitalWrite(m->dir, m->speed < 0 ? HIGH : LOW);
  analogWrite(m->pwm, abs(m->speed));
}
void nextPin(byte &pin) { pin = pin == 8 ? 12 : 8; }

Motor left = {5, 4, 0};
Motor right = {6, 7, 0};
byte lamp = 8;

void setup() {
  begin(left);
  begin(right);
  pinMode(8, OUTPUT);
  pinMode(12, OUTPUT);
}
void loop() {
  int x = analogRead(A0) - 512;
  setSpeed(&left, x);
  setSpeed(&right, -x);
  digitalWrite(lamp, LOW);
  nextPin(lamp);
  digitalWrite(lamp, HIGH);
  delay(25);
}
