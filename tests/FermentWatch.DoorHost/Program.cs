using System.Globalization;
using FermentWatch.DoorHost;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Storage.Readings;
using Microsoft.Extensions.Logging.Abstractions;

// Both doors and the reading log in a process of their own, to be killed by tests. Arguments: FOLDER PASSWORD MQTT-PORT
// OUTSIDE-PORT, where an OUTSIDE-PORT of 0 means no outside broker. Says "ready" when it listens, ends when its input does.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
await using ReadingStore store = ReadingStore.Open(Path.Combine(args[0], "readings.db"));
var book = new OneSensor(args[1]);
var door = new MessageDoor(
    store, new SensorDirectory(book, TimeProvider.System), rows: new RowsBeforeStart(store.Log, TimeProvider.System));
int port = int.Parse(args[2], CultureInfo.InvariantCulture), outside = int.Parse(args[3], CultureInfo.InvariantCulture);

// No pace: the point is to have as much under way as there can be when the end comes.
await using var broker = new Broker(
    new BrokerOptions { Port = port, MaxMessagesPerSecond = 0 }, book, door, TimeProvider.System, NullLogger<Broker>.Instance);
await broker.StartAsync(CancellationToken.None);
await using OutsideLink? link = outside == 0
    ? null
    : new OutsideLink(new OutsideBrokerOptions { Host = "127.0.0.1", Port = outside }, door, null, TimeProvider.System,
    NullLogger<OutsideLink>.Instance);
if (link is not null)
    await link.StartAsync(CancellationToken.None);
Console.WriteLine("ready");
while (await Console.In.ReadLineAsync() is not null)
{
}
