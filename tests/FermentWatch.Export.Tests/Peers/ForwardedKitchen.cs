using FermentWatch.Export.Forwarding;
using FermentWatch.Export.Points;
using FermentWatch.Export.Receiving;
using FermentWatch.Export.Tests.Doubles;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Export.Tests.Peers;

/// <summary>Real databases and a forwarder on them, opened anew as often as a test likes.</summary>
internal sealed class ForwardedKitchen : IAsyncDisposable
{
    private readonly ServiceProvider _services;
    private readonly InfluxReceiver _receiver;

    public ForwardedKitchen(string folder, InfluxOptions options, TimeAhead time)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(TimeProvider.System);
        services.AddFermentWatchStorage(new StorageOptions { Folder = folder });
        _services = services.BuildServiceProvider();
        _services.OpenStorage();
        _receiver = new InfluxReceiver(options);
        var owners = new OwnerReader(Sensors, Jars, Places);
        IClock clock = TimeProvider.System.ToClock();
        Series[] series =
        [
            new LogSeries<Reading>(SeriesKind.Reading, Get<IForwardLog<Reading>>(), (reading, names) =>
                SeriesPoints.Of(reading, names, options.Site), owners, clock),
            new LogSeries<SavedEstimate>(SeriesKind.Estimate, Estimates, (estimate, names) =>
                SeriesPoints.Of(estimate, names, options.Site), owners, clock),
            new LogSeries<LoggedObservation>(SeriesKind.Observation, Get<IForwardLog<LoggedObservation>>(), (entry, names) =>
                SeriesPoints.Of(entry, names, options.Site), owners, clock),
        ];
        Forwarder = new Forwarder(series, Cursors, _receiver, options.SettleTime, time, clock, new ListLogger());
    }

    public Forwarder Forwarder { get; }

    public ISensorBook Sensors => Get<ISensorBook>();

    public IJarBook Jars => Get<IJarBook>();

    public IPlaceBook Places => Get<IPlaceBook>();

    public IEstimateLog Estimates => Get<IEstimateLog>();

    public IForwardCursors Cursors => Get<IForwardCursors>();

    /// <summary>Stores readings with a verdict.</summary>
    public async Task StoreAsync(IReadOnlyList<Reading> readings, Verdict verdict)
    {
        await Get<IReadingIntake>().AppendAsync(readings, default);
        await JudgeAsync(readings, verdict);
    }

    /// <summary>Gives readings that are stored another verdict.</summary>
    public async Task JudgeAsync(IReadOnlyList<Reading> readings, Verdict verdict)
    {
        IReadingLog log = Get<IReadingLog>();
        long upTo = (await log.WaitingAsync(default)).Select(waiting => waiting.UpTo).DefaultIfEmpty(0).Max();
        await log.SettleAsync([.. readings.Select(reading => new VerdictChange(reading.SensorKey, reading.Quantity, reading.MeasuredAt, verdict))],
            upTo, default);
    }

    /// <summary>Runs the forwarder, whenever it asks to be run, until every cursor is at the end of its log.</summary>
    public async Task ForwardToTheEndAsync()
    {
        while (await Forwarder.RunAsync(default) is { } wait)
            await Task.Delay(wait + TimeSpan.FromMilliseconds(1), TimeProvider.System);
    }

    public async ValueTask DisposeAsync()
    {
        _receiver.Dispose();
        await _services.DisposeAsync();
    }

    private T Get<T>()
        where T : notnull => _services.GetRequiredService<T>();
}
