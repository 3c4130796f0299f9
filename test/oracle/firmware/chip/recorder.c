/*
 * Stands between a sketch and the core's pin functions: tells the simulator which function was called from where with
 * which pin and value, then does what was asked. The simulator sees the write to GPIOR0 and reads the other two.
 */
#include <Arduino.h>

enum { MODE = 1, WRITE, READ, PWM, ANALOG_READ, TONE, TONE_OFF, INTERRUPT, SERVO };
/* What goes before a call, and marks of the way through the program. */
enum { PLACE = 0x80, SETUP_DONE, LOOP_DONE };

/* The word address behind the call instruction, lower 16 bits. */
#define CALLER ((uint16_t)(uintptr_t)__builtin_return_address(0))

void record_call(uint16_t place, uint8_t function, uint8_t pin, uint16_t value) {
  uint8_t status = SREG;
  cli();
  GPIOR1 = place & 0xff;
  GPIOR2 = place >> 8;
  GPIOR0 = PLACE;
  GPIOR1 = pin;
  /* Duty and frequency may be larger than a byte: what counts is whether there was any. */
  GPIOR2 = value > 255 ? 255 : value;
  GPIOR0 = function;
  SREG = status;
}

void record_servo(uint16_t place, uint8_t pin) { record_call(place, SERVO, pin, 0); }

/* The sketch's own two functions under the names that their symbols get. */
void sketch_setup(void);
void sketch_loop(void);

void setup(void) {
  sketch_setup();
  GPIOR0 = SETUP_DONE;
}

void loop(void) {
  sketch_loop();
  GPIOR0 = LOOP_DONE;
}

/*
 * A wait of which only the first milliseconds are spent. For the sketch the rest has passed all the same: both counts
 * that millis() and micros() are made of are put forward. Linked only where the run asks for it.
 */
extern volatile unsigned long timer0_millis;
extern volatile unsigned long timer0_overflow_count;
enum { SPENT = 4 };

void skipped_delay(unsigned long wanted) {
  if (wanted > SPENT) {
    unsigned long rest = wanted - SPENT;
    uint8_t status = SREG;
    cli();
    timer0_millis += rest;
    timer0_overflow_count += (unsigned long)((uint64_t)rest * (F_CPU / 1000) / (64UL * 256));
    SREG = status;
    wanted = SPENT;
  }
  delay(wanted);
}

void recorded_pinMode(uint8_t pin, uint8_t mode) {
  record_call(CALLER, MODE, pin, mode);
  pinMode(pin, mode);
}

void recorded_digitalWrite(uint8_t pin, uint8_t level) {
  record_call(CALLER, WRITE, pin, level);
  digitalWrite(pin, level);
}

int recorded_digitalRead(uint8_t pin) {
  record_call(CALLER, READ, pin, 0);
  return digitalRead(pin);
}

void recorded_analogWrite(uint8_t pin, int duty) {
  record_call(CALLER, PWM, pin, duty);
  analogWrite(pin, duty);
}

int recorded_analogRead(uint8_t pin) {
  /* The core takes channels as well as pin numbers; the sketch layer speaks of pins. */
  record_call(CALLER, ANALOG_READ, pin < A0 ? pin + A0 : pin, 0);
  return analogRead(pin);
}

unsigned long recorded_pulseIn(uint8_t pin, uint8_t state, unsigned long timeout) {
  record_call(CALLER, READ, pin, 0);
  return pulseIn(pin, state, timeout);
}

unsigned long recorded_pulseInLong(uint8_t pin, uint8_t state, unsigned long timeout) {
  record_call(CALLER, READ, pin, 0);
  return pulseInLong(pin, state, timeout);
}

void recorded_shiftOut(uint8_t data, uint8_t clock, uint8_t order, uint8_t value) {
  record_call(CALLER, WRITE, data, 1);
  record_call(CALLER, WRITE, clock, 1);
  shiftOut(data, clock, order, value);
}

uint8_t recorded_shiftIn(uint8_t data, uint8_t clock, uint8_t order) {
  record_call(CALLER, READ, data, 0);
  record_call(CALLER, WRITE, clock, 1);
  return shiftIn(data, clock, order);
}

void recorded_attachInterrupt(uint8_t line, void (*handler)(void), int mode) {
  record_call(CALLER, INTERRUPT, line, mode);
  attachInterrupt(line, handler, mode);
}
