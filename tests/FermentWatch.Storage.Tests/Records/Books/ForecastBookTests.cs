using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forecasts;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class ForecastBookTests : OpenedRecords
{
    private static readonly Guid Jar = Guid.CreateVersion7();

    private IForecastBook Book => Get<IForecastBook>();

    [Fact]
    public async Task LatestAsync_Saved_ComesBackToTheLastBit()
    {
        var saved = Forecast(Noon, "a", p50: 0.1 + 0.2);
        await Book.SaveAsync([new(saved, null)], default);
        await RestartAsync();

        Assert.Equivalent(saved, await Book.LatestAsync(Jar, default), strict: true);
        Assert.Equal(BitConverter.DoubleToInt64Bits(0.1 + 0.2),
            BitConverter.DoubleToInt64Bits((await Book.LatestAsync(Jar, default))!.Forecast.AcidLine.P50!.Value));
        Assert.Null(await Book.LatestAsync(Guid.CreateVersion7(), default));
    }

    [Fact]
    public async Task SaveAsync_Again_ReplacesTheLatestAndTheMarkOfItsDay()
    {
        await Book.SaveAsync([new(Forecast(Noon, "a", 2), null)], default);
        await Book.SaveAsync([new(Forecast(Noon + Duration.FromHours(11), "b", 3), "a")], default);
        await Book.SaveAsync([new(Forecast(Noon + Duration.FromHours(12), "c", null), "b")], default);

        Assert.Equal("c", Assert.Single(await Book.LatestAsync(default)).Inputs);
        Assert.Equal(
            [
                new ForecastMark(Jar, Noon + Duration.FromHours(11), "m1", new PassageDays(1, 3, null), new PassageDays(4, 5, 6)),
                new ForecastMark(Jar, Noon + Duration.FromHours(12), "m1", new PassageDays(1, null, null), new PassageDays(4, 5, 6)),
            ],
            (await Book.MarksAsync([Jar], default))[Jar]);
    }

    [Fact]
    public async Task LatestAsync_RowDeleted_IsGoneToo()
    {
        await Book.SaveAsync([new(Forecast(Noon, "a", 2), null)], default);
        Assert.Single(await Book.LatestAsync(default));
        TemporaryFolder.Sql(DatabasePath, "DELETE FROM forecast");
        await RestartAsync();
        Assert.Empty(await Book.LatestAsync(default));
    }

    [Fact]
    public async Task ForgetAsync_AJarOfWhichNothingIsForecastAnyMore_IsGoneAfterARestartTooAndItsMarksStay()
    {
        await Book.SaveAsync([new(Forecast(Noon, "a", 2), null)], default);
        await Book.ForgetAsync([Jar], default);
        Assert.Empty(await Book.LatestAsync(default));
        await RestartAsync();
        Assert.Empty(await Book.LatestAsync(default));
        Assert.Single((await Book.MarksAsync([Jar], default))[Jar]);
    }

    [Fact]
    public async Task MarksAsync_WithoutATarget_HasNone()
    {
        var forecast = Forecast(Noon, "a", 2);
        await Book.SaveAsync([new(forecast with { Forecast = forecast.Forecast with { Target = null } }, null)], default);
        Assert.Null(Assert.Single((await Book.MarksAsync([Jar], default))[Jar]).Target);
    }

    [Fact]
    public async Task LatestAsync_WrittenInAFormNoLongerRead_IsAsIfThereWereNone()
    {
        await Book.SaveAsync([new(Forecast(Noon, "a", 2), null)], default);
        TemporaryFolder.Sql(DatabasePath, "UPDATE forecast SET Content = x'7B7D'");
        await RestartAsync();
        Assert.Empty(await Book.LatestAsync(default));
        Assert.Null(await Book.LatestAsync(Jar, default));
        await Book.SaveAsync([new(Forecast(Noon, "b", 2), null)], default);
        Assert.Equal("b", Assert.Single(await Book.LatestAsync(default)).Inputs);
    }

    [Fact]
    public async Task SaveAsync_Forecasts_AreNoFacts()
    {
        await Book.SaveAsync([new(Forecast(Noon, "a", 2), null)], default);
        Assert.Equal(RevisionOfANewDatabase, await RevisionAsync());
    }

    [Fact]
    public async Task SaveAsync_OneThatReplacesWhatIsNoLongerTheLatest_ChangesNothing()
    {
        await Book.SaveAsync([new(Forecast(Noon, "a", 2), null)], default);
        await Book.SaveAsync([new(Forecast(Noon, "entered", 3), "a")], default);
        await Book.SaveAsync([new(Forecast(Noon, "begun before", 4), "a")], default);
        Assert.Equal("entered", Assert.Single(await Book.LatestAsync(default)).Inputs);
    }

    [Fact]
    public async Task SaveAsync_OnlyTemperaturesCameIn_IsWrittenToTheDiskFourTimesADay()
    {
        string facts = new('f', 32);
        string latest = facts + "0";
        await Book.SaveAsync([new(Forecast(Noon, latest, 0), null)], default);
        for (int quarter = 1; quarter < 48; quarter++)
        {
            string next = facts + quarter;
            await Book.SaveAsync([new(Forecast(Noon + Duration.FromMinutes(15 * quarter), next, quarter), latest)], default);
            latest = next;
        }
        Assert.Equal(47, (await Book.LatestAsync(Jar, default))!.Forecast.AcidLine.P50);
        await RestartAsync();
        Assert.Equal(24, (await Book.LatestAsync(Jar, default))!.Forecast.AcidLine.P50);
    }

    private static JarForecast Forecast(Instant asOf, string inputs, double? p50) => new(Jar, asOf, Noon, inputs, new Forecast
    {
        ModelVersion = "m1",
        Course = [new CoursePoint(0.5, 18.1, new Quantiles(4.1, 4.2, 4.3), new Quantiles(0.1, 1.0 / 3, 0.5), 22, new Quantiles(5, 5.5, 6))],
        AcidLine = new PassageDays(1, p50, null),
        Ph4 = new PassageDays(null, null, null),
        CentreAcidLine = new PassageDays(1.5, 2.5, 3.5),
        CentrePh4 = new PassageDays(7, 8, 9),
        Target = new PassageDays(4, 5, 6),
        Flagged = [new FlaggedReading(new PhReading(1, 5.5, PhMethod.Meter), "higher than any member", true)],
        Remarks = ["No temperature for two hours."],
    });
}
