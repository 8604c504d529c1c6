// What a sensor sends: bare numbers and SenML packs (RFC 8428), written into a buffer of the caller's.
// No heap, no Arduino headers: the same file is compiled and tested on a computer.
#pragma once

#include <stddef.h>
#include <stdint.h>

namespace payload {

enum class Quantity : uint8_t { temperature_celsius, ph, millivolts, humidity_percent };

// A value and when it was measured, in seconds of the device's own uptime.
struct Reading {
  Quantity quantity;
  float value;
  uint32_t uptime_s;
};

// What the device knows of the time. unix_s is 0 while its clock was never set.
struct Clock {
  uint32_t uptime_s;
  int64_t unix_s;
};

// The last level of the topic for a quantity: "temperature", "ph", "millivolts" or "humidity".
const char* topic_level(Quantity quantity);

// Writes one number, or "nan" where the read failed. Returns its length, 0 if it does not fit.
size_t bare_number(char* out, size_t size, float value);

// Writes the oldest readings that fit as one pack and says in *packed how many they are. Times are Unix seconds if the clock is
// set, else relative to now. Returns its length, 0 if not even one fits or there are none.
size_t senml_pack(char* out, size_t size, const char* sensor, const Reading* readings, size_t count, Clock now, size_t* packed);

}  // namespace payload
