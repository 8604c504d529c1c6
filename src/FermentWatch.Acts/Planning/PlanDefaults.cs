using System.Globalization;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Planning;
using NodaTime;

namespace FermentWatch.Acts.Planning;

/// <summary>What stands in the form before somebody types, as far as the household's records tell it.</summary>
internal static class PlanDefaults
{
    private const int WeeksAhead = 6, EndedJarsThatTell = 20;
    private static readonly AnnualDate EndOfWinter = new(4, 15);

    /// <summary>The form.</summary>
    /// <param name="household">For units.</param>
    /// <param name="places">Where jars may stand, at least one.</param>
    /// <param name="reading">What is expected of them.</param>
    /// <param name="kept">Kept jars: the size used most is the size planned with.</param>
    /// <param name="ended">Jars that ended last: how many were thrown out tells the loss, where there are enough.</param>
    /// <param name="eaters">Who belongs to the household.</param>
    /// <param name="today">The present day.</param>
    public static PlanForm Of(Household household, IReadOnlyList<Place> places, PlanReading reading, IReadOnlyList<Jar> kept,
        IReadOnlyList<Jar> ended,
        int eaters, LocalDate today)
    {
        bool isUs = household.MassUnit == MassUnit.Pound;
        double size = kept.GroupBy(jar => jar.VesselLitres).OrderByDescending(alike => alike.Count()).FirstOrDefault()?.Key ?? (isUs ? 0.946353 : 1);
        string jar = VesselList.Size(size, household.MassUnit);
        LocalDate from = today.PlusWeeks(WeeksAhead), until = EndOfWinter.InYear(from.Year);
        return new PlanForm(new Dictionary<string, string>()).With(
            (PlanForm.What, Vegetable.All[0].Name), (PlanForm.Salt, "2.25 %"), (PlanForm.Each, "3"),
            (PlanForm.Eaters, Text(Math.Max(1, eaters))), (PlanForm.Serving, isUs ? "1/2 cup" : "120 ml"),
            (PlanForm.From, Iso(from)), (PlanForm.Until, Iso(until > from.PlusWeeks(4) ? until : EndOfWinter.InYear(from.Year + 1))),
            (PlanForm.Place, (places.FirstOrDefault(place => IsRight(reading.Expected(place).MeanCelsius)) ?? places[0]).Name),
            (PlanForm.Store, places.MinBy(place => reading.Expected(place).MeanCelsius)!.Name),
            (PlanForm.Room, $"20 x {jar}"), (PlanForm.Vessels, jar), (PlanForm.ADay, "10"), (PlanForm.Days, "Saturday,Sunday"),
            (PlanForm.Loss, Text(LossPercent(ended)) + " %"));
    }

    private static bool IsRight(double celsius) => celsius >= StartDays.ColdestCelsius && celsius <= StartDays.WarmestCelsius;

    /// <summary>What was thrown out of the last; one in twenty where too few ended, this project's own figure.</summary>
    private static double LossPercent(IReadOnlyList<Jar> ended) => ended.Count < EndedJarsThatTell ? 5
        : Math.Min(50, Math.Round(100.0 * ended.Count(jar => jar.Stage == JarStage.ThrownOut) / ended.Count));

    private static string Text(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Iso(LocalDate date) => date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
}
