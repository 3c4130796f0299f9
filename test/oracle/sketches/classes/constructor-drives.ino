class Output {
  public:
    explicit Output(uint8_t pin) : pin_(pin) { pinMode(pin_, OUTPUT); }
    void write(bool level) { digitalWrite(pin_, level); }
    Output &pulse(unsigned ms) { write(true); delay(ms); write(false); return *this; }
  private:
    const uint8_t pin_;
};

Output bell(8);
Output lamp{9};
static Output horn = Output(10);

void setup() {}

void loop() {
  bell.pulse(3);
  lamp.pulse(5).pulse(5);
  horn.write(true);
  delay(2);
  horn.write(false);
}
