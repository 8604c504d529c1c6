using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Tests.Doubles;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class ForecastPassTests
{
    [Fact]
    public async Task RunAsync_CutOffAfterTwentyFiveJars_HasWrittenThoseDownAndSaidThatItGoesOn()
    {
        using var cut = new CancellationTokenSource();
        var written = new List<Guid>();
        var forecasts = Substitute.For<IForecastBook>();
        forecasts.LatestAsync(default(CancellationToken)).ReturnsForAnyArgs([]);
        forecasts.SaveAsync([], default).ReturnsForAnyArgs(call =>
        {
            written.AddRange(call.Arg<IReadOnlyList<RenewedForecast>>().Select(each => each.Forecast.JarId));
            return cut.CancelAsync();
        });
        Jar[] jars = [.. Enumerable.Range(1, 30).Select(number => Make.Jar(number))];
        var places = Substitute.For<IPlaceBook>();
        places.AllAsync(default).ReturnsForAnyArgs([Make.Counter]);
        var sensors = Substitute.For<ISensorBook>();
        sensors.AllAsync(default).ReturnsForAnyArgs([]);
        var log = Substitute.For<IReadingLog>();
        log.MeanStampsAsync(default, default, default!, default).ReturnsForAnyArgs([]);
        IJarBook book = Make.Jars(jars);
        book.EndedLastAsync(default, default).ReturnsForAnyArgs([]);
        SetAside setAside = Make.SetAside();
        int steps = 0;
        setAside.Stepped += pass => steps += pass == "forecast" ? 1 : 0;
        var pass = new ForecastPass(Make.Households("UTC"), book, places, sensors, log, forecasts, setAside);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => pass.RunAsync(Make.Day(3), cut.Token));

        Assert.Equal(jars.Take(25).Select(jar => jar.Id), written);
        Assert.True(steps >= 30 + 25, $"{steps} steps: each jar's inputs, and each forecast");
    }
}
