#if defined(__AVR_ATmega2560__)
  #define LAMP 30
  #define KEY 31
#elif defined(__AVR_ATmega32U4__)
  #define LAMP 10
  #define KEY 11
#elif defined(__AVR_ATmega328P__)
  #define LAMP 5
  #define KEY 4
#else
  #error "not a board of ours"
#endif
void setup() { pinMode(LAMP, OUTPUT); pinMode(KEY, INPUT_PULLUP); }
void loop() { digitalWrite(LAMP, !digitalRead(KEY)); delay(5); }
