/*
 * Runs a firmware on a simulated chip and prints what it did to its pins.
 *
 *   runner FIRMWARE.elf MCU HERTZ MILLIVOLTS MILLISECONDS QUIET [INPUTS]
 *
 * QUIET is the time in milliseconds without anything new after which a run is given up once loop() has come back ENOUGH
 * times; 0: never. INPUTS is a file of lines, ordered by time: "MS pin PD2 0", "MS pin PD2 1", "MS pin PD2 free"
 * (nothing drives it), "MS adc CHANNEL MILLIVOLTS" and "MS serial BYTE 0" (arrives at the first serial port). Output
 * lines begin with "@":
 *   @ CYCLE ddr PD7 1                the data direction bit changed
 *   @ CYCLE port PD7 1               the port bit changed
 *   @ CYCLE call F PIN VALUE PLACE   a recorded call, see recorder.c
 *   @ CYCLE compare timer2.b         a timer's compare output took its pin, printed the first time
 *   @ CYCLE line PD2                 an external interrupt line was enabled, printed the first time
 *   @ CYCLE state PD7 high           the pin was input, pull-up, low or high at any time; printed before the end
 *   @ CYCLE setup                    setup() came back
 *   @ CYCLE loop ROUNDS              how often loop() came back, printed once before the end
 *   @ CYCLE end STATE                run, done (asleep for ever) or crashed
 * At most MOST lines are printed for each kind of event of each pin, then only what was not seen before; "@ N more KIND
 * PIN" counts the rest.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <simavr/avr_adc.h>
#include <simavr/avr_ioport.h>
#include <simavr/avr_uart.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include "chips.h"
#include "seen-calls.h"

enum { MOST = 400, PORTS = 12, CALLS = 16, ENOUGH = 5 };
/* Of recorder.c: marks beside the calls. */
enum { PLACE = 0x80, SETUP_DONE, LOOP_DONE };

struct port {
  char name;
  uint8_t ddr, value, external_mask, external_value;
  unsigned ddr_events[8], port_events[8];
  /* Bit n: the pin was in state n, see STATES. */
  uint8_t states[8];
  uint64_t since[8];
};

/* By direction and level. A pull-up counts where it stays on: the core passes through it on the way to others. */
static const char *const STATES[] = {"input", "pull-up", "low", "high"};
enum { PASSING = 200 };

static avr_t *avr;
static struct port ports[PORTS];
static unsigned call_events[CALLS][256];
static uint16_t place;
static unsigned long long rounds;
/* When something last happened that had not happened before. */
static uint64_t news_at;

static void changed(const char *kind, char name, uint8_t *before, uint8_t now, unsigned *events) {
  for (int bit = 0; bit < 8; bit++) {
    if (((*before ^ now) >> bit) & 1 && events[bit]++ < MOST) {
      printf("@ %llu %s P%c%d %d\n", (unsigned long long)avr->cycle, kind, name, bit, (now >> bit) & 1);
    }
  }
  *before = now;
}

static void note_states(struct port *port) {
  for (int bit = 0; bit < 8; bit++) {
    int state = (port->ddr >> bit & 1) << 1 | (port->value >> bit & 1);
    int counts = state != 1 || avr->cycle - port->since[bit] > PASSING;
    if (counts && !(port->states[bit] >> state & 1)) {
      port->states[bit] |= 1 << state;
      news_at = avr->cycle;
    }
  }
}

static void now_changes(struct port *port, uint8_t bits) {
  note_states(port);
  for (int bit = 0; bit < 8; bit++) {
    if (bits >> bit & 1) {
      port->since[bit] = avr->cycle;
    }
  }
}

static void on_ddr(avr_irq_t *irq, uint32_t value, void *param) {
  struct port *port = param;
  (void)irq;
  now_changes(port, port->ddr ^ value);
  changed("ddr", port->name, &port->ddr, value, port->ddr_events);
}

static void on_port(avr_irq_t *irq, uint32_t value, void *param) {
  struct port *port = param;
  (void)irq;
  now_changes(port, port->value ^ value);
  changed("port", port->name, &port->value, value, port->port_events);
}

/* GPIOR0, GPIOR1, GPIOR2: the same addresses on all chips that are run here (headers of avr-libc). */
enum { GPIOR0 = 0x3e, GPIOR1 = 0x4a, GPIOR2 = 0x4b };

static void on_call(avr_t *chip, avr_io_addr_t address, uint8_t function, void *param) {
  uint8_t pin = chip->data[GPIOR1], value = chip->data[GPIOR2];
  (void)param;
  chip->data[address] = function;
  if (function == PLACE) {
    place = pin | value << 8;
  } else if (function == SETUP_DONE) {
    news_at = chip->cycle;
    printf("@ %llu setup\n", (unsigned long long)chip->cycle);
  } else if (function == LOOP_DONE) {
    rounds++;
  }
  if (function >= CALLS) {
    return;
  }
  int news = is_new((uint64_t)1 << 40 | (uint64_t)place << 24 | function << 16 | pin << 8 | value);
  if (news) {
    news_at = chip->cycle;
  }
  if (call_events[function][pin]++ < MOST || news) {
    printf("@ %llu call %u %u %u %u\n", (unsigned long long)chip->cycle, function, pin, value, place);
  }
}

static const struct chip *kind;
static uint8_t compare_seen[20], line_seen[9];

/* Looked at now and then rather than at each write, for the simulator's timers own the writes. */
static void look_at_registers(void) {
  for (int i = 0; i < 20 && kind->compares[i].name != NULL; i++) {
    if (!compare_seen[i] && avr->data[kind->compares[i].address] & kind->compares[i].mask) {
      compare_seen[i] = 1;
      printf("@ %llu compare %s\n", (unsigned long long)avr->cycle, kind->compares[i].name);
    }
  }
  for (int i = 0; i < 9 && kind->lines[i].pin != NULL; i++) {
    if (!line_seen[i] && avr->data[EIMSK_ADDRESS] & kind->lines[i].mask) {
      line_seen[i] = 1;
      printf("@ %llu line %s\n", (unsigned long long)avr->cycle, kind->lines[i].pin);
    }
  }
}

static void set_pin(char name, int bit, const char *level) {
  for (int i = 0; i < PORTS; i++) {
    struct port *port = &ports[i];
    if (port->name != name) {
      continue;
    }
    uint8_t one = 1 << bit;
    int is_free = strcmp(level, "free") == 0;
    int high = is_free ? port->value >> bit & 1 : level[0] == '1';
    port->external_mask = is_free ? port->external_mask & ~one : port->external_mask | one;
    port->external_value = high ? port->external_value | one : port->external_value & ~one;
    avr_ioport_external_t held = {.name = name, .mask = port->external_mask, .value = port->external_value};
    avr_ioctl(avr, AVR_IOCTL_IOPORT_SET_EXTERNAL(name), &held);
    if (!(port->ddr & one)) {
      avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(name), bit), high);
    }
    return;
  }
  fprintf(stderr, "runner: the chip has no port %c\n", name);
  exit(2);
}

static void set_adc(int channel, int millivolts) {
  avr_irq_t *irq = avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC0 + channel);
  if (irq == NULL) {
    fprintf(stderr, "runner: the chip has no analog channel %d\n", channel);
    exit(2);
  }
  avr_raise_irq(irq, millivolts);
}

/* The first serial port is called 1 where native USB stands in its place. */
static void receive(int byte) {
  avr_irq_t *irq = avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT);
  if (irq == NULL) {
    irq = avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('1'), UART_IRQ_INPUT);
  }
  if (irq != NULL) {
    avr_raise_irq(irq, byte);
  }
}

/* The simulator would sleep in real time while the chip sleeps. */
static void no_sleep(avr_t *chip, avr_cycle_count_t cycles) {
  (void)chip;
  (void)cycles;
}

static void no_log(avr_t *chip, const int level, const char *format, va_list arguments) {
  (void)chip;
  (void)level;
  (void)format;
  (void)arguments;
}

static void watch_ports(void) {
  for (int i = 0; i < PORTS; i++) {
    char name = 'A' + i;
    avr_irq_t *ddr = avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(name), IOPORT_IRQ_DIRECTION_ALL);
    avr_irq_t *port = avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(name), IOPORT_IRQ_REG_PORT);
    if (ddr != NULL && port != NULL) {
      ports[i].name = name;
      avr_irq_register_notify(ddr, on_ddr, &ports[i]);
      avr_irq_register_notify(port, on_port, &ports[i]);
    }
  }
}

int main(int count, char **words) {
  if (count < 7) {
    fprintf(stderr, "usage: runner FIRMWARE.elf MCU HERTZ MILLIVOLTS MILLISECONDS QUIET [INPUTS]\n");
    return 2;
  }
  avr_global_logger_set(no_log);
  elf_firmware_t firmware;
  memset(&firmware, 0, sizeof firmware);
  if (elf_read_firmware(words[1], &firmware) != 0) {
    fprintf(stderr, "runner: %s is no firmware\n", words[1]);
    return 2;
  }
  avr = avr_make_mcu_by_name(words[2]);
  if (avr == NULL) {
    fprintf(stderr, "runner: the simulator has no chip %s\n", words[2]);
    return 2;
  }
  for (size_t i = 0; i < sizeof chips / sizeof chips[0]; i++) {
    if (strcmp(chips[i].mcu, words[2]) == 0) {
      kind = &chips[i];
    }
  }
  if (kind == NULL) {
    fprintf(stderr, "runner: the registers of %s are not known here\n", words[2]);
    return 2;
  }
  avr_init(avr);
  firmware.frequency = strtoul(words[3], NULL, 10);
  avr_load_firmware(avr, &firmware);
  avr->frequency = firmware.frequency;
  avr->vcc = avr->avcc = avr->aref = strtoul(words[4], NULL, 10);
  avr->sleep = no_sleep;
  uint32_t quiet = 0;
  avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &quiet);
  avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('1'), &quiet);
  watch_ports();
  avr_register_io_write(avr, GPIOR0, on_call, NULL);

  uint64_t per_millisecond = firmware.frequency / 1000;
  uint64_t last = strtoull(words[5], NULL, 10) * per_millisecond;
  uint64_t quiet_for = strtoull(words[6], NULL, 10) * per_millisecond;
  FILE *inputs = count > 7 ? fopen(words[7], "r") : NULL;
  unsigned long long at = 0;
  char kind_of[8], where[8], level[8];
  int waiting = inputs != NULL && fscanf(inputs, "%llu %7s %7s %7s", &at, kind_of, where, level) == 4;
  int state = cpu_Running;
  unsigned steps = 0;
  while (avr->cycle < last && state != cpu_Done && state != cpu_Crashed) {
    while (waiting && avr->cycle >= at * per_millisecond) {
      if (strcmp(kind_of, "pin") == 0) {
        set_pin(where[1], where[2] - '0', level);
      } else if (strcmp(kind_of, "serial") == 0) {
        receive(atoi(where));
      } else {
        set_adc(atoi(where), atoi(level));
      }
      waiting = fscanf(inputs, "%llu %7s %7s %7s", &at, kind_of, where, level) == 4;
    }
    state = avr_run(avr);
    if ((++steps & 63) == 0) {
      look_at_registers();
      if (quiet_for > 0 && rounds >= ENOUGH && avr->cycle - news_at > quiet_for) {
        break;
      }
    }
  }
  look_at_registers();
  for (int i = 0; i < PORTS; i++) {
    for (int bit = 0; bit < 8; bit++) {
      if (ports[i].ddr_events[bit] > MOST) {
        printf("@ %u more ddr P%c%d\n", ports[i].ddr_events[bit] - MOST, ports[i].name, bit);
      }
      if (ports[i].port_events[bit] > MOST) {
        printf("@ %u more port P%c%d\n", ports[i].port_events[bit] - MOST, ports[i].name, bit);
      }
    }
  }
  for (int i = 0; i < PORTS; i++) {
    note_states(&ports[i]);
    for (int bit = 0; bit < 8; bit++) {
      for (int n = 0; n < 4; n++) {
        if (ports[i].name != 0 && ports[i].states[bit] >> n & 1) {
          printf("@ %llu state P%c%d %s\n", (unsigned long long)avr->cycle, ports[i].name, bit, STATES[n]);
        }
      }
    }
  }
  printf("@ %llu loop %llu\n", (unsigned long long)avr->cycle, rounds);
  printf("@ %llu end %s\n", (unsigned long long)avr->cycle,
         state == cpu_Crashed ? "crashed" : state == cpu_Done ? "done" : "run");
  return 0;
}
