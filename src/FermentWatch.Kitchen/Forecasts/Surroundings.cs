using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>The temperature around a jar: what was, stay by stay, then what its present place may bring.</summary>
public static class Surroundings
{
    /// <summary>How much of a place's past its outlook learns from.</summary>
    public static readonly Duration LearnedFrom = Duration.FromDays(21);

    /// <summary>The course from packing until <paramref name="days"/> days after it.</summary>
    /// <param name="jar">The jar with its placements.</param>
    /// <param name="places">Every place it stood in.</param>
    /// <param name="history">Closed means, from <see cref="LearnedFrom"/> before the present or packing, whichever is earlier.</param>
    /// <param name="asOf">End of the last closed quarter hour.</param>
    /// <param name="days">Span from packing, days.</param>
    public static TemperatureCourse Of(Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, Instant asOf, double days)
    {
        Instant packed = QuarterHour.Floor(jar.PackedAt);
        TemperatureCourse? course = null;
        foreach (Stay stay in Stays(jar, packed, asOf))
        {
            TemperatureCourse part = TemperatureCourse.FromSteps(Steps(jar, stay, history), places[stay.PlaceId].Typical.Room());
            course = course is null ? part : course.Then(QuarterHour.Days(packed, stay.From), part);
        }
        TemperatureCourse ahead = Ahead(jar, places, history, asOf, packed, days);
        return course is null ? ahead : course.Then(QuarterHour.Days(packed, asOf), ahead);
    }

    /// <summary>Where the jar stands now: a move within the quarter hour that is still open is known already.</summary>
    internal static Guid PlaceAhead(Jar jar, Instant asOf) => jar.PlacementAt(asOf + QuarterHour.Length).PlaceId;

    private static TemperatureCourse Ahead(
        Jar jar, IReadOnlyDictionary<Guid, Place> places, TemperatureHistory history, Instant asOf, Instant packed, double days)
    {
        Guid placeId = PlaceAhead(jar, asOf);
        TypicalRoom typical = places[placeId].Typical.Room();
        bool probeInJar = history.CelsiusAt(jar.Id, asOf - QuarterHour.Length) is not null;
        double?[] past = history.Over(probeInJar ? jar.Id : placeId, asOf - LearnedFrom, asOf);
        int steps = Math.Max(1, (int)Math.Ceiling(days * TemperatureCourse.StepsPerDay) - Math.Max(0, QuarterHour.Between(packed, asOf)));
        return TemperatureCourse.FromSteps(RoomOutlook.Learn(past, typical, probeInJar).Ahead(steps), typical);
    }

    private static TemperatureStep[] Steps(Jar jar, Stay stay, TemperatureHistory history)
    {
        var steps = new TemperatureStep[QuarterHour.Between(stay.From, stay.Until)];
        for (int i = 0; i < steps.Length; i++)
        {
            Instant start = stay.From + (QuarterHour.Length * i);
            steps[i] = history.CelsiusAt(jar.Id, start) is { } inJar
                ? TemperatureStep.Jar(inJar)
                : TemperatureStep.Room(history.CelsiusAt(stay.PlaceId, start));
        }
        return steps;
    }

    /// <summary>Where it stood from packing until an instant, in order, by whole quarter hours.</summary>
    internal static IEnumerable<Stay> Stays(Jar jar, Instant packed, Instant asOf)
    {
        var moves = jar.Placements.OrderBy(placement => placement.From).ThenBy(placement => placement.Id).ToList();
        for (int i = 0; i < moves.Count; i++)
        {
            Instant from = i == 0 ? packed : Instant.Max(packed, QuarterHour.Floor(moves[i].From));
            Instant until = i + 1 < moves.Count ? Instant.Min(asOf, QuarterHour.Floor(moves[i + 1].From)) : asOf;
            if (from < until)
                yield return new Stay(moves[i].PlaceId, from, until);
        }
    }

    internal readonly record struct Stay(Guid PlaceId, Instant From, Instant Until);
}
