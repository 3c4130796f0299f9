// Bell buoy: a relay strikes the lamp of the buoy on its own cells.
namespace buoy {
const int relay = 12;
const unsigned long rest = 1800;
const unsigned long strike = 200;
}

void strikeOnce() {
  digitalWrite(buoy::relay, HIGH);
  delay(buoy::strike);
  digitalWrite(buoy::relay, LOW);
}

void setup() {
  pinMode(buoy::relay, OUTPUT);
}

void loop() {
  strikeOnce();
  delay(buoy::rest);
}
