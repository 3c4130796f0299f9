#define sunPin 9
#define moonPin 10
#define streetPin 8
#define potPin A3
#define threshold 400

int light;
int fade;

void setup() {
  pinMode(sunPin, OUTPUT);
  pinMode(moonPin, OUTPUT);
  pinMode(streetPin, OUTPUT);
}

void loop() {
  light = analogRead(potPin);
  fade = map(light, 0, 1023, 0, 255);
  analogWrite(sunPin, fade);
  analogWrite(moonPin, 255 - fade);
  if (light < threshold) {
    digitalWrite(streetPin, HIGH);
  } else {
    digitalWrite(streetPin, LOW);
  }
  delay(30);
}
