class Button {
  public:
    Button(uint8_t pin) : pin(pin) {}
    void begin() { pinMode(pin, INPUT_PULLUP); }
    bool down() const { return digitalRead(pin) == LOW; }
  private:
    uint8_t pin;
};
class Station {
  public:
    Station(uint8_t lamp, uint8_t button) : lamp_(lamp), button_(button) {}
    void begin() { pinMode(lamp_, OUTPUT); button_.begin(); }
    void loop() { digitalWrite(lamp_, button_.down()); }
  private:
    uint8_t lamp_;
    Button button_;
};
Station stations[] = { Station(22, 23), Station(24, 25), Station(A10, A11) };
void setup() { for (Station &s : stations) s.begin(); }
void loop() { for (Station &s : stations) s.loop(); delay(3); }
