class Pin {
  public:
    Pin(int number) : number(number) {}
    int number;
};
class Out : public Pin {
  public:
    Out(int number) : Pin(number) {}
    void begin() { pinMode(number, OUTPUT); }
    void high() { digitalWrite(number, HIGH); }
    void low() { digitalWrite(number, LOW); }
};
class In : public Pin {
  public:
    In(int number) : Pin(number) {}
    void begin() { pinMode(number, INPUT); }
    bool read() { return digitalRead(number); }
};
Out lamp(12);
In key(11);
void setup() { lamp.begin(); key.begin(); }
void loop() { if (key.read()) lamp.high(); else lamp.low(); }
