constexpr uint8_t relay(uint8_t n) { return n < 4 ? n + 4 : n + 6; }
constexpr uint8_t mid(uint8_t a, uint8_t b) { return (a + b) / 2; }
const uint8_t pump = relay(2), fan = relay(5), lamp = mid(relay(0), relay(2));
void setup() {
  pinMode(pump, OUTPUT); pinMode(fan, OUTPUT); pinMode(lamp, OUTPUT);
  pinMode(relay(1) + relay(1) - 1, OUTPUT);
}
void loop() {
  digitalWrite(pump, HIGH); digitalWrite(fan, LOW); digitalWrite(lamp, HIGH);
  digitalWrite(9, LOW);
  delay(9);
  digitalWrite(pump, LOW); digitalWrite(fan, HIGH); digitalWrite(lamp, LOW);
  digitalWrite(9, HIGH);
  delay(9);
}
