using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Service.Metrics;
using NodaTime;
using NodaTime.Testing;
using NSubstitute;
using NSubstitute.ExceptionExtensions;

namespace FermentWatch.Service.Tests.Metrics;

public class BacklogTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 12, 0);

    private readonly INoticeBook _notices = Substitute.For<INoticeBook>();
    private readonly IForwardCursors _cursors = Substitute.For<IForwardCursors>();
    private readonly IForwardLog<Reading> _readings = Substitute.For<IForwardLog<Reading>>();
    private readonly IEstimateLog _estimates = Substitute.For<IEstimateLog>();
    private readonly IForwardLog<LoggedObservation> _observations = Substitute.For<IForwardLog<LoggedObservation>>();
    private readonly Backlog _backlog;

    public BacklogTests()
    {
        _cursors.ReadAsync(SeriesKind.Reading, default).Returns(7);
        _readings.WaitingAsync(7, default).Returns(new WaitingEntries(3, Now - Duration.FromSeconds(90)));
        _estimates.WaitingAsync(0, default).Returns(new WaitingEntries(0, null));
        _observations.WaitingAsync(0, default).Returns(new WaitingEntries(0, null));
        _backlog = new Backlog(_notices, _cursors, _readings, _estimates, _observations, new FakeClock(Now));
    }

    [Fact]
    public async Task Read_RecordsCannotBeRead_SaysNoNumberForTheirsAndTheRestAsItIs()
    {
        _notices.WaitingAsync(default).ThrowsAsync(new IOException("The disk is gone."));
        await _backlog.ReadAsync(forwards: true, default);
        Assert.Equal(double.NaN, _backlog.Notices(Channel.Email));
        Assert.Equal((3, 90), (_backlog.Points(SeriesKind.Reading), _backlog.OldestSeconds(SeriesKind.Reading)));
        Assert.Equal((0, 0), (_backlog.Points(SeriesKind.Estimate), _backlog.OldestSeconds(SeriesKind.Estimate)));
    }

    [Fact]
    public async Task Read_LogCannotBeReadAnyMore_DoesNotGoOnSayingWhatWas()
    {
        _notices.WaitingAsync(default).Returns(new Dictionary<Channel, int> { [Channel.Email] = 2 });
        await _backlog.ReadAsync(forwards: true, default);
        _readings.WaitingAsync(7, default).ThrowsAsync(new IOException("The disk is gone."));
        await _backlog.ReadAsync(forwards: true, default);
        Assert.Equal((double.NaN, double.NaN), (_backlog.Points(SeriesKind.Reading), _backlog.OldestSeconds(SeriesKind.Reading)));
        Assert.Equal((2, 0), (_backlog.Notices(Channel.Email), _backlog.Notices(Channel.Mqtt)));
    }
}
