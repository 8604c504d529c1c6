using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Planning;

public class PlanStockTests
{
    [Fact]
    public void Of_JarInTheColdThatIsHalfEaten_CountsHalfAndOneThatIsEmptyNothing()
    {
        Jar full = Cold(1), half = Cold(2, Make.Portion(30, 0.25), Make.Portion(35, 0.25)), empty = Cold(3, Make.Portion(30, 1.0));
        IReadOnlyList<Lot> lots = PlanStock.Of([full, half, empty], new Dictionary<Guid, JarForecast>(), "cabbage", new LocalDate(2026, 12, 1),
            DateTimeZone.Utc);
        Assert.Equal([Servings.LitresOf(full), Servings.LitresOf(full) / 2], lots.Select(lot => lot.LitresEach));
        Assert.Equal([1, 1], lots.Select(lot => lot.Count));
    }

    private static Jar Cold(int number, params Observation[] eaten) => Make.Jar(number, seen: [Make.Stage(JarStage.Cold, 20), .. eaten]);
}
