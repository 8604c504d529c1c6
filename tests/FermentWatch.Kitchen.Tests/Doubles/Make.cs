using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using NodaTime;
using NodaTime.Testing;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Doubles;

/// <summary>Things of an invented kitchen, as short as a test wants them.</summary>
internal static class Make
{
    public static readonly Instant Packed = Instant.FromUtc(2026, 10, 1, 16, 0);

    public static readonly Place Counter = new() { Id = Guid.NewGuid(), Name = "Counter", ShelfOrder = 1, Typical = TypicalTemperature.Usual };

    public static readonly Place Cellar = new() { Id = Guid.NewGuid(), Name = "Cellar", ShelfOrder = 2, Typical = TypicalTemperature.Cellar };

    /// <summary>Nothing set aside yet.</summary>
    public static SetAside SetAside() => new(new FakeClock(Packed));

    public static Household Household(string zone = "Europe/Vienna") =>
        new() { Id = Guid.NewGuid(), Name = "Number Nine", TimeZoneId = zone, PhTool = PhTool.Meter };

    public static IHouseholdBook Households(string zone)
    {
        IHouseholdBook households = Substitute.For<IHouseholdBook>();
        households.ReadAsync(default).ReturnsForAnyArgs(Household(zone));
        return households;
    }

    /// <summary>A book of people who look on every day.</summary>
    public static IMemberBook Members(params Member[] members)
    {
        IMemberBook book = Substitute.For<IMemberBook>();
        book.RosterAsync(default, default).ReturnsForAnyArgs(new Roster(members, [], []));
        return book;
    }

    /// <summary>A book of these kept jars.</summary>
    public static IJarBook Jars(params Jar[] kept)
    {
        IJarBook book = Substitute.For<IJarBook>();
        book.KeptAsync(default).ReturnsForAnyArgs(kept);
        return book;
    }

    public static Jar Jar(int number, Place? place = null, Instant? packedAt = null, Cover cover = Cover.Leaf, Lid lid = Lid.Vented,
        params Observation[] seen)
    {
        var jar = new Jar
        {
            Id = Guid.NewGuid(), Number = number, Name = "cabbage", BatchId = Guid.NewGuid(), PackedAt = packedAt ?? Packed,
            Portions = [new Portion("cabbage", 0.8)], Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25),
            VesselLitres = 1, Cover = cover, Lid = lid, Target = Sourness.Sour,
        };
        jar.Placements.Add(new JarPlacement { Id = Guid.NewGuid(), JarId = jar.Id, PlaceId = (place ?? Counter).Id, From = jar.PackedAt });
        jar.Observations.AddRange(seen);
        return jar;
    }

    public static Instant Day(double days) => Packed + Duration.FromDays(days);

    public static PhMeasurement Ph(double ph, PhMethod method, double day, bool inBuffer = true, bool pale = true, bool blended = false,
        double? celsius = null) => new()
    {
        Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Ph = ph, Method = method,
        CheckedInBuffer = inBuffer, PaleBrine = pale, Blended = blended, SampleCelsius = celsius,
    };

    public static Look Look(double day) =>
        new() { Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Opened = false };

    public static Sighting Sighting(SightingKind kind, double day) => new()
    {
        Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Kind = kind,
    };

    public static Taste Taste(TasteVerdict verdict, double day) => new()
    {
        Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Verdict = verdict,
    };

    public static Handling Handling(HandlingKind kind, double day) => new()
    {
        Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Kind = kind,
    };

    public static StageChange Stage(JarStage stage, double day) => new()
    {
        Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Stage = stage,
    };

    /// <summary>A jar that ended well, and where it went.</summary>
    public static StageChange Went(Destination? went, double day, string? to = null) => new()
    {
        Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Stage = JarStage.Finished, Went = went,
        GivenTo = to,
    };

    public static PortionTaken Portion(double day, double? fraction = null, double? litres = null, double? kilograms = null) => new()
    {
        Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira", Fraction = fraction, Litres = litres,
        Kilograms = kilograms,
    };

    public static JarOpened Opened(double day) =>
        new() { Id = Guid.NewGuid(), JarId = Guid.Empty, At = Day(day), EnteredAt = Day(day), By = "Mira" };

    /// <summary>A forecast with these days to the target and one acidity throughout.</summary>
    public static JarForecast Forecast(Jar jar, double? p10, double? p50, double? p90, double acidity = 0.8, double celsius = 20)
    {
        var level = new Quantiles(acidity, acidity, acidity);
        var course = new[] { new CoursePoint(0, celsius, level, level, 10, level) };
        return new JarForecast(jar.Id, jar.PackedAt, jar.PackedAt, "", new Forecast
        {
            ModelVersion = "test", Course = course, AcidLine = default, Ph4 = default, CentreAcidLine = default, CentrePh4 = default,
            Target = new PassageDays(p10, p50, p90), Flagged = [], Remarks = [],
        });
    }
}
