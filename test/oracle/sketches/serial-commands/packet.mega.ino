struct __attribute__((packed)) Frame { uint8_t start, left, right, check; };
const uint8_t leftPwm = 4, rightPwm = 5, ok = 13;
Frame frame;
void setup() {
  Serial.begin(38400);
  pinMode(leftPwm, OUTPUT);
  pinMode(rightPwm, OUTPUT);
  pinMode(ok, OUTPUT);
}
void loop() {
  if (Serial.available() >= (int)sizeof(frame)) {
    Serial.readBytes((char *)&frame, sizeof frame);
    bool good = (uint8_t)(frame.left + frame.right) != frame.check;
    digitalWrite(ok, good);
    if (good) {
      analogWrite(leftPwm, frame.left);
      analogWrite(rightPwm, frame.right);
    }
  }
}
