// Each object puts itself into a list when it is made
class Button {
  static Button *head;
  Button *next;
  int pin, led;
public:
  Button(int p, int l) : pin(p), led(l) { next = head; head = this; }
  static void beginAll() {
    for (Button *b = head; b != nullptr; b = b->next) {
      pinMode(b->pin, INPUT_PULLUP);
      pinMode(b->led, OUTPUT);
    }
  }
  static void pollAll() {
    for (Button *b = head; b; b = b->next) b->poll();
  }
  void poll() { digitalWrite(led, digitalRead(this->pin)); }
};
Button *Button::head = nullptr;
Button bow(2, 8), mast(3, 9), stern(4, 10);
void setup() { Button::beginAll(); }
void loop() { Button::pollAll(); }
