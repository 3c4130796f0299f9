#ifndef ORACLE_SEEN_CALLS_H
#define ORACLE_SEEN_CALLS_H

#include <stddef.h>
#include <stdint.h>

/* Calls that were printed, by all that is known of them; a table with open addressing. */
static uint64_t seen[1 << 16];

/* True the first time. A call is never 0; a full table takes everything for new. */
static int is_new(uint64_t call) {
  size_t mask = sizeof seen / sizeof seen[0] - 1, at = (call * 0x9e3779b97f4a7c15u >> 40) & mask;
  for (size_t tries = 0; tries < mask; tries++, at = (at + 1) & mask) {
    if (seen[at] == call) {
      return 0;
    }
    if (seen[at] == 0) {
      seen[at] = call;
      return 1;
    }
  }
  return 1;
}

#endif
