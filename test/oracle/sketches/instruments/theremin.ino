// Two distance sensors, one for pitch, one for volume
struct Ranger {
  byte trigger;
  byte echo;
};

const Ranger pitchSensor = {7, 8};
const Ranger volumeSensor = {12, 13};
const byte speaker = 9;
const byte volumePin = 10;

long measure(const Ranger &r) {
  digitalWrite(r.trigger, LOW);
  delayMicroseconds(2);
  digitalWrite(r.trigger, HIGH);
  delayMicroseconds(10);
  digitalWrite(r.trigger, LOW);
  return pulseIn(r.echo, HIGH, 3000) / 58;
}

void prepare(Ranger r) {
  pinMode(r.trigger, OUTPUT);
  pinMode(r.echo, INPUT);
}

void setup() {
  prepare(pitchSensor);
  prepare(volumeSensor);
  pinMode(speaker, OUTPUT);
  pinMode(volumePin, OUTPUT);
}

void loop() {
  long p = measure(pitchSensor);
  long v = measure(volumeSensor);
  if (p > 0 && p < 60) tone(speaker, 200 + p * 20);
  else noTone(speaker);
  analogWrite(volumePin, constrain(v * 4, 0, 255));
}
