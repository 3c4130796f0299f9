// Unipolar stepper without a library, for the clock face in the window.
const int coil1 = 8;
const int coil2 = coil1 + 1;
const int coil3 = coil1 + 2;
const int coil4 = coil1 + 3;
const int pace = 3;  // ms

void setup() {
  pinMode(coil1, OUTPUT);
  pinMode(coil2, OUTPUT);
  pinMode(coil3, OUTPUT);
  pinMode(coil4, OUTPUT);
}

void step(int a, int b, int c, int d) {
  digitalWrite(coil1, a);
  digitalWrite(coil2, b);
  digitalWrite(coil3, c);
  digitalWrite(coil4, d);
  delay(pace);
}

void loop() {
  step(HIGH, LOW, LOW, LOW);
  step(LOW, HIGH, LOW, LOW);
  step(LOW, LOW, HIGH, LOW);
  step(LOW, LOW, LOW, HIGH);
}
