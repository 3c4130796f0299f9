// Tram shuttles between two stops, reed contacts, H-bridge
namespace pins {
  constexpr uint8_t in1 = 5, in2 = 6, enable = 9;
  constexpr uint8_t stopA = 2, stopB = 3;
  constexpr uint8_t bell = 11;
  constexpr uint8_t signals[2][3] = {{A0, A1, A2}, {A3, A4, A5}};
}

enum class Drive : uint8_t { Off, Forth, Back };
enum class Aspect : uint8_t { Red, Amber, Green };

static void drive(Drive how) {
  digitalWrite(pins::in1, how == Drive::Forth);
  digitalWrite(pins::in2, how == Drive::Back);
  analogWrite(pins::enable, how == Drive::Off ? 0 : 180);
}

static void show(uint8_t which, Aspect aspect) {
  for (uint8_t lamp = 0; lamp < 3; ++lamp) {
    digitalWrite(pins::signals[which][lamp], lamp == static_cast<uint8_t>(aspect) ? HIGH : LOW);
  }
}

static void ring(unsigned times) {
  for (unsigned i = 0; i < times; ++i) {
    tone(pins::bell, 1800);
    delay(40);
    noTone(pins::bell);
    delay(60);
  }
}

void setup() {
  const uint8_t outputs[] = {pins::in1, pins::in2, pins::enable, pins::bell};
  for (auto pin : outputs) pinMode(pin, OUTPUT);
  for (auto &row : pins::signals)
    for (auto lamp : row) pinMode(lamp, OUTPUT);
  pinMode(pins::stopA, INPUT_PULLUP);
  pinMode(pins::stopB, INPUT_PULLUP);
  show(0, Aspect::Green);
  show(1, Aspect::Red);
  drive(Drive::Forth);
}

void loop() {
  static bool forth = true;
  const auto stop = forth ? pins::stopB : pins::stopA;
  if (digitalRead(stop) == HIGH) return;
  drive(Drive::Off);
  show(forth ? 1 : 0, Aspect::Amber);
  ring(2);
  forth = !forth;
  show(0, forth ? Aspect::Green : Aspect::Red);
  show(1, forth ? Aspect::Red : Aspect::Green);
  drive(forth ? Drive::Forth : Drive::Back);
}
