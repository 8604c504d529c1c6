using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class ObservationLogTests : OpenedRecords
{
    private IForwardLog<LoggedObservation> Log => Get<IForwardLog<LoggedObservation>>();

    [Fact]
    public async Task AfterAsync_FollowsTheOrderOfEntry_WhateverTimesAndIdsSay()
    {
        Jar jar = await AddJarAsync();
        await ObserveAsync(Ph(jar, Noon, 4.2));
        var first = await Log.AfterAsync(0, 10, default);
        // Entered later, seen earlier, with the id of a clock that ran behind.
        await ObserveAsync(new Look { Id = Guid.CreateVersion7(DateTimeOffset.UnixEpoch), JarId = jar.Id, At = Noon - Duration.FromDays(2),
            EnteredAt = Noon, By = "Ada", Opened = false });

        var late = await Log.AfterAsync(first.Cursor, 10, default);

        Assert.Equal(4.2, Assert.IsType<PhMeasurement>(Assert.Single(first.Entries).Observation).Ph);
        Assert.IsType<Look>(Assert.Single(late.Entries).Observation);
        Assert.Equal(late.Cursor, await Log.EndAsync(default));
        Assert.IsType<Look>((await Log.NewestAsync(default))!.Observation);
        Assert.Empty((await Log.AfterAsync(late.Cursor, 10, default)).Entries);
    }

    [Fact]
    public async Task AfterAsync_TakenBackBeforeItWasPassedOn_StaysAwayAndItsReplacementComes()
    {
        Jar jar = await AddJarAsync();
        PhMeasurement wrong = Ph(jar, Noon, 9), right = Ph(jar, Noon, 3.9);
        await ObserveAsync(wrong);
        await Get<IJarBook>().CorrectAsync(wrong.Id, Noon, "Ada", right, default);

        LoggedObservation only = Assert.Single((await Log.AfterAsync(0, 10, default)).Entries);
        Assert.Equal(right.Id, only.Observation.Id);
    }

    [Fact]
    public async Task AfterAsync_SeveralOfOneInstant_AreApartByMilliseconds_AlsoAfterOneIsTakenBack()
    {
        Jar jar = await AddJarAsync(), other = await AddJarAsync();
        PhMeasurement first = Ph(jar, Noon, 4.0);
        await ObserveAsync(first);
        await ObserveAsync(Ph(jar, Noon, 4.1));
        await ObserveAsync(Ph(other, Noon, 4.2));
        await ObserveAsync(Ph(jar, Noon, 4.3));
        (double, double)[] expected = [(4.0, 0), (4.1, 1), (4.2, 0), (4.3, 2)];

        Assert.Equal(expected, await PointsAsync());
        await Get<IJarBook>().CorrectAsync(first.Id, Noon, "Ada", null, default);
        Assert.Equal(expected[1..], await PointsAsync());
    }

    [Fact]
    public async Task AfterAsync_Titration_IsPassedOnAsWell()
    {
        Jar jar = await AddJarAsync();
        await ObserveAsync(
            new Titration { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Ada", PercentLactic = 1.2 });
        Assert.Equal(1.2, Assert.IsType<Titration>(Assert.Single((await Log.AfterAsync(0, 10, default)).Entries).Observation).PercentLactic);
    }

    [Fact]
    public async Task AfterAsync_StageChangesAndWhatWasEaten_AreNoSeries()
    {
        Jar jar = await AddJarAsync();
        await ObserveAsync(
            new PortionTaken { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Ada", Fraction = 0.25 },
            new JarOpened { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Ada" },
            new StageChange { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Ada", Stage = JarStage.Cold },
            new Taste { Id = Guid.CreateVersion7(), JarId = jar.Id, At = Noon, EnteredAt = Noon, By = "Ada", Verdict = TasteVerdict.Right });
        Assert.IsType<Taste>(Assert.Single((await Log.AfterAsync(0, 10, default)).Entries).Observation);
    }

    private async Task<IEnumerable<(double Ph, double Milliseconds)>> PointsAsync() =>
        (await Log.AfterAsync(0, 10, default)).Entries.Select(entry => (((PhMeasurement)entry.Observation).Ph, (entry.At - Noon).TotalMilliseconds));

    private Task ObserveAsync(params Observation[] observations) => Get<IJarBook>().ObserveAsync(observations, default);

    private async Task<Jar> AddJarAsync() =>
        (await Get<IJarBook>().AddAsync([JarBookTests.Jar(await AddPlaceAsync($"shelf {Guid.CreateVersion7()}"))], default))[0];

    private static PhMeasurement Ph(Jar jar, Instant at, double ph) =>
        new() { Id = Guid.CreateVersion7(), JarId = jar.Id, At = at, EnteredAt = Noon, By = "Ada", Ph = ph, Method = PhMethod.Meter };
}
