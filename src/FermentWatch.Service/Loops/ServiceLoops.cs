using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Service.Loops;

/// <summary>The loops of the service, in the order in which one's work is another's input.</summary>
public sealed class ServiceLoops
{
    private readonly JudgingPass _judging;
    private readonly ForecastPass _forecasts;
    private readonly RoundPass _rounds;
    private readonly SeriesForwarding? _forwarding;
    private readonly ClockWatch _clockWatch;
    private readonly IReadingLog _log;
    private readonly OccasionPass _occasions;

    private readonly ILogger<Loop> _logger;
    private readonly Restraint _judgingRests = new();

    /// <param name="judging">What the judging loop does.</param>
    /// <param name="forecasts">What the forecast loop does.</param>
    /// <param name="rounds">What the round loop does.</param>
    /// <param name="occasions">What the occasion loop does.</param>
    /// <param name="deliveries">What the delivery loop does.</param>
    /// <param name="states">What the state loop does.</param>
    /// <param name="announcements">What the state loop does after that.</param>
    /// <param name="clockWatch">What notices a clock that leaps.</param>
    /// <param name="log">The log, for its last sign of life.</param>
    /// <param name="time">The clock.</param>
    /// <param name="logger">Where changes of state go.</param>
    /// <param name="setAside">What says that a pass goes on.</param>
    /// <param name="written">What says that there is work.</param>
    /// <param name="forwarding">What the forwarding loop does; null where nothing is passed on.</param>
    /// <param name="backup">What the backup loop does; null where no copies are kept.</param>
    public ServiceLoops(
        JudgingPass judging, ForecastPass forecasts, RoundPass rounds, OccasionPass occasions, DeliveryPass deliveries, StatePass states,
        AnnouncementPass announcements, ClockWatch clockWatch, IReadingLog log, TimeProvider time, ILogger<Loop> logger, SetAside setAside,
            WrittenDown written, SeriesForwarding? forwarding = null,
            DailyBackup? backup = null)
    {
        _judging = judging;
        _logger = logger;
        _forecasts = forecasts;
        _rounds = rounds;
        _forwarding = forwarding;
        _occasions = occasions;
        (_clockWatch, _log) = (clockWatch, log);
        Judging = new Loop("judging", JudgeAsync, time, logger);
        Forecasts = new Loop("forecast", ForecastAsync, time, logger);
        Rounds = new Loop("round", OpenRoundsAsync, time, logger);
        Occasions = new Loop("occasion", TellOccasionsAsync, time, logger);
        Deliveries = new Loop("delivery", (_, cancellationToken) => deliveries.RunAsync(cancellationToken), time, logger);
        States = new Loop("state", (now, cancellationToken) => SayStatesAsync(states, announcements, now, cancellationToken), time, logger);
        if (forwarding is not null)
            Forwarding = new Loop("forwarding", (_, cancellationToken) => forwarding.RunAsync(Forwarding!.Wake, cancellationToken), time, logger);
        if (backup is not null)
            Backups = new Loop("backup", (now, cancellationToken) => backup.RunAsync(now, Backups!.Step, cancellationToken), time, logger);
        judging.TurnEnded += Judging.Step;
        setAside.Stepped += pass => LoopOf(pass)?.Step();
        written.Readings += Judging.Wake;
        written.Checks += Judging.Wake;
        written.Facts += Forecasts.Wake;
        written.Facts += States.Wake;
        written.Facts += Occasions.Wake;
    }

    /// <summary>Judges what came in.</summary>
    public Loop Judging { get; }

    /// <summary>Renews forecasts as quarter hours close and facts change; wakes the states when it did.</summary>
    public Loop Forecasts { get; }

    /// <summary>Opens the round at the household's hour and asks again in the evening.</summary>
    public Loop Rounds { get; }

    /// <summary>Tells of what has come up.</summary>
    public Loop Occasions { get; }

    /// <summary>Delivers what is due in the outbox.</summary>
    public Loop Deliveries { get; }

    /// <summary>Publishes what has changed.</summary>
    public Loop States { get; }

    /// <summary>Passes series on; null where there is no receiver.</summary>
    public Loop? Forwarding { get; }

    /// <summary>Copies both databases each day; null where no copies are kept.</summary>
    public Loop? Backups { get; }

    /// <summary>Each loop after those whose work it reads.</summary>
    public IReadOnlyList<Loop> InOrder =>
        [Judging, Forecasts, Rounds, Occasions, Deliveries, States, .. new[] { Forwarding, Backups }.OfType<Loop>()];

    /// <summary>The loop in which a pass runs: that of its name, or the one that does it as well.</summary>
    private Loop? LoopOf(string pass) => pass == AnnouncementPass.Name ? States : InOrder.FirstOrDefault(loop => loop.Name == pass);

    /// <summary>Lets every loop run once, in order, and completes when the last has ended.</summary>
    public async Task SettleAsync(CancellationToken cancellationToken)
    {
        foreach (Loop loop in InOrder)
            await loop.WakeAndWaitAsync(cancellationToken);
    }

    private static async Task SayStatesAsync(StatePass states, AnnouncementPass announcements, Instant now, CancellationToken cancellationToken)
    {
        await states.RunAsync(now, cancellationToken);
        await announcements.RunAsync(cancellationToken);
    }

    private async Task OpenRoundsAsync(Instant now, CancellationToken cancellationToken)
    {
        await _clockWatch.LookAsync(now, () => _log.LastReceivedAsync(cancellationToken));
        await _rounds.RunAsync(now, cancellationToken);
        Deliveries.Wake();
    }

    private async Task TellOccasionsAsync(Instant now, CancellationToken cancellationToken)
    {
        if (await _occasions.RunAsync(now, cancellationToken) > 0)
            Deliveries.Wake();
    }

    private async Task JudgeAsync(Instant now, CancellationToken cancellationToken)
    {
        long before = _judging.SetAside.Count;
        int judged = await _judgingRests.RunAsync(() => _judging.RunAsync(cancellationToken), cancellationToken);
        if (_judging.SetAside.Count > before && _judging.SetAside.Last[^1] is var last)
            LoopLog.SetAside(_logger, _judging.SetAside.Count, last.SensorKey, last.Quantity, last.MeasuredAt, last.Reason);
        // Forecasts eat closed quarter hours and look for them by themselves each minute.
        if (judged > 0)
            Forwarding?.Wake();
    }

    /// <summary>Where estimates are passed on, each is noted before the next takes its place, also what an entry has just renewed.</summary>
    private async Task ForecastAsync(Instant now, CancellationToken cancellationToken)
    {
        int noted = await NoteEstimatesAsync(now, cancellationToken);
        int renewed = await _forecasts.RunAsync(now, cancellationToken);
        noted += renewed > 0 ? await NoteEstimatesAsync(now, cancellationToken) : 0;
        if (renewed > 0)
            States.Wake();
        if (noted > 0)
            Forwarding?.Wake();
    }

    private async Task<int> NoteEstimatesAsync(Instant now, CancellationToken cancellationToken) =>
        _forwarding is null ? 0 : await _forwarding.Notes.RunAsync(now, cancellationToken);
}
