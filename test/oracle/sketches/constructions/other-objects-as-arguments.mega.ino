class Port { public: Port(uint8_t first) : first(first) {} uint8_t first; };
class Display {
  public:
    Display(Port &port, uint8_t width = 4) : port(port), width(width) {}
    void begin() { for (uint8_t i = 0; i < width; i++) pinMode(port.first + i, OUTPUT); }
    void show(uint8_t v) { for (uint8_t i = 0; i < width; i++) digitalWrite(port.first + i, v >> i & 1); }
  private:
    Port &port;
    uint8_t width;
};
Port a(22), b(30);
Display left(a), right(b, 6);
void setup() { left.begin(); right.begin(); }
void loop() { left.show(millis()); right.show(millis() >> 3); delay(3); }
