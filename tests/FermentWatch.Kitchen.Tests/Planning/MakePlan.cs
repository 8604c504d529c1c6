using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Planning;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Planning;

/// <summary>The plan of the issue: two servings a day of half a cup, 1 November to 15 April, a kitchen at 19 C, a store at 4 C that holds twenty
/// quarts.</summary>
internal static class MakePlan
{
    public static readonly LocalDate Today = new(2026, 8, 15), From = new(2026, 11, 1), Until = new(2027, 4, 15);

    /// <summary>A jar that is sour after three weeks, give or take.</summary>
    public static readonly ReadyDays ThreeWeeks = new(17, 21, 26, 5);

    public static PlanQuestion Question() => new()
    {
        Today = Today, Vegetable = Vegetable.Of("cabbage"), SaltPercent = 2.25, Target = Sourness.Sour,
        ServingLitres = CustomaryUnits.MillilitresPerCup / 2000, ServingsAWeek = 14, Eaters = 2, From = From, Until = Until,
        Place = "kitchen", Room = new TypicalRoom(19, 1), Store = "cold store", StoreRoom = new TypicalRoom(4, 1.5),
        StoreHolds = new Vessels(CustomaryUnits.LitresPerQuart, 20), Vessels = [new Vessels(CustomaryUnits.LitresPerQuart, null)], VesselsADay = 10,
        Days = new HashSet<IsoDayOfWeek> { IsoDayOfWeek.Saturday, IsoDayOfWeek.Sunday }, LossShare = 0.05,
    };

    /// <summary>A plan with an empty house and a model of one answer.</summary>
    public static Plan Of(PlanQuestion question, ReadyDays? ready = null, params IReadOnlyList<Lot> stock) =>
        new Planner(stock, _ => ready ?? ThreeWeeks).Make(question);
}
