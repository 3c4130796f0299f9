// Harbour radio: a message over the air pulls the relay of the masthead light.
#include <WiFi.h>

const int masthead = 25;
const char *network = "harbour";
WiFiServer server(80);

void setup() {
  pinMode(masthead, OUTPUT);
  digitalWrite(masthead, LOW);
  WiFi.begin(network, "lantern-keeper");
  server.begin();
}

void loop() {
  WiFiClient client = server.available();
  if (client) {
    digitalWrite(masthead, client.read() == '1' ? HIGH : LOW);
    client.stop();
  }
}
