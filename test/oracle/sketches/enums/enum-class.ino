enum class Pin : uint8_t { Pump = 7, Valve = 8, Level = A0 };

inline void out(Pin p) { pinMode(static_cast<uint8_t>(p), OUTPUT); }
inline void set(Pin p, bool on) { digitalWrite((uint8_t)p, on ? HIGH : LOW); }

void setup() {
  out(Pin::Pump);
  out(Pin::Valve);
}

void loop() {
  const int level = analogRead(uint8_t(Pin::Level));
  set(Pin::Pump, level < 300);
  set(Pin::Valve, level > 700);
  delay(20);
}
