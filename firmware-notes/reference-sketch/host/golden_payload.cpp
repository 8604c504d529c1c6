// Prints the payload that the sketch's code makes for a golden case of tests/cases, named by its folder.
#include "../payload.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

using payload::Clock;
using payload::Quantity;
using payload::Reading;

static size_t make(const char* name, char* out, size_t size) {
  // Measured every quarter of an hour, sent at uptime 4000 s; the clock says 2026-10-04T07:59:50Z.
  const Reading climate[] = {
      {Quantity::temperature_celsius, 17.5f, 2200},
      {Quantity::humidity_percent, 71.25f, 2200},
      {Quantity::temperature_celsius, 17.4375f, 3100},
      {Quantity::temperature_celsius, 17.375f, 4000},
  };
  const Reading failed[] = {
      {Quantity::temperature_celsius, NAN, 3990},
      {Quantity::ph, 3.62f, 3995},
      {Quantity::millivolts, 196.6f, 3995},
      {Quantity::temperature_celsius, -127.0f, 4000},
  };
  const Reading long_outage[] = {
      {Quantity::temperature_celsius, 17.5f, 100},
      {Quantity::temperature_celsius, 17.5f, 1000},
      {Quantity::temperature_celsius, 17.5f, 1900},
  };
  size_t packed = 0;
  if (strcmp(name, "sketch-bare-number") == 0) return payload::bare_number(out, size, 17.4375f);
  if (strcmp(name, "sketch-bare-number-failed-read") == 0) return payload::bare_number(out, size, NAN);
  if (strcmp(name, "sketch-pack-clock-set") == 0)
    return payload::senml_pack(out, size, "cellar", climate, 4, Clock{4000, 1791100790}, &packed);
  if (strcmp(name, "sketch-pack-no-clock") == 0) return payload::senml_pack(out, size, "cellar", climate, 4, Clock{4000, 0}, &packed);
  if (strcmp(name, "sketch-pack-failed-read") == 0)
    return payload::senml_pack(out, size, "cellar", failed, 4, Clock{4000, 0}, &packed);
  if (strcmp(name, "sketch-pack-only-what-fits") == 0) {
    // Room for two of the three: the third goes into the next pack.
    size_t length = payload::senml_pack(out, 130, "cellar", long_outage, 3, Clock{2800, 0}, &packed);
    return packed == 2 ? length : 0;
  }
  return 0;
}

int main(int argc, char** argv) {
  char out[512];
  size_t length = argc == 2 ? make(argv[1], out, sizeof out) : 0;
  if (length == 0) {
    fprintf(stderr, "no such case, or it did not fit\n");
    return 1;
  }
  fwrite(out, 1, length, stdout);
  return 0;
}
