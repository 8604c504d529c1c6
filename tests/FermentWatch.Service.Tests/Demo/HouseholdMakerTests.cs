using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Service.CommandLine;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Service.Demo.Household;
using FermentWatch.Service.Settings;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Demo;

public sealed class HouseholdMakerTests : IDisposable
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Europe/Vienna"];

    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 12, 0);

    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-household").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Make_EmptyRecords_HoldsOneJarOfEachTroubleAndOneOfEachEnd()
    {
        IReadOnlyList<Jar> jars = await MakeAsync();
        Assert.Equal(Enumerable.Range(1, jars.Count), jars.Select(jar => jar.Number));
        Assert.Equal(Enum.GetValues<SightingKind>(), jars.SelectMany(jar => jar.Standing).OfType<Sighting>().Select(sighting => sighting.Kind)
            .Distinct().Order());
        Assert.Equal([JarStage.Fermenting, JarStage.Cold, JarStage.Finished, JarStage.ThrownOut], jars.Select(jar => jar.Stage).Distinct().Order());
        Assert.Contains(jars, jar => jar.Placements.Count > 1);
        Assert.Contains(jars, jar => AcidLine.Report(jar, Zone) is { State: AcidLineState.MeasuredBelow, Settled: true });
        Assert.Contains(jars, jar => AcidLine.Report(jar, Zone).Alarm == AcidLineAlarm.Rise);
        Assert.Contains(jars, jar => AcidLine.Report(jar, Zone).State == AcidLineState.NotMeasured);
    }

    [Fact]
    public async Task Make_EmptyRecords_IsAHouseholdThatLivedThroughFiveWeeksWithAnAutumnBehindIt()
    {
        IReadOnlyList<Jar> jars = await MakeAsync();
        var entered = jars.SelectMany(jar => jar.Observations).ToList();
        Assert.Equal(["Ash", "Juniper", "Rowan", "Wren"], entered.Select(each => each.By).Distinct().Order());
        Assert.All(entered, each => Assert.True(each.ById is not null && each.At == each.EnteredAt && each.At < Now));
        List<Jar> lastYear = [.. jars.Where(jar => jar.PackedAt < Now - Duration.FromDays(365))];
        Assert.Equal(3, lastYear.Count);
        Assert.All(lastYear, jar =>
            Assert.True(jar.Stage == JarStage.Finished && jar.Observations.OfType<Taste>().Any() && jar.Observations.OfType<PhMeasurement>().Any()));
        Assert.All(jars.Except(lastYear), jar => Assert.True(jar.PackedAt >= Now - Duration.FromDays(36)));
        Assert.InRange(entered.OfType<Look>().Where(look => look.At >= Now - Duration.FromDays(36)).Select(look => look.At.InZone(Zone).Date)
            .Distinct().Count(), 28, 34);
        Assert.Contains(jars, jar => jar.Stage == JarStage.Finished && jar.Observations.OfType<Taste>().Any());
        Assert.True(jars.Count(jar => Trouble.Of(jar, Zone) is { CloserWatch: false } && jar.Stage == JarStage.Fermenting) >= 12);
    }

    [Fact]
    public async Task Make_EmptyRecords_KeepsWhatWasForetoldSoThatLookingBackHasSomethingToShow()
    {
        BackLooked? looked = null;
        await MakeAsync(async records => looked = await records.GetRequiredService<LookBack>().DoAsync(CancellationToken.None));
        Assert.Equal(5, looked!.Tasted.Count);
        Assert.InRange(looked.Measured.Count, 6, 12);
        Assert.All(looked.Tasted.Concat(looked.Measured), each => Assert.NotNull(each.LateDay));
    }

    private async Task<IReadOnlyList<Jar>> MakeAsync(Func<IServiceProvider, Task>? look = null)
    {
        IConfiguration configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(new Dictionary<string, string?> { ["Storage:Folder"] = _folder }).Build();
        using var error = new StringWriter();
        var past = new PastClock();
        var context = new CommandContext { Output = TextWriter.Null, Error = error, Clock = past };
        IReadOnlyList<Jar> jars = [];
        await HouseholdRecords.WithAsync(ServiceSettings.Read(configuration).OrThrow(), context, async records =>
        {
            MadeHousehold made = await HouseholdMaker.In(records, past).MakeAsync(Now, Zone, CancellationToken.None);
            Assert.Equal(NumberNine.Sensors.Count, made.Sensors.Count);
            jars = await records.GetRequiredService<IJarBook>().AllAsync(CancellationToken.None);
            if (look is not null)
                await look(records);
            return ExitCode.Done;
        });
        Assert.Equal("", error.ToString());
        return jars;
    }
}
