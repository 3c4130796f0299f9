#define LAMP_DDR   DDRD
#define LAMP_PORT  PORTD
#define LAMP_RED   _BV(PD3)
#define LAMP_GREEN _BV(PD5)
#define LAMP_MASK  (LAMP_RED | LAMP_GREEN)
#define KEY_PIN    PINB
#define KEY_BIT    PB0

#define lampRed()   (LAMP_PORT = (LAMP_PORT & ~LAMP_MASK) | LAMP_RED)
#define lampGreen() (LAMP_PORT = (LAMP_PORT & ~LAMP_MASK) | LAMP_GREEN)
#define keyDown()   (!(KEY_PIN & _BV(KEY_BIT)))

void setup() {
  LAMP_DDR |= LAMP_MASK;
  DDRB &= ~_BV(KEY_BIT);
  PORTB |= _BV(KEY_BIT);
}
void loop() {
  if (keyDown()) lampRed(); else lampGreen();
  delay(5);
}
