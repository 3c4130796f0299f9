class Probe {
  public:
    Probe(byte pin, byte kind) : pin(pin), kind(kind) {}
    void begin() { if (kind == 1) pinMode(pin, INPUT_PULLUP); else pinMode(pin, OUTPUT); }
    bool on() { return digitalRead(pin); }
    void set(bool v) { digitalWrite(pin, v); }
  private:
    byte pin, kind;
};
#define KEY 4
#define LAMP 9
const byte IN = 1, OUT = 2;
Probe key(KEY, IN);
Probe lamp(LAMP, OUT);
void setup() { key.begin(); lamp.begin(); }
void loop() { lamp.set(!key.on()); delay(3); }
