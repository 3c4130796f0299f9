/*
 * Runs a firmware on a simulated chip and prints what it did to its pins.
 *
 *   runner FIRMWARE.elf MCU HERTZ MILLIVOLTS MILLISECONDS [INPUTS]
 *
 * INPUTS is a file of lines, ordered by time: "MS pin PD2 0", "MS pin PD2 1", "MS pin PD2 free" (nothing drives it) and
 * "MS adc CHANNEL MILLIVOLTS". Output lines begin with "@":
 *   @ CYCLE ddr PD7 1          the data direction bit changed
 *   @ CYCLE port PD7 1         the port bit changed
 *   @ CYCLE call F PIN VALUE   a recorded call, see recorder.c
 *   @ CYCLE end STATE          run, done (asleep for ever) or crashed
 * At most MOST lines are printed for each kind of event of each pin; "@ N more KIND PIN" counts the rest.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <simavr/avr_adc.h>
#include <simavr/avr_ioport.h>
#include <simavr/avr_uart.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>

enum { MOST = 400, PORTS = 12, CALLS = 16 };

struct port {
  char name;
  uint8_t ddr, value, external_mask, external_value;
  unsigned ddr_events[8], port_events[8];
};

static avr_t *avr;
static struct port ports[PORTS];
static unsigned call_events[CALLS][256];
static uint8_t call_values[CALLS][256][32];

static void changed(const char *kind, char name, uint8_t *before, uint8_t now, unsigned *events) {
  for (int bit = 0; bit < 8; bit++) {
    if (((*before ^ now) >> bit) & 1 && events[bit]++ < MOST) {
      printf("@ %llu %s P%c%d %d\n", (unsigned long long)avr->cycle, kind, name, bit, (now >> bit) & 1);
    }
  }
  *before = now;
}

static void on_ddr(avr_irq_t *irq, uint32_t value, void *param) {
  struct port *port = param;
  (void)irq;
  changed("ddr", port->name, &port->ddr, value, port->ddr_events);
}

static void on_port(avr_irq_t *irq, uint32_t value, void *param) {
  struct port *port = param;
  (void)irq;
  changed("port", port->name, &port->value, value, port->port_events);
}

/* GPIOR0, GPIOR1, GPIOR2: the same addresses on all chips that are run here (headers of avr-libc). */
enum { GPIOR0 = 0x3e, GPIOR1 = 0x4a, GPIOR2 = 0x4b };

static void on_call(avr_t *chip, avr_io_addr_t address, uint8_t function, void *param) {
  uint8_t pin = chip->data[GPIOR1], value = chip->data[GPIOR2];
  (void)param;
  chip->data[address] = function;
  if (function >= CALLS) {
    return;
  }
  /* A value that was not seen before is always printed, however many calls there were. */
  uint8_t *seen = &call_values[function][pin][value / 8];
  int is_new = !((*seen >> (value % 8)) & 1);
  *seen |= 1 << (value % 8);
  if (call_events[function][pin]++ < MOST || is_new) {
    printf("@ %llu call %u %u %u\n", (unsigned long long)chip->cycle, function, pin, value);
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
  if (count < 6) {
    fprintf(stderr, "usage: runner FIRMWARE.elf MCU HERTZ MILLIVOLTS MILLISECONDS [INPUTS]\n");
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
  FILE *inputs = count > 6 ? fopen(words[6], "r") : NULL;
  unsigned long long at = 0;
  char kind[8], where[8], level[8];
  int waiting = inputs != NULL && fscanf(inputs, "%llu %7s %7s %7s", &at, kind, where, level) == 4;
  int state = cpu_Running;
  while (avr->cycle < last && state != cpu_Done && state != cpu_Crashed) {
    while (waiting && avr->cycle >= at * per_millisecond) {
      if (strcmp(kind, "pin") == 0) {
        set_pin(where[1], where[2] - '0', level);
      } else {
        set_adc(atoi(where), atoi(level));
      }
      waiting = fscanf(inputs, "%llu %7s %7s %7s", &at, kind, where, level) == 4;
    }
    state = avr_run(avr);
  }
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
  printf("@ %llu end %s\n", (unsigned long long)avr->cycle,
         state == cpu_Crashed ? "crashed" : state == cpu_Done ? "done" : "run");
  return 0;
}
