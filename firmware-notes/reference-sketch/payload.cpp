#include "payload.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

namespace payload {
namespace {

const char* unit(Quantity quantity) {
  switch (quantity) {
    case Quantity::temperature_celsius: return "Cel";
    case Quantity::ph: return "pH";
    case Quantity::millivolts: return "mV";
    case Quantity::humidity_percent: return "%RH";
  }
  return "";
}

// Two decimals for what varies by tenths, three for pH: more would be noise, and every byte costs air time.
int decimals(Quantity quantity) { return quantity == Quantity::ph ? 3 : 2; }

// JSON has no NaN: a failed read is null, and costs its own record only.
int value_text(char* out, size_t size, float value, int digits) {
  if (isnan(value) || isinf(value)) return snprintf(out, size, "null");
  return snprintf(out, size, "%.*f", digits, static_cast<double>(value));
}

}  // namespace

const char* topic_level(Quantity quantity) {
  switch (quantity) {
    case Quantity::temperature_celsius: return "temperature";
    case Quantity::ph: return "ph";
    case Quantity::millivolts: return "millivolts";
    case Quantity::humidity_percent: return "humidity";
  }
  return "";
}

size_t bare_number(char* out, size_t size, float value) {
  int length = isnan(value) || isinf(value) ? snprintf(out, size, "nan") : snprintf(out, size, "%.2f", static_cast<double>(value));
  return length > 0 && static_cast<size_t>(length) < size ? static_cast<size_t>(length) : 0;
}

size_t senml_pack(char* out, size_t size, const char* sensor, const Reading* readings, size_t count, Clock now, size_t* packed) {
  *packed = 0;
  if (count == 0) return 0;

  // Times count from the moment of sending. Unsigned subtraction is right across the wrap of the uptime after 136 years, and
  // across that of a counter in milliseconds if the caller has widened it.
  char record[160];
  size_t length = 0;
  for (size_t i = 0; i < count; i++) {
    char value[24];
    value_text(value, sizeof value, readings[i].value, decimals(readings[i].quantity));
    long age = static_cast<long>(static_cast<uint32_t>(now.uptime_s - readings[i].uptime_s));
    int n;
    if (i == 0 && now.unix_s > 0) {
      n = snprintf(record, sizeof record, "[{\"bn\":\"%s:\",\"bt\":%lld,\"n\":\"%s\",\"u\":\"%s\",\"t\":%ld,\"v\":%s}", sensor,
                   static_cast<long long>(now.unix_s), topic_level(readings[i].quantity), unit(readings[i].quantity), -age, value);
    } else if (i == 0) {
      n = snprintf(record, sizeof record, "[{\"bn\":\"%s:\",\"n\":\"%s\",\"u\":\"%s\",\"t\":%ld,\"v\":%s}", sensor,
                   topic_level(readings[i].quantity), unit(readings[i].quantity), -age, value);
    } else {
      n = snprintf(record, sizeof record, ",{\"n\":\"%s\",\"u\":\"%s\",\"t\":%ld,\"v\":%s}", topic_level(readings[i].quantity),
                   unit(readings[i].quantity), -age, value);
    }
    // One byte for the bracket that closes the pack, one for the end of the string.
    if (n <= 0 || static_cast<size_t>(n) >= sizeof record || length + static_cast<size_t>(n) + 2 > size) break;
    memcpy(out + length, record, static_cast<size_t>(n));
    length += static_cast<size_t>(n);
    *packed = i + 1;
  }
  if (*packed == 0) return 0;
  out[length++] = ']';
  out[length] = '\0';
  return length;
}

}  // namespace payload
