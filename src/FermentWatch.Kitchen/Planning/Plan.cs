using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Forecasts;
using NodaTime;

namespace FermentWatch.Kitchen.Planning;

/// <summary>When to put up how much, how far it lasts, and what is unsure of it.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Starts">The starts, by date.</param>
/// <param name="Spread">How it fares in winters of all kinds.</param>
/// <param name="MostVesselsAtOnce">Vessels in use on the fullest day, those of the stock among them.</param>
/// <param name="StockServings">Servings that stand there already, as expected.</param>
/// <param name="NotPlanned">Days left out, by reason.</param>
/// <param name="Limits">What stood in the way of a plan that cannot be met.</param>
/// <param name="Nearest">The nearest plans that can be met; empty where this one can.</param>
/// <param name="Feast">Until when to pack for the feast; null where none is asked, or no day is possible.</param>
/// <param name="OldestDays">How long the jar that waits longest stands in the store, days, as expected.</param>
public sealed record Plan(PlanQuestion Question, IReadOnlyList<PlannedStart> Starts, PlanSpread Spread, int MostVesselsAtOnce, double StockServings,
    IReadOnlyDictionary<NotPlanned, int> NotPlanned, PlanLimit Limits, IReadOnlyList<NearestPlan> Nearest, PackBy? Feast, int OldestDays)
{
    /// <summary>A plan is met where it lasts in nine winters of ten.</summary>
    public const double Promised = 0.9;

    public bool IsMet => Spread.LastShare >= Promised;

    /// <summary>Vessels that are filled in all.</summary>
    public int Vessels => Starts.Sum(start => start.Filled.Sum(each => each.Count!.Value));

    /// <summary>Everything that is to be had for it.</summary>
    public Shopping Shopping => Starts.Aggregate(Shopping.Nothing, (sum, start) => sum.And(start.Shopping));
}

/// <summary>One start.</summary>
/// <param name="Date">The day.</param>
/// <param name="Celsius">What is expected of the room while it works.</param>
/// <param name="Filled">How many vessels of which size.</param>
/// <param name="Shopping">What goes in.</param>
/// <param name="TasteFrom">One in ten is sour enough by then.</param>
/// <param name="Likely">Half are.</param>
/// <param name="Late">Nine in ten are.</param>
/// <param name="IntoTheColdBy">The same, or the day of coming back after it.</param>
/// <param name="IsSoonAlone">Whether the household leaves within five days of it.</param>
public sealed record PlannedStart(LocalDate Date, double Celsius, IReadOnlyList<Vessels> Filled, Shopping Shopping, LocalDate TasteFrom,
    LocalDate Likely, LocalDate Late, LocalDate IntoTheColdBy, bool IsSoonAlone);

/// <summary>What goes in, and what to buy for it.</summary>
/// <param name="PreparedKilograms">Vegetables as they go in.</param>
/// <param name="SaltGrams">Salt.</param>
/// <param name="WaterKilograms">Water for the brine of what gives none of its own.</param>
public sealed record Shopping(double PreparedKilograms, double SaltGrams, double WaterKilograms)
{
    public static readonly Shopping Nothing = new(0, 0, 0);

    /// <summary>What goes into vessels.</summary>
    public static Shopping For(IEnumerable<Vessels> filled, Cut cut, double saltPercent)
    {
        Shopping sum = Nothing;
        foreach (Vessels each in filled)
        {
            VesselFill fill = VesselFill.Of(each.Litres, cut);
            double litres = each.Litres * each.Count!.Value, prepared = litres * fill.UsualKilogramsPerLitre,
                water = litres * fill.WaterKilogramsPerLitre;
            sum = sum.And(new Shopping(prepared, SaltArithmetic.GramsFor(prepared, water, saltPercent), water));
        }
        return sum;
    }

    public Shopping And(Shopping other) => new(PreparedKilograms + other.PreparedKilograms, SaltGrams + other.SaltGrams,
        WaterKilograms + other.WaterKilograms);

    /// <summary>Vegetables as bought, kg: with outer leaves and core; as prepared where nobody counts them by the head.</summary>
    public double BoughtKilograms(Vegetable vegetable) => PreparedKilograms / (vegetable.Head?.PreparedShare ?? 1);

    /// <summary>Heads, from large ones to small ones; null where nobody counts them.</summary>
    public (int Least, int Medium, int Most)? Heads(Vegetable vegetable) => vegetable.Head is not { } head ? null
        : (Count(BoughtKilograms(vegetable), head.LargeKilograms), Count(BoughtKilograms(vegetable), head.MediumKilograms),
            Count(BoughtKilograms(vegetable), head.SmallKilograms));

    private static int Count(double kilograms, double each) => (int)Math.Ceiling((kilograms / each) - 1e-9);
}

/// <summary>How a plan fares in winters of all kinds.</summary>
/// <param name="LastShare">Share of the winters in which nothing runs out before the last day.</param>
/// <param name="ServedShare">Share of the servings that can be had, over all winters.</param>
/// <param name="Levels">The store on some days.</param>
/// <param name="OneInTenOutOn">One winter in ten has run out by then; null where it is later than three months after the last day.</param>
/// <param name="HalfOutOn">Half have; null likewise.</param>
public sealed record PlanSpread(double LastShare, double ServedShare, IReadOnlyList<StoreLevel> Levels,
    LocalDate? OneInTenOutOn, LocalDate? HalfOutOn);

/// <summary>Servings that are ready on a day, before it is eaten of.</summary>
/// <param name="Date">The day.</param>
/// <param name="Low">One winter in ten has fewer.</param>
/// <param name="Middle">Half have fewer.</param>
/// <param name="High">Nine in ten have fewer.</param>
public sealed record StoreLevel(LocalDate Date, double Low, double Middle, double High);

/// <summary>A plan like the one asked for that can be met.</summary>
/// <param name="From">The first day it is eaten.</param>
/// <param name="ServingsAWeek">Servings a week, of all together.</param>
/// <param name="VesselsAtOnce">Vessels that it takes on its fullest day.</param>
/// <param name="RoomJars">Jars for which there must be room in the store.</param>
public sealed record NearestPlan(LocalDate From, double ServingsAWeek, int VesselsAtOnce, int RoomJars);
