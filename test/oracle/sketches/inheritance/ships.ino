class Device {
  public:
    Device(byte pin) : pin(pin) {}
    virtual void begin() { pinMode(pin, OUTPUT); }
    virtual void act(unsigned long now) = 0;
  protected:
    byte pin;
};
class Blinker : public Device {
  public:
    Blinker(byte pin, int period) : Device(pin), period(period) {}
    void act(unsigned long now) override { digitalWrite(pin, (now / period) & 1); }
  private:
    int period;
};
class Dimmer : public Device {
  public:
    using Device::Device;
    void act(unsigned long now) override { analogWrite(pin, now & 0xFF); }
};
class Follower : public Device {
  public:
    Follower(byte pin, byte input) : Device(pin), input(input) {}
    void begin() override { Device::begin(); pinMode(input, INPUT_PULLUP); }
    void act(unsigned long) override { digitalWrite(pin, digitalRead(input)); }
  private:
    byte input;
};

Blinker mast(4, 20);
Dimmer cabin(5);
Follower deck(7, 2);
Device *all[] = { &mast, &cabin, &deck };

void setup() { for (Device *d : all) d->begin(); }
void loop() {
  unsigned long now = millis();
  for (int i = 0; i < 3; i++) all[i]->act(now);
  delay(3);
}
