using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>A move that is thought of: from a day on a jar stands somewhere else. What <c>outlook --move</c> and the jar's page ask with.</summary>
public static class PlannedStay
{
    /// <summary>This course until a day, and from then on a place of one mean temperature.</summary>
    /// <param name="course">The temperatures as they are and may be.</param>
    /// <param name="fromDay">Days after packing.</param>
    /// <param name="place">The place: its mean and how far it may be off.</param>
    /// <param name="days">Span that is asked for, days after packing.</param>
    public static TemperatureCourse ThenIn(this TemperatureCourse course, double fromDay, TypicalRoom place, double days)
    {
        // A course repeats its last day past its end: after a move that must be a day in the new place, so the whole span is given.
        var stay = new TemperatureStep(place.MeanCelsius, place.SpreadCelsius, InsideJar: false);
        return course.Then(fromDay, TemperatureCourse.FromSteps([.. Enumerable.Repeat(stay,
            (int)Math.Ceiling((days + 1) * TemperatureCourse.StepsPerDay))], place));
    }
}
