template <class T, int N>
class Row {
  public:
    Row(const int (&pins)[N]) { for (int i = 0; i < N; i++) items[i].attach(pins[i]); }
    void all(bool v) { for (int i = 0; i < N; i++) items[i].set(v); }
  private:
    T items[N];
};
class Lamp {
  public:
    void attach(int p) { pin = p; pinMode(pin, OUTPUT); }
    void set(bool v) { digitalWrite(pin, v); }
  private:
    int pin;
};
const int pins[] = {4, 7, 8};
Row<Lamp, 3> row(pins);
void setup() {}
void loop() {
  row.all(true);
  delay(8);
  row.all(false);
  delay(8);
}
