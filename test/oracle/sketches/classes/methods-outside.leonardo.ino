class Gate {
  public:
    Gate(byte open, byte close, byte eye);
    void begin();
    void update();
  private:
    void drive(bool opening, bool closing);
    byte openPin, closePin, eyePin;
};

Gate gate(5, 6, A0);

void setup() { gate.begin(); }
void loop() { gate.update(); delay(4); }

Gate::Gate(byte open, byte close, byte eye) {
  openPin = open;
  closePin = close;
  this->eyePin = eye;
}
void Gate::begin() {
  pinMode(openPin, OUTPUT);
  pinMode(closePin, OUTPUT);
}
void Gate::update() {
  int eye = analogRead(eyePin);
  drive(eye > 600, eye < 300);
}
void Gate::drive(bool opening, bool closing) {
  digitalWrite(openPin, opening);
  digitalWrite(this->closePin, closing);
}
