#ifndef ORACLE_CHIPS_H
#define ORACLE_CHIPS_H

#include <stdint.h>

/* Registers that connect compare outputs and enable interrupt lines; addresses from the headers of avr-libc. */
struct compare {
  uint16_t address;
  uint8_t mask;
  const char *name;
};
struct line {
  uint8_t mask;
  const char *pin;
};
struct chip {
  const char *mcu;
  struct compare compares[20];
  struct line lines[9];
};
enum { EIMSK_ADDRESS = 0x3d };
static const struct chip chips[] = {
  {"atmega328p",
   {{0x44, 0xc0, "timer0.a"}, {0x44, 0x30, "timer0.b"}, {0x80, 0xc0, "timer1.a"}, {0x80, 0x30, "timer1.b"},
    {0xb0, 0xc0, "timer2.a"}, {0xb0, 0x30, "timer2.b"}},
   {{1, "PD2"}, {2, "PD3"}}},
  {"atmega32u4",
   {{0x44, 0xc0, "timer0.a"}, {0x44, 0x30, "timer0.b"}, {0x80, 0xc0, "timer1.a"}, {0x80, 0x30, "timer1.b"},
    {0x80, 0x0c, "timer1.c"}, {0x90, 0xc0, "timer3.a"}, {0x90, 0x30, "timer3.b"}, {0x90, 0x0c, "timer3.c"},
    {0xc0, 0xc0, "timer4.a"}, {0xc0, 0x30, "timer4.b"}, {0xc2, 0x0c, "timer4.d"}},
   {{1, "PD0"}, {2, "PD1"}, {4, "PD2"}, {8, "PD3"}, {0x40, "PE6"}}},
  {"atmega2560",
   {{0x44, 0xc0, "timer0.a"}, {0x44, 0x30, "timer0.b"}, {0x80, 0xc0, "timer1.a"}, {0x80, 0x30, "timer1.b"},
    {0x80, 0x0c, "timer1.c"}, {0xb0, 0xc0, "timer2.a"}, {0xb0, 0x30, "timer2.b"}, {0x90, 0xc0, "timer3.a"},
    {0x90, 0x30, "timer3.b"}, {0x90, 0x0c, "timer3.c"}, {0xa0, 0xc0, "timer4.a"}, {0xa0, 0x30, "timer4.b"},
    {0xa0, 0x0c, "timer4.c"}, {0x120, 0xc0, "timer5.a"}, {0x120, 0x30, "timer5.b"}, {0x120, 0x0c, "timer5.c"}},
   {{1, "PD0"}, {2, "PD1"}, {4, "PD2"}, {8, "PD3"}, {0x10, "PE4"}, {0x20, "PE5"}, {0x40, "PE6"}, {0x80, "PE7"}}},
};

#endif
