using CsCheck;
using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Calendar;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Web.Api.Answers;
using NodaTime;
using NodaTime.Testing;
using NSubstitute;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>
/// Random households on random days: page, round, message, notice, topic, API and calendar say the same of each jar. Some hundred
/// household days by default, 10,000 with FERMENTWATCH_TESTS_LONG=1.
/// </summary>
public sealed class OneTruthTests
{
    private static readonly int HouseholdDays = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 10_000 : 400;

    private static readonly Place Counter = new() { Id = Guid.NewGuid(), Name = "counter", ShelfOrder = 1, Typical = TypicalTemperature.Usual };

    private static readonly Instant Start = Instant.FromUtc(2026, 11, 1, 16, 0);

    private static readonly Gen<Observation> Seen = Gen.Select(Gen.Int[0, 6], Gen.Double[0, 30], Gen.Int[1, 8], Gen.Double[3.3, 5.2])
        .Select((what, day, kind, ph) => Of(what, Start + Duration.FromDays(day), kind, ph));

    private static readonly Gen<(Observation[] Seen, int Batch, int Lid, int Cover, int PackedDay, double P50)> AJar =
        Gen.Select(Seen.Array[0, 9], Gen.Int[0, 2], Gen.Int[1, 4], Gen.Int[1, 3], Gen.Int[0, 4], Gen.Double[0.5, 25]);

    private static readonly Gen<(int Day, PhTool Tool, Jar[] Jars, JarForecast[] Forecasts)> AHousehold =
        Gen.Select(Gen.Int[0, 30], Gen.Int[0, 3], AJar.Array[1, 6]).Select((day, tool, jars) =>
        {
            Jar[] made = [.. jars.Select((each, i) => Made(i + 1, each, day))];
            return (day, (PhTool)tool, made, made.Select((jar, i) => Expected(jar, jars[i].P50)).ToArray());
        });

    [Fact]
    public void EveryFaceOfEveryJar_OnAnyDay_SaysTheSame() =>
        AHousehold.Sample(each => Compare(each.Day, each.Tool, each.Jars, each.Forecasts).GetAwaiter().GetResult(), iter: HouseholdDays);

    private static async Task Compare(int day, PhTool tool, Jar[] jars, JarForecast[] forecasts)
    {
        var household = new Household { Id = Guid.NewGuid(), Name = "Number Nine", TimeZoneId = "UTC", PhTool = tool };
        Instant now = Start.InUtc().Date.PlusDays(day).At(new LocalTime(18, 0)).InUtc().ToInstant();
        var clock = new FakeClock(now);
        LocalDate today = now.InUtc().Date;
        var book = Substitute.For<IJarBook>();
        book.KeptAsync(default).ReturnsForAnyArgs([.. jars.Where(jar => jar.Stage is JarStage.Fermenting or JarStage.Cold)]);
        book.FindAsync(default, default).ReturnsForAnyArgs(call => jars.FirstOrDefault(jar => jar.Number == call.Arg<int>()));
        var households = Substitute.For<IHouseholdBook>();
        households.ReadAsync(default).ReturnsForAnyArgs(household);
        var places = Substitute.For<IPlaceBook>();
        places.AllAsync(default).ReturnsForAnyArgs([Counter]);
        var saved = Substitute.For<IForecastBook>();
        saved.LatestAsync(default(CancellationToken)).ReturnsForAnyArgs(forecasts);
        saved.LatestAsync(default(Guid), default).ReturnsForAnyArgs(call => forecasts.FirstOrDefault(each => each.JarId == call.Arg<Guid>()));
        var sensors = Substitute.For<ISensorBook>();
        sensors.AllAsync(default).ReturnsForAnyArgs([]);
        var members = Substitute.For<IMemberBook>();
        members.RosterAsync(default, default)
            .ReturnsForAnyArgs(new Roster([new Member("Mira", MemberRole.Adult, new Duty { Person = "Mira" })], [], []));
        var log = Substitute.For<IReadingLog>();
        var opened = Substitute.For<IRoundBook>();
        opened.SinceAsync(default, default).ReturnsForAnyArgs(Opened(jars, today, day));
        var time = Substitute.For<TimeProvider>();
        time.GetUtcNow().Returns(now.ToDateTimeOffset());
        var rounds = new RoundPass(households, opened, book, places, saved, Substitute.For<INoticeBook>(), members, new DryPlaces(sensors, log),
            new SetAside(clock));
        RoundSheet sheet = await rounds.SheetAsync(household, today, default);
        var pages = (await new JarReader(book, places, households, saved, opened, sensors, log, time).KeptAsync(default))
            .ToDictionary(view => view.Jar.Number);
        ComingDays calendar = await new ComingDaysReader(households, members, book, places, saved, opened, rounds).ReadAsync("Mira", now, default);
        var asked = new NoticeQuestion(today, now + Duration.FromHours(6),
            [new AskedShelf(Counter.Id, Counter.Name, [.. jars.Select(jar => jar.Number)], [])]);
        IReadOnlySet<int> waiting = asked.Waiting(jars, household.Zone);
        string message = RoundWords.Body(sheet);
        foreach (RoundJar each in sheet.Jars)
        {
            JarView page = pages[each.Jar.Number];
            string of = $"jar {each.Jar.Number}, day {each.Day}: {each.Step.Text}";
            // Its line: round, page and API; one day count.
            Assert.Equal(each.Step, page.Next);
            Assert.Equal(each.Step.Text, JarAnswer.Of(page).NextStep);
            Assert.Equal(each.Step.Text, RoundJarAnswer.Of(each, Counter).NextStep);
            Assert.Equal(each.Day, page.Calendar.DayNumber);
            // Answered: round, page and notice.
            Assert.Equal(each.LookedAtToday, page.Today.LookedAtToday);
            Assert.True(each.LookedAtToday != waiting.Contains(each.Jar.Number), of);
            // Opened: a jar that is to be opened is never told it need not be.
            Assert.Equal(each.Opening, page.Today.Opening);
            Assert.False(each.Opening && each.Step.Text.Contains("No need to open", StringComparison.Ordinal), of);
            // Withdrawn: page, API and topic.
            JarState topic = JarState.Of(each.Jar, Counter.Name, forecasts.FirstOrDefault(one => one.JarId == each.Jar.Id), household.Zone, now);
            Assert.Equal(each.State.ForecastWithdrawn, topic.ForecastWithdrawn);
            Assert.Equal(each.State.ForecastWithdrawn, JarAnswer.Of(page).SourEnough is null);
            Assert.False(page.LineState.Contains("settled", StringComparison.Ordinal) && each.Step.Kind == StepKind.RisingPh, of);
            // Tasting: round, message and calendar; never on day 0, never a jar in trouble.
            bool tastes = each.LookFors.Contains(LookFor.Taste);
            Assert.False(tastes && (each.Day == 0 || each.Trouble is not null || !page.MayBeTasted), of);
            Assert.False(tastes && !calendar.Tastes.Any(one => one.Number == each.Jar.Number && one.Date == today), of);
            // What cannot be measured is not asked for.
            Assert.False(tool == PhTool.Nothing && each.LookFors.Contains(LookFor.MeasurePh), of);
            Assert.Equal(each.Step.Urgent, each.Step.Kind is StepKind.RisingPh or StepKind.Mould or StepKind.Pressure or StepKind.BrineGone);
        }
        Assert.Equal(sheet.Jars.Any(each => each.LookFors.Contains(LookFor.Taste)), message.Contains("Taste: ", StringComparison.Ordinal));
        Assert.InRange(ToDoLine.Of(sheet.Jars).Count, 0, 4);
        Assert.Equal(sheet.Jars.Any() && sheet.Jars.All(each => each.LookedAtToday),
            calendar.Rounds.Any(round => round.Date == today && round.DoneAt is not null));
        foreach (Jar ended in jars.Where(jar => jar.Stage is JarStage.Finished or JarStage.ThrownOut))
        {
            JarView page = (await new JarReader(book, places, households, saved, opened, sensors, log, time).FindAsync(ended.Number, default))!;
            Assert.DoesNotContain("robably", page.SourEnough, StringComparison.Ordinal);
            Assert.Equal(StepKind.Look, page.Next.Kind);
        }
    }

    /// <summary>Rounds of the last days, which asked for whatever the forecasts of their mornings said; half of the time today's among
    /// them.</summary>
    private static Round[] Opened(Jar[] jars, LocalDate today, int day) =>
    [
        .. Enumerable.Range(day % 2, day % 9).Select(ago => new Round
        {
            Date = today.PlusDays(-ago), DueAt = today.PlusDays(-ago).At(new LocalTime(7, 0)).InUtc().ToInstant(),
            OpenedAt = today.PlusDays(-ago).At(new LocalTime(7, 0)).InUtc().ToInstant(), Missed = ago == 5,
            TasteAsked = [.. jars.Where(jar => ago != 5 && (jar.Number + ago + day) % 3 == 0).Select(jar => jar.Id).Take(3)],
            DecideAsked = [.. jars.Where(jar => ago is 0 or 3 && (jar.Number + day) % 4 == 0).Select(jar => jar.Id)],
        }),
    ];

    private static Observation Of(int what, Instant at, int kind, double ph)
    {
        var id = Guid.NewGuid();
        return what switch
        {
            0 => new Look { Id = id, JarId = id, At = at, EnteredAt = at, By = "Mira", Opened = false },
            1 => new Sighting { Id = id, JarId = id, At = at, EnteredAt = at, By = "Mira", Kind = (SightingKind)kind },
            2 => new Taste { Id = id, JarId = id, At = at, EnteredAt = at, By = "Mira", Verdict = (TasteVerdict)((kind + 1) / 2) },
            3 or 4 => new PhMeasurement { Id = id, JarId = id, At = at, EnteredAt = at, By = "Mira", Ph = ph, Method = PhMethod.Meter,
            CheckedInBuffer = true },
            5 => new Handling { Id = id, JarId = id, At = at, EnteredAt = at, By = "Mira", Kind = (HandlingKind)((kind % 5) + 1) },
            _ => new StageChange { Id = id, JarId = id, At = at, EnteredAt = at, By = "Mira",
            Stage = (JarStage)(((kind + 1) / 2) is var stage && stage == 1 ? 2 : stage) },
        };
    }

    private static readonly Guid[] Batches = [Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid()];

    /// <summary>A jar with what was seen of it up to the day.</summary>
    private static Jar Made(int number, (Observation[] Seen, int Batch, int Lid, int Cover, int PackedDay, double P50) from, int day)
    {
        Instant packed = Start + Duration.FromDays(Math.Min(from.PackedDay, day)) - Duration.FromHours(10), until = Start + Duration.FromDays(day)
            + Duration.FromHours(2);
        var jar = new Jar
        {
            Id = Guid.NewGuid(), Number = number, Name = "cabbage", BatchId = Batches[from.Batch], PackedAt = packed,
                Portions = [new Portion(number % 2 == 0 ? "cabbage" : "carrot", 0.7)],
            Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = (Cover)from.Cover, Lid = (Lid)from.Lid,
            Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.NewGuid(), JarId = jar.Id, PlaceId = Counter.Id, From = packed });
        jar.Observations.AddRange(from.Seen.Where(each => each.At > packed && each.At <= until));
        return jar;
    }

    private static JarForecast Expected(Jar jar, double p50)
    {
        var level = new Quantiles(0.7, 0.8, 0.9);
        return new JarForecast(jar.Id, jar.PackedAt, jar.PackedAt, "", new Forecast
        {
            ModelVersion = "test", Course = [new CoursePoint(0, 20, level, level, 10, level), new CoursePoint(60, 20, level, level, 10, level)],
            AcidLine = new(1, 2, 3), Ph4 = default, CentreAcidLine = default, CentrePh4 = default,
            Target = new PassageDays(p50 * 0.8, p50, p50 * 1.4), Flagged = [], Remarks = [],
        });
    }
}
