class Lamp {
    byte pin;
    bool inverted;
  public:
    void begin(byte aPin, bool isInverted = false) {
      pin = aPin;
      inverted = isInverted;
      pinMode(pin, OUTPUT);
      off();
    }
    void on()  { digitalWrite(pin, inverted ? LOW : HIGH); }
    void off() { digitalWrite(pin, inverted ? HIGH : LOW); }
};

Lamp red, green, relay;

void setup() {
  red.begin(3);
  green.begin(4);
  relay.begin(A2, true);
}

void loop() {
  red.on(); green.off(); relay.on();
  delay(30);
  red.off(); green.on(); relay.off();
  delay(30);
}
