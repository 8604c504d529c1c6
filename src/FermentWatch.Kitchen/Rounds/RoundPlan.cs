using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Lays out the jars of a date by shelf; what each needs is <see cref="JarRules"/>.</summary>
/// <param name="places">Every place.</param>
/// <param name="forecasts">The latest forecasts by jar.</param>
/// <param name="household">For its zone and what it can measure with.</param>
/// <param name="rounds">The rounds of the last days, for what was asked on them.</param>
/// <param name="dry">Places where the air is dry.</param>
/// <param name="run">Where a jar goes whose record cannot be digested; it is asked to be looked at all the same.</param>
public sealed class RoundPlan(
    IReadOnlyDictionary<Guid, Place> places, IReadOnlyDictionary<Guid, JarForecast> forecasts, Household household, IReadOnlyList<Round> rounds,
    IReadOnlySet<Guid> dry, SetAside.SetAsideRun run)
{
    /// <summary>The sheet of a date, for jars that ferment and were packed before it was due.</summary>
    public RoundSheet Of(LocalDate date, Instant dueAt, IEnumerable<Jar> jars)
    {
        var kept = jars.ToList();
        TastingPlan tasting = Tasting(kept);
        var rules = new JarRules(household, forecasts, tasting, dry);
        return new RoundSheet(date,
            [.. kept.Where(jar => jar.Stage == JarStage.Fermenting && jar.PackedAt < dueAt)
                .Select(jar => (Place: PlaceOf(jar, dueAt), Jar: jar)).Where(entry => entry.Place is not null)
                .Select(entry => (Place: entry.Place!, Jar: JarOrLookAtIt(rules, date, dueAt, entry.Jar)))
                .GroupBy(entry => entry.Place.Id)
                .Select(shelf => new RoundShelf(shelf.First().Place, [.. shelf.Select(entry => entry.Jar).OrderBy(entry => entry.Jar.Number)]))
                .OrderBy(shelf => shelf.Place.ShelfOrder).ThenBy(shelf => shelf.Place.Name, StringComparer.Ordinal)])
        {
            TasteAsked = tasting.AskedOn(date), DecideAsked = tasting.DecidedOn(date),
        };
    }

    /// <summary>One jar whose record cannot be digested keeps nobody from tasting another.</summary>
    private TastingPlan Tasting(List<Jar> kept)
    {
        var digested = kept.Where(jar => run.Try($"tasting of jar {jar.Number}", () => _ = new TastingPlan([jar], forecasts, household, rounds)))
            .ToList();
        return new TastingPlan(digested, forecasts, household, rounds);
    }

    private Place? PlaceOf(Jar jar, Instant at)
    {
        Place? place = null;
        run.Try($"place of jar {jar.Number}", () => place = places[jar.PlacementAt(at).PlaceId]);
        return place;
    }

    private RoundJar JarOrLookAtIt(JarRules rules, LocalDate date, Instant dueAt, Jar jar)
    {
        RoundJar? planned = null;
        run.Try($"jar {jar.Number}", () => planned = rules.On(jar, date, dueAt));
        return planned ?? new RoundJar(jar, 0, [LookFor.BrineOverSolids, LookFor.NothingUp, LookFor.OpenForSurface], Opening: true, Trouble: null,
            DaysNotLookedAt: 0, LookedAtToday: false) { Date = date };
    }
}
