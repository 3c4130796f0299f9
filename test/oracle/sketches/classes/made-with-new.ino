class Light {
  public:
    Light(int pin) : pin(pin) { pinMode(pin, OUTPUT); }
    void toggle() { on = !on; digitalWrite(pin, on); }
  private:
    int pin;
    bool on = false;
};
Light *a;
Light *b;
void setup() {
  a = new Light(5);
  b = new Light(6);
}
void loop() {
  a->toggle();
  delay(7);
  b->toggle();
}
