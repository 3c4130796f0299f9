namespace pins { constexpr int horn = 4, light = 5; enum { DOOR = 7 }; }
using pins::horn;
namespace p = pins;

void setup() {
  pinMode(horn, OUTPUT);
  pinMode(p::light, OUTPUT);
  pinMode(pins::DOOR, OUTPUT);
}
void loop() {
  using namespace pins;
  digitalWrite(horn, HIGH);
  digitalWrite(light, LOW);
  digitalWrite(DOOR, HIGH);
  delay(20);
  digitalWrite(horn, LOW);
  digitalWrite(light, HIGH);
  digitalWrite(DOOR, LOW);
  delay(20);
}
