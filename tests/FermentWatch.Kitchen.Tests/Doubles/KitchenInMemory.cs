using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Doubles;

/// <summary>A household whose records outlive any pass. Each writing is one step; <see cref="Killed"/> may end the process before or after
/// it.</summary>
internal sealed class KitchenInMemory(Household household) : IHouseholdBook, IRoundBook, INoticeBook, IOccasionBook, IMemberBook
{
    private readonly SortedDictionary<LocalDate, Round> _rounds = [];
    private readonly Dictionary<string, ToldOccasion> _told = [];
    private readonly Dictionary<string, Notice> _notices = [];
    private readonly HashSet<OccasionKind> _muted = [];

    public List<Jar> Jars { get; } = [];

    public Dictionary<Guid, JarForecast> Forecasts { get; } = [];

    public List<NoticeRoute> Routes { get; } = [];

    public List<Member> Members { get; } = [];

    public List<HandOver> HandOvers { get; } = [];

    public List<RoundPause> Pauses { get; } = [];

    public IEnumerable<Round> Rounds => _rounds.Values;

    public IEnumerable<Notice> Notices => _notices.Values;

    /// <summary>Asked before and after each writing; true ends the process there.</summary>
    public Func<bool> Killed { get; set; } = () => false;

    public long Revision { get; set; }

    /// <summary>A new process over the same records.</summary>
    public RoundPass RoundPass() =>
        new(this, this, JarBook(), PlaceBook(), ForecastBook(), this, this, new DryPlaces(SensorBook(), Substitute.For<IReadingLog>()),
        Make.SetAside());

    /// <summary>A new process over the same records.</summary>
    public OccasionPass OccasionPass() => new(Scenes(), this, this, this, this, Make.SetAside());

    public void Reach(string person) =>
        Routes.Add(new NoticeRoute { Id = Guid.NewGuid(), Person = person, Channel = Channel.Mqtt, Address = person });

    public Task<Household> ReadAsync(CancellationToken cancellationToken) => Task.FromResult(household);

    public Task WriteAsync(Household changed, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<long> RevisionAsync(CancellationToken cancellationToken) => Task.FromResult(Revision);

    public Task<Round?> LastAsync(CancellationToken cancellationToken) => Task.FromResult(_rounds.Values.LastOrDefault());

    public Task<IReadOnlyList<Round>> SinceAsync(LocalDate date, CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<Round>>([.. _rounds.Values.Where(round => round.Date >= date)]);

    public Task<bool> OpenAsync(Round round, IReadOnlyList<Notice> notices, CancellationToken cancellationToken) => Task.FromResult(Step(() =>
    {
        if (!_rounds.TryAdd(round.Date, round))
            return false;
        Queue(notices);
        return true;
    }));

    public Task TakeBackAfterAsync(Instant now, CancellationToken cancellationToken) => Task.FromResult(Step(() =>
    {
        foreach (Round round in _rounds.Values.Where(round => round.OpenedAt > now).ToList())
            _rounds.Remove(round.Date);
        return true;
    }));

    public Task<IReadOnlyList<NoticeRoute>> RoutesAsync(CancellationToken cancellationToken) => Task.FromResult<IReadOnlyList<NoticeRoute>>(Routes);

    public Task AddRouteAsync(NoticeRoute route, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task KeepRouteAsync(Guid routeId, Person by, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task RemoveRouteAsync(Guid routeId, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task QueueAsync(IReadOnlyList<Notice> notices, CancellationToken cancellationToken) => Task.FromResult(Step(() => Queue(notices)));

    public Task<IReadOnlyList<Notice>> ClaimAsync(Instant now, Instant claimedUntil, int atMost, CancellationToken cancellationToken) =>
        throw new NotSupportedException();

    public Task SettleAsync(Notice notice, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<Notice?> FindAsync(Guid id, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyDictionary<Channel, int>> WaitingAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<Notice>> LatestAsync(int atMost, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<ToldOccasion>> ToldAsync(CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<ToldOccasion>>([.. _told.Values]);

    public Task<bool> TellAsync(IReadOnlyList<ToldOccasion> occasions, IReadOnlyList<Notice> notices, CancellationToken cancellationToken) =>
        Task.FromResult(Step(() =>
    {
        if (occasions.Any(occasion => _told.ContainsKey(occasion.Key)))
            return false;
        foreach (ToldOccasion occasion in occasions)
            _told.Add(occasion.Key, occasion);
        return Queue(notices);
    }));

    public Task StillSoAsync(IReadOnlyList<Guid> toldIds, Instant now, CancellationToken cancellationToken) => Task.FromResult(Step(() =>
    {
        foreach (ToldOccasion told in _told.Values.Where(told => toldIds.Contains(told.Id)))
            told.LastSeenAt = now;
        return true;
    }));

    public Task<IReadOnlySet<OccasionKind>> MutedAsync(CancellationToken cancellationToken) => Task.FromResult<IReadOnlySet<OccasionKind>>(_muted);

    public Task MuteAsync(OccasionKind kind, bool muted, CancellationToken cancellationToken) =>
        Task.FromResult(muted ? _muted.Add(kind) : _muted.Remove(kind));

    public Task<IReadOnlyList<Member>> AllAsync(CancellationToken cancellationToken) => Task.FromResult<IReadOnlyList<Member>>(Members);

    public Task WriteAsync(Duty duty, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<Roster> RosterAsync(LocalDate from, CancellationToken cancellationToken) => Task.FromResult(new Roster(Members, HandOvers, Pauses));

    public Task HandOverAsync(HandOver handOver, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task TakeBackAsync(LocalDate date, CancellationToken cancellationToken) => throw new NotSupportedException();

    public Task<IReadOnlyList<RoundPause>> PausesAsync(LocalDate from, CancellationToken cancellationToken) =>
        Task.FromResult<IReadOnlyList<RoundPause>>(Pauses);

    public Task PauseAsync(RoundPause pause, CancellationToken cancellationToken) => throw new NotSupportedException();

    private bool Queue(IReadOnlyList<Notice> notices)
    {
        foreach (Notice notice in notices)
            _notices.TryAdd(notice.Key, notice);
        return true;
    }

    private bool Step(Func<bool> write)
    {
        if (Killed())
            throw new KilledException();
        bool written = write();
        if (Killed())
            throw new KilledException();
        return written;
    }

    private OccasionFactsReader Scenes()
    {
        var log = Substitute.For<IReadingLog>();
        ISensorBook sensors = SensorBook();
        return new OccasionFactsReader(JarBook(), PlaceBook(), ForecastBook(), this, sensors, log,
            new ConcernReader(sensors, Substitute.For<ISourceRuleBook>(), Substitute.For<IProbeBook>(), log));
    }

    private IJarBook JarBook()
    {
        var book = Substitute.For<IJarBook>();
        book.KeptAsync(default).ReturnsForAnyArgs(Jars);
        return book;
    }

    private static IPlaceBook PlaceBook()
    {
        var book = Substitute.For<IPlaceBook>();
        book.AllAsync(default).ReturnsForAnyArgs([Make.Counter, Make.Cellar]);
        return book;
    }

    private IForecastBook ForecastBook()
    {
        var book = Substitute.For<IForecastBook>();
        book.LatestAsync(default(CancellationToken)).ReturnsForAnyArgs(_ => [.. Forecasts.Values]);
        return book;
    }

    private static ISensorBook SensorBook()
    {
        var book = Substitute.For<ISensorBook>();
        book.AllAsync(default).ReturnsForAnyArgs([]);
        return book;
    }
}
