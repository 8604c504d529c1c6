// A one-wire temperature probe on a Wi-Fi microcontroller: measures every quarter of an hour, keeps what it could not send, and
// sends it in SenML packs at QoS 1. Needs the libraries OneWire, DallasTemperature and MQTT (arduino-mqtt) from the library
// manager. Fill in secrets.h from what `fermentwatch sensor add` printed; keep that file to yourself.
#include <DallasTemperature.h>
#include <MQTT.h>
#include <OneWire.h>
#include <WiFi.h>
#include <time.h>

#include "payload.h"
#include "secrets.h"  // WIFI_NAME, WIFI_PASSWORD, BROKER, BROKER_PORT, SENSOR, SENSOR_PASSWORD

const int PROBE_PIN = 4;
const uint32_t MEASURE_EVERY_S = 900;
const uint32_t TRY_AGAIN_AFTER_S = 30;
const size_t KEPT = 400;         // four days of quarter hours
const size_t PACK_BYTES = 4096;  // some 80 records
const char* const TIME_SERVER = "pool.ntp.org";
const int64_t ANY_REAL_TIME = 1600000000;  // a clock that was never set is below

OneWire wire(PROBE_PIN);
DallasTemperature probe(&wire);
WiFiClient network;
MQTTClient mqtt(PACK_BYTES + 256);

payload::Reading kept[KEPT];
size_t kept_count = 0;
char pack[PACK_BYTES];
size_t pack_length = 0;   // the pack under way; it is sent again byte for byte until it is acknowledged
uint32_t pack_made_at = 0;
size_t pack_readings = 0;
bool pack_sent_before = false;
uint16_t pack_id = 0;
int64_t boot_unix_s = 0;  // set once, so that a reading has the same time in every pack it is ever in

String topic = String("fermentwatch/sensor/") + SENSOR;

uint32_t uptime_s() {
  // millis() wraps after 49 days: widened here, which needs a call at least that often.
  static uint32_t last_ms = 0, wraps = 0;
  uint32_t now_ms = millis();
  if (now_ms < last_ms) wraps++;
  last_ms = now_ms;
  return (uint32_t)((((uint64_t)wraps << 32) | now_ms) / 1000);
}

payload::Clock clock_now() {
  uint32_t up = uptime_s();
  int64_t now = (int64_t)time(nullptr);
  if (boot_unix_s == 0 && now > ANY_REAL_TIME) boot_unix_s = now - up;
  return payload::Clock{up, boot_unix_s == 0 ? 0 : boot_unix_s + up};
}

void drop_oldest(size_t count) {
  memmove(kept, kept + count, (kept_count - count) * sizeof kept[0]);
  kept_count -= count;
}

void measure() {
  probe.requestTemperatures();
  // -127 when unplugged and 85 just after power-up are sent as they come: they are known for what they are. No offset here.
  float celsius = probe.getTempCByIndex(0);
  if (kept_count == KEPT) {
    // The pack under way may hold the oldest: it is made anew without it.
    drop_oldest(1);
    pack_length = 0;
  }
  kept[kept_count++] = payload::Reading{payload::Quantity::temperature_celsius, celsius, uptime_s()};
}

bool connected() {
  if (mqtt.connected()) return true;
  if (WiFi.status() != WL_CONNECTED) return false;
  mqtt.begin(BROKER, BROKER_PORT, network);
  mqtt.setWill((topic + "/status").c_str(), "offline", true, 1);
  if (!mqtt.connect(SENSOR, SENSOR, SENSOR_PASSWORD)) return false;
  mqtt.publish(topic + "/status", "online", true, 1);
  return true;
}

// Sends one pack; true if there may be more to send.
bool send() {
  // Relative times mean the moment of sending: a pack that could not be sent for a while would move its readings. It is made anew;
  // if the first did arrive after all, the same readings are stored twice, a little apart, which harms less.
  if (boot_unix_s == 0 && uptime_s() - pack_made_at > 45) pack_length = 0;
  if (pack_length == 0) {
    pack_made_at = uptime_s();
    pack_length = payload::senml_pack(pack, sizeof pack, SENSOR, kept, kept_count, clock_now(), &pack_readings);
    pack_sent_before = false;
    if (pack_length == 0) return false;
  }
  // A pack with relative times that is sent again must be known again: the same identifier, and the DUP flag.
  if (pack_sent_before) mqtt.prepareDuplicate(pack_id);
  bool acknowledged = mqtt.publish(topic.c_str(), pack, pack_length, false, 1);
  pack_id = mqtt.lastPacketID();
  pack_sent_before = true;
  if (!acknowledged) return false;
  drop_oldest(pack_readings);
  pack_length = 0;
  return kept_count > 0;
}

void setup() {
  probe.begin();
  WiFi.mode(WIFI_STA);
  WiFi.begin(WIFI_NAME, WIFI_PASSWORD);
  configTime(0, 0, TIME_SERVER);
}

void loop() {
  static uint32_t measured_at = 0, tried_at = 0;
  static bool first = true;
  uint32_t now = uptime_s();
  if (first || now - measured_at >= MEASURE_EVERY_S) {
    measured_at = now;
    measure();
  }
  bool waiting = kept_count > 0 && (first || now - tried_at >= TRY_AGAIN_AFTER_S);
  first = false;
  if (waiting) {
    tried_at = now;
    if (connected())
      while (send()) {
      }
  }
  mqtt.loop();
  delay(200);
}
