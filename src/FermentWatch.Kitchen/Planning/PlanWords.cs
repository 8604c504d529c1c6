using System.Globalization;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Planning;

/// <summary>A plan in words, in this household's units.</summary>
/// <param name="plan">The plan.</param>
/// <param name="household">For units.</param>
public sealed class PlanWords(Plan plan, Household household)
{
    private const int PublishedWeeks = 3;

    private PlanQuestion Question => plan.Question;

    private MassUnit Unit => household.MassUnit;

    /// <summary>All of it in a sentence.</summary>
    public string Headline => plan.Starts.Count == 0 ? (plan.IsMet ? "Nothing needs to be put up: what there is lasts." : "Nothing can be planned.")
        : $"{Vessels(Sum(plan.Starts.SelectMany(start => start.Filled)))}, in {Many(plan.Starts.Count, "start")}: {Contents(plan.Shopping)}.";

    /// <summary>How far it lasts, in winters of ten.</summary>
    public string Lasting
    {
        get
        {
            string until = Day(Question.Until);
            int winters = (int)Math.Floor((plan.Spread.LastShare * 10) + 1e-9);
            return winters == 10 ? $"It lasts until {until} in nearly every winter of a thousand that were tried."
                : winters == 0 ? $"It lasts until {until} in hardly any winter of a thousand that were tried."
                : string.Create(CultureInfo.InvariantCulture,
                    $"{NumberWord(winters)} {(winters == 1 ? "winter" : "winters")} of ten last{(winters == 1 ? "s" : "")} until {until} "
                    + $"({plan.Spread.LastShare * 100:0.#} % of a thousand that were tried).");
        }
    }

    /// <summary>When what is left is eaten up.</summary>
    public string RunsOut => (plan.Spread.OneInTenOutOn, plan.Spread.HalfOutOn) switch
    {
        (null, _) => "In nine winters of ten some is left three months later still.",
        ({ } one, null) => $"One winter in ten is out of it by {Day(one)}; in most, some is left three months after the last day.",
        ({ } one, { } half) => $"One winter in ten is out of it by {Day(one)}, half by {Day(half)}.",
    };

    /// <summary>What was reckoned with.</summary>
    public string ReckonedWith => string.Create(CultureInfo.InvariantCulture,
        $"Reckoned with: {Question.ServingsAWeek:0.#} servings a week of {Litres(Question.ServingLitres)}, "
        + $"{Servings.UsualLitresPerKilogram:0.0#} l at the table from a kilogram prepared "
        + $"(published: {Servings.LeastLitresPerKilogram:0.00} to {Servings.MostLitresPerKilogram:0.00}), "
        + $"{Question.LossShare * 100:0.#} % of the jars lost, a winter's appetite within {2 * Winters.EatingDeviation * 100:0} % either way.")
        + (plan.StockServings >= 1 ? string.Create(CultureInfo.InvariantCulture, $" There already: {plan.StockServings:0} servings.") : "");

    /// <summary>What falls short of a plan that cannot be met; nothing of one that can.</summary>
    public IEnumerable<string> FallsShort()
    {
        if (plan.IsMet)
            yield break;
        if (plan.Starts.Count == 0 && plan.NotPlanned.Count == 0 && plan.Nearest.Count == 0)
            yield return "No day is left on which somebody has time and is there.";
        else if (plan.Nearest is [{ } first, ..] && first.From > Question.From)
            yield return $"Nothing that is put up from today on is sour nine times in ten before {Day(first.From)}; "
                + "what there is does not last so long.";
        if (plan.Limits.HasFlag(PlanLimit.Vessels))
            yield return "There are too few vessels: those that are full stay so until they are eaten up.";
        if (plan.Limits.HasFlag(PlanLimit.Room))
            yield return $"{Kinetics.Sentence.Capital(Question.Store)} is full before enough is in it.";
    }

    /// <summary>A nearest plan, as what would be otherwise.</summary>
    public string Nearest(NearestPlan nearest)
    {
        var parts = new List<string>();
        if (nearest.From != Question.From)
            parts.Add($"from {Day(nearest.From)} on");
        if (nearest.ServingsAWeek < Question.ServingsAWeek)
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"with {nearest.ServingsAWeek / Question.Eaters:0.##} servings a week each"));
        if (nearest.ServingsAWeek == Question.ServingsAWeek && plan.Limits.HasFlag(PlanLimit.Vessels))
            parts.Add($"with {nearest.VesselsAtOnce} vessels in use on the fullest day");
        if (nearest.ServingsAWeek == Question.ServingsAWeek && nearest.RoomJars > Question.StoreHolds.Count)
            parts.Add($"with room for {nearest.RoomJars} jars of {Size(Question.StoreHolds.Litres)}");
        return $"It can be met {string.Join(" and ", parts)}.";
    }

    /// <summary>What is to be minded.</summary>
    public IEnumerable<string> Warnings()
    {
        foreach ((NotPlanned why, int days) in plan.NotPlanned.OrderBy(each => each.Key))
            yield return $"Nothing is planned on {Many(days, "day")}: {Why(why)}";
        if (plan.Starts.Any(start => start.IsSoonAlone))
            yield return "Some of it is put up within five days of leaving: its liveliest days are then alone. Ask somebody to look in.";
        if (Question.StoreRoom.MeanCelsius > 4.5)
            yield return $"{Kinetics.Sentence.Capital(Question.Store)} is about {Degrees(Question.StoreRoom.MeanCelsius)}: "
                + "there it goes on fermenting, slowly. Cold is 4 °C (40 °F) or below.";
        int weeks = plan.Starts.Select(start => Period.DaysBetween(start.Date, start.Likely) / 7).DefaultIfEmpty(PublishedWeeks).Min();
        if (Question.Vegetable.Recipe == PublishedRecipe.Kraut && weeks < PublishedWeeks)
            yield return "Sour to your taste comes before the tested time here: public advice lets it work 3 to 4 weeks at 70 to 75 °F, "
                + "5 to 6 at 60 to 65 °F, before the cold (USDA Guide 6). Whoever keeps to that plans from an earlier day.";
        int keeps = Question.Vegetable.KeptColdDays ?? ColdStore.KeepingTime.UsualDays;
        if (plan.OldestDays > keeps)
            yield return $"The jar that waits longest stands there about {plan.OldestDays} days; public advice keeps it {keeps}.";
    }

    /// <summary>What goes in, as it is bought.</summary>
    public string Contents(Shopping shopping)
    {
        string heads = shopping.Heads(Question.Vegetable) is { } count
            ? $" ({MeasureWords.Mass(shopping.BoughtKilograms(Question.Vegetable), Unit)} as bought, {count.Least} to {count.Most} heads)"
            : " prepared";
        string water = shopping.WaterKilograms > 0 ? $", {MeasureWords.Mass(shopping.WaterKilograms, Unit)} of water" : "";
        return $"{MeasureWords.Mass(shopping.PreparedKilograms, Unit)} of {Question.Vegetable.Name}{heads}, "
            + $"{Grams(shopping.SaltGrams)} of salt{water}";
    }

    /// <summary>Vessels by size: <c>10 jars of 1 qt</c>.</summary>
    public string Vessels(IEnumerable<Vessels> filled) => string.Join(" and ", filled.OrderByDescending(each => each.Litres).Select(each =>
        $"{Many(each.Count ?? 0, VesselFill.IsCrock(each.Litres) ? "crock" : "jar")} of {Size(each.Litres)}"));

    /// <summary>What goes into one vessel of each size, how high, and how much brine must rise.</summary>
    public IEnumerable<string> InEach() => plan.Starts.SelectMany(start => start.Filled).Select(each => each.Litres).Distinct().OrderDescending()
        .Select(InOne);

    private string InOne(double litres)
    {
        Cut cut = Question.Vegetable.UsualCut;
        VesselFill fill = VesselFill.Of(litres, cut);
        (double from, double to) = VesselFill.HeadspaceCentimetres(litres);
        (double least, double most) = VesselFill.BrineToRiseMillilitres(litres);
        Shopping one = Shopping.For([new Vessels(litres, 1)], cut, Question.SaltPercent);
        string brine = one.WaterKilograms > 0 ? $", {MeasureWords.Mass(one.WaterKilograms, Unit)} of water for the brine" : "";
        return $"In {(VesselFill.IsCrock(litres) ? "a crock" : "a jar")} of {Size(litres)}: "
            + $"{MeasureWords.Mass(one.PreparedKilograms, Unit)} prepared "
            + $"({MeasureWords.Mass(litres * fill.LeastKilogramsPerLitre, Unit)} to {MeasureWords.Mass(litres * fill.MostKilogramsPerLitre, Unit)}), "
            + $"{Grams(one.SaltGrams)} of salt{brine}. Keep {Length(from, to)} free below the rim; "
            + $"{Volume(least)} to {Volume(most)} of brine must stand over it, 2.5 to 5 cm (1 to 2 inches).";
    }

    /// <summary>Sizes alike added up.</summary>
    public static IEnumerable<Vessels> Sum(IEnumerable<Vessels> vessels) =>
        vessels.GroupBy(each => each.Litres).Select(alike => new Vessels(alike.Key, alike.Sum(each => each.Count)));

    /// <summary>A date in a sentence.</summary>
    public string Day(LocalDate date) => DateWords.Dated(date, Question.Today);

    /// <summary>A temperature in the household's unit.</summary>
    public string Degrees(double celsius) => MeasureWords.Temperature(celsius, household.TemperatureUnit);

    /// <summary>How sour, in words.</summary>
    public string Sour => SournessLevel.Of(Question.Target).Words;

    private string Why(NotPlanned why) => why switch
    {
        Planning.NotPlanned.TooCold => $"{Question.Place} is below 60 °F (15.6 °C) then, where it may not ferment (USDA Guide 6).",
        Planning.NotPlanned.TooWarm => $"{Question.Place} is above 75 °F (23.9 °C) then, where it may go soft (USDA Guide 6).",
        Planning.NotPlanned.LineLate => "fewer than nine jars in ten are expected below the acid line, pH 4.6, within a week.",
        _ => $"fewer than nine jars in ten are expected {Sour} within {ReadyDayForecasts.LongestDays} days.",
    };

    private string Size(double litres) => MeasureWords.Volume(litres, Unit);

    private string Litres(double litres) => Volume(1000 * litres);

    private string Volume(double millilitres) => Unit == MassUnit.Pound
        ? string.Create(CultureInfo.InvariantCulture, $"{millilitres / CustomaryUnits.MillilitresPerCup:0.0#} cup")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Round(millilitres / 10) * 10:0} ml");

    private static string Length(double from, double to) => from == to
        ? string.Create(CultureInfo.InvariantCulture, $"{from:0.#} cm ({from / 2.54:0} inch)")
        : string.Create(CultureInfo.InvariantCulture, $"{from:0} to {to:0} cm ({from / 2.54:0} to {to / 2.54:0} inches)");

    private static string Grams(double grams) => grams < 1000 ? string.Create(CultureInfo.InvariantCulture, $"{grams:0} g")
        : string.Create(CultureInfo.InvariantCulture, $"{grams / 1000:0.0#} kg");

    private static string Many(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");

    private static string NumberWord(int number) => number switch
    {
        1 => "One", 2 => "Two", 3 => "Three", 4 => "Four", 5 => "Five", 6 => "Six", 7 => "Seven", 8 => "Eight", _ => "Nine",
    };
}
