using FermentWatch.Export.Forwarding;
using FermentWatch.Export.Points;
using FermentWatch.Export.Tests.Doubles;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using NodaTime.Testing;
using NSubstitute;

namespace FermentWatch.Export.Tests.Forwarding;

public class LogSeriesTests
{
    private readonly IForwardLog<SavedEstimate> _log = Substitute.For<IForwardLog<SavedEstimate>>();
    private readonly ISensorBook _sensors = Substitute.For<ISensorBook>();
    private readonly IJarBook _jars = Substitute.For<IJarBook>();
    private readonly IPlaceBook _places = Substitute.For<IPlaceBook>();
    private readonly LogSeries<SavedEstimate> _series;

    public LogSeriesTests()
    {
        _sensors.AllAsync(default).Returns([]);
        _places.AllAsync(default).Returns([Make.Counter, Make.Cellar]);
        _jars.KeptAsync(default).Returns([Make.Jar14]);
        _series = new LogSeries<SavedEstimate>(
            SeriesKind.Estimate, _log, (estimate, names) => SeriesPoints.Of(estimate, names, "home"), new OwnerReader(_sensors, _jars, _places),
            new FakeClock(Make.Noon));
    }

    [Fact]
    public async Task AfterAsync_JarThatIsKept_DoesNotReadThoseOfFormerYears()
    {
        Give(Make.Estimate(Make.Jar14.Id, Make.Noon));
        PointSlice slice = await _series.AfterAsync(0, 10, default);
        Assert.Single(slice.Points);
        Assert.Equal(5, slice.Cursor);
        await _jars.DidNotReceive().AllAsync(default);
    }

    [Fact]
    public async Task AfterAsync_JarThatHasEnded_IsFoundAmongAll()
    {
        Jar ended = Make.Jar(3, (Make.Counter, Make.Noon));
        _jars.AllAsync(default).Returns([Make.Jar14, ended]);
        Give(Make.Estimate(Make.Jar14.Id, Make.Noon), Make.Estimate(ended.Id, Make.Noon));
        PointSlice slice = await _series.AfterAsync(0, 10, default);
        Assert.Equal(["14", "3"], slice.Points.Select(point => point.ToLineProtocol().Split("jar=")[1].Split(',')[0]));
        Assert.Empty(slice.LeftOut);
    }

    [Fact]
    public async Task AfterAsync_JarThatNobodyKnows_IsLeftOutUnderItsReason()
    {
        _jars.AllAsync(default).Returns([Make.Jar14]);
        Guid unknown = Guid.CreateVersion7();
        Give(Make.Estimate(unknown, Make.Noon), Make.Estimate(Make.Jar14.Id, Make.Noon));
        PointSlice slice = await _series.AfterAsync(0, 10, default);
        Assert.Single(slice.Points);
        NotForwarded left = Assert.Single(slice.LeftOut);
        Assert.Equal((NotForwardedReason.UnknownOwner, Make.Noon), (left.Reason, left.At));
        Assert.Contains(unknown.ToString(), left.Example, StringComparison.Ordinal);
    }

    private void Give(params SavedEstimate[] estimates) =>
        _log.AfterAsync(0, 10, default).Returns(new ForwardSlice<SavedEstimate>(estimates, 5));
}
