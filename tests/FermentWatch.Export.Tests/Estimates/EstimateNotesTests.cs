using FermentWatch.Export.Estimates;
using FermentWatch.Export.Tests.Doubles;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;
using NSubstitute;

namespace FermentWatch.Export.Tests.Estimates;

public class EstimateNotesTests
{
    private static readonly Instant Now = Make.Noon + Duration.FromDays(2) + Duration.FromMinutes(7);

    private readonly IForecastBook _forecasts = Substitute.For<IForecastBook>();
    private readonly IJarBook _jars = Substitute.For<IJarBook>();
    private readonly IHouseholdBook _households = Substitute.For<IHouseholdBook>();
    private readonly IEstimateLog _log = Substitute.For<IEstimateLog>();
    private readonly Jar _jar = Make.Jar(1, (Make.Counter, Make.Noon));
    private readonly EstimateNotes _notes;
    private IReadOnlyList<SavedEstimate> _noted = [];

    public EstimateNotesTests()
    {
        _households.ReadAsync(default).Returns(new Household { Id = Guid.CreateVersion7(), Name = "home", TimeZoneId = "UTC" });
        _jars.KeptAsync(default).Returns([_jar]);
        _forecasts.LatestAsync(default).Returns([Forecast(_jar, 5.5)]);
        _log.LastInputsAsync(default).Returns(new Dictionary<Guid, string>());
        _log.NoteAsync(Arg.Do<IReadOnlyList<SavedEstimate>>(noted => _noted = noted), default).Returns(Task.CompletedTask);
        _notes = new EstimateNotes(_forecasts, _jars, _households, _log);
    }

    [Fact]
    public async Task RunAsync_NewForecast_IsNotedAsOfWhatItKnowsAndSaidNow()
    {
        Assert.Equal(1, await _notes.RunAsync(Now, default));
        SavedEstimate expected = new(_jar.Id, Now, "a")
        {
            PhP10 = 3.75, PhP50 = 4, PhP90 = 4.5, AcidityPercentLacticP50 = 0.875, SournessP50 = 64, DaysToTargetP50 = 3.5,
        };
        Assert.Equal([expected], _noted);
    }

    [Fact]
    public async Task RunAsync_TargetThatMayNeverBeReached_HasNoDays()
    {
        _forecasts.LatestAsync(default).Returns([Forecast(_jar, null)]);
        await _notes.RunAsync(Now, default);
        Assert.Null(Assert.Single(_noted).DaysToTargetP50);
    }

    [Fact]
    public async Task RunAsync_ForecastThatIsNoted_IsNotNotedAgain()
    {
        _log.LastInputsAsync(default).Returns(new Dictionary<Guid, string> { [_jar.Id] = "a" });
        Assert.Equal(0, await _notes.RunAsync(Now, default));
        Assert.Empty(_noted);
    }

    [Fact]
    public async Task RunAsync_ForecastWithdrawnAfterTrouble_IsNotSaid()
    {
        _jar.Observations.Add(
            new Sighting { Kind = SightingKind.Film, Id = Guid.CreateVersion7(), JarId = _jar.Id, At = Make.Noon, EnteredAt = Make.Noon,
            By = "Ada" });
        Assert.Equal(0, await _notes.RunAsync(Now, default));
        Assert.Empty(_noted);
    }

    [Fact]
    public async Task RunAsync_ForecastOfAJarThatHasEnded_IsNotSaid()
    {
        _forecasts.LatestAsync(default).Returns([Forecast(Make.Jar(2, (Make.Counter, Make.Noon)), 5)]);
        Assert.Equal(0, await _notes.RunAsync(Now, default));
        Assert.Empty(_noted);
    }

    private static JarForecast Forecast(Jar jar, double? target) => new(
        jar.Id, Make.Noon + Duration.FromDays(2), Make.Noon, "a",
        new Forecast
        {
            ModelVersion = "1",
            Course = [Point(0, 6), Point(2, 4), Point(2.5, 3.5)],
            AcidLine = default, Ph4 = default, CentreAcidLine = default, CentrePh4 = default,
            Target = new PassageDays(4, target, null), Flagged = [], Remarks = [],
        });

    private static CoursePoint Point(double day, double ph) =>
        new(day, 18, new Quantiles(ph - 0.25, ph, ph + 0.5), new Quantiles(0.75, 0.875, 1), 64, new Quantiles(ph, ph, ph));
}
