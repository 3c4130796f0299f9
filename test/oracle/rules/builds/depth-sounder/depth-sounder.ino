// Depth sounder: the echo comes back at 5 V and is divided for the chip.
const int trigPin = 18;
const int echoPin = 19;
const int shallowLamp = 21;

long measure() {
  digitalWrite(trigPin, LOW);
  delayMicroseconds(2);
  digitalWrite(trigPin, HIGH);
  delayMicroseconds(10);
  digitalWrite(trigPin, LOW);
  return pulseIn(echoPin, HIGH, 30000) / 58;
}

void setup() {
  pinMode(trigPin, OUTPUT);
  pinMode(echoPin, INPUT);
  pinMode(shallowLamp, OUTPUT);
}

void loop() {
  long depth = measure();
  digitalWrite(shallowLamp, depth > 0 && depth < 20);
  delay(60);
}
