void allTo(const byte pins[], byte count, byte level) {
  for (byte i = 0; i < count; i++) digitalWrite(pins[i], level);
}

void makeOutputs(const byte *pins, byte count) {
  while (count--) pinMode(*pins++, OUTPUT);
}

const byte left[] = {2, 3, 4};
const byte right[] = {8, 9, 10, 11};

void setup() {
  makeOutputs(left, sizeof(left));
  makeOutputs(right, sizeof(right));
}

void loop() {
  allTo(left, 3, HIGH);
  allTo(right, 4, LOW);
  delay(30);
  allTo(left, 3, LOW);
  allTo(right, 4, HIGH);
  delay(30);
}
