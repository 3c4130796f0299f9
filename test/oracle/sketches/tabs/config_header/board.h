#if defined(__AVR_ATmega328P__)
#define PIN_SMOKE 4
#else
#define PIN_SMOKE 22
#endif
#if WITH_WHISTLE
#define PIN_WHISTLE (PIN_SMOKE + 5)
#endif
