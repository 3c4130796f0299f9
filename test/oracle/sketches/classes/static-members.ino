class Bus {
  public:
    static const uint8_t clock = 12;
    static uint8_t data;
    static void begin() { pinMode(clock, OUTPUT); pinMode(data, OUTPUT); }
    static void send(uint8_t v) { shiftOut(data, clock, LSBFIRST, v); }
};
uint8_t Bus::data = 11;
void setup() { Bus::begin(); }
void loop() {
  for (uint8_t v = 1; v; v <<= 1) {
    Bus::send(v);
    delay(2);
  }
}
