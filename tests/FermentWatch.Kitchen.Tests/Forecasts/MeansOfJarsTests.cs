using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Forecasts;

/// <summary>Which news renews a forecast: that of the jar's own place, once its quarter hour is over, and nothing else.</summary>
public class MeansOfJarsTests
{
    private static readonly Dictionary<Guid, Place> Places = new() { [Make.Counter.Id] = Make.Counter, [Make.Cellar.Id] = Make.Cellar };
    private static readonly Instant Closed = Make.Day(10);

    private readonly Sensor _counter = At(1, Make.Counter.Id), _cellar = At(2, Make.Cellar.Id);
    private readonly Dictionary<(int Key, Instant Start), long> _means = [];
    private readonly Jar _jar = Make.Jar(1);

    [Fact]
    public async Task OfAsync_AReadingOfAnotherShelf_IsTheSameName()
    {
        Add(1, Closed - QuarterHour.Length, 1);
        string before = await NameAsync();
        Add(2, Closed - QuarterHour.Length, 2);
        Assert.Equal(before, await NameAsync());
    }

    [Fact]
    public async Task OfAsync_AReadingOfTheOpenQuarterHour_IsTheSameName()
    {
        Add(1, Closed - QuarterHour.Length, 1);
        string before = await NameAsync();
        Add(1, Closed, 2);
        Assert.Equal(before, await NameAsync());
    }

    [Fact]
    public async Task OfAsync_AClosedQuarterHourOfItsShelf_IsAnotherNameAndALaterForecast()
    {
        Add(1, Closed - Duration.FromHours(1), 1);
        NamedInputs before = await InputsAsync();
        Add(1, Closed - QuarterHour.Length, 2);
        NamedInputs after = await InputsAsync();
        Assert.NotEqual(before.Name, after.Name);
        Assert.Equal((Closed - Duration.FromMinutes(45), Closed), (before.AsOf, after.AsOf));
    }

    [Fact]
    public async Task OfAsync_AMeanOfFormerDaysThatChanged_IsAnotherName()
    {
        Add(1, Closed - Duration.FromDays(3), 1);
        string before = await NameAsync();
        Add(1, Closed - Duration.FromDays(3), 2);
        Assert.NotEqual(before, await NameAsync());
    }

    [Fact]
    public async Task OfAsync_NothingMeasured_IsRenewedOncePerDay()
    {
        NamedInputs noon = await InputsAsync();
        Assert.Equal(noon, await InputsAsync(Closed + Duration.FromHours(1)));
        NamedInputs tomorrow = await InputsAsync(Closed + Duration.FromDays(1));
        Assert.NotEqual(noon.Name, tomorrow.Name);
        Assert.Equal(Duration.FromDays(1), tomorrow.AsOf - noon.AsOf);
    }

    [Fact]
    public async Task OfAsync_SensorCarriedAway_LeavesWhatItMeasuredHereAndNoMore()
    {
        Add(1, Closed - Duration.FromDays(2), 1);
        _counter.Placements.Add(
            new SensorPlacement { Id = Guid.NewGuid(), SensorId = _counter.Id, PlaceId = Make.Cellar.Id, From = Closed - Duration.FromDays(1) });
        string before = await NameAsync();
        Add(1, Closed - QuarterHour.Length, 2);
        Assert.Equal(before, await NameAsync());
        Add(1, Closed - Duration.FromDays(2), 3);
        Assert.NotEqual(before, await NameAsync());
    }

    private void Add(int key, Instant start, long revision) => _means[(key, start)] = revision;

    private async Task<string> NameAsync() => (await InputsAsync()).Name;

    private async Task<NamedInputs> InputsAsync(Instant? closed = null)
    {
        var log = Substitute.For<IReadingLog>();
        log.MeanStampsAsync(default, default, [], default).ReturnsForAnyArgs(call =>
            Task.FromResult<IReadOnlyList<MeanStamp>>([.. call.Arg<IReadOnlyList<SensorSpan>>().Select(StampOf)]));
        return await new ForecastInputs(new MeansOfJars(log, [_counter, _cellar]), Places, null).OfAsync(_jar, closed ?? Closed, default);
    }

    private MeanStamp StampOf(SensorSpan span)
    {
        var within = _means.Where(each => each.Key.Key == span.SensorKey && each.Key.Start >= span.From && each.Key.Start < span.Until).ToList();
        return new MeanStamp(within.Count, within.Select(each => each.Value).DefaultIfEmpty().Max(), within.Count == 0 ? null
            : within.Max(each => each.Key.Start));
    }

    private static Sensor At(int key, Guid place)
    {
        var sensor = new Sensor { Id = Guid.NewGuid(), Key = key, Slug = $"s{key}", Name = $"s{key}", AddedAt = Make.Packed };
        sensor.Placements.Add(
            new SensorPlacement { Id = Guid.NewGuid(), SensorId = sensor.Id, PlaceId = place, From = Make.Packed - Duration.FromDays(30) });
        return sensor;
    }
}
