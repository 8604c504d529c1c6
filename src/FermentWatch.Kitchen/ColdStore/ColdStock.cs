using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.ColdStore;

/// <summary>A jar in the cold, and when its turn comes.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="Since">The day it went into the cold.</param>
/// <param name="EatFirstFrom">From when on it is eaten before others: the end of what is published to keep.</param>
/// <param name="IsSourerThanWanted">Whether it is expected a whole step beyond what the household likes.</param>
public sealed record ColdJar(Jar Jar, LocalDate Since, LocalDate EatFirstFrom, bool IsSourerThanWanted)
{
    /// <summary>Since when it is open; null while it is closed.</summary>
    public LocalDate? OpenSince { get; private init; }

    /// <summary>Share of the full jar that is left, 0 to 1, reckoned from what was taken out.</summary>
    public double LeftFraction { get; private init; } = 1;

    /// <param name="jar">A jar whose stage is cold.</param>
    /// <param name="acidityPercentLactic">What is expected of it now; null where nothing is.</param>
    /// <param name="zone">The household's zone.</param>
    public static ColdJar Of(Jar jar, double? acidityPercentLactic, DateTimeZone zone)
    {
        LocalDate since = jar.Standing.OfType<StageChange>().Last().At.InZone(zone).Date;
        SournessLevel wanted = SournessLevel.Of(jar.Target);
        double? beyond = SournessLevel.All.SkipWhile(level => level != wanted).Skip(1).FirstOrDefault()?.AcidityPercentLactic;
        return new ColdJar(jar, since, since.PlusDays(KeepingTime.Of(jar).Days), acidityPercentLactic > beyond)
        {
            OpenSince = LeftInJar.OpenSince(jar)?.InZone(zone).Date, LeftFraction = LeftInJar.FractionOf(jar),
        };
    }

    /// <summary>Whether its turn is now.</summary>
    public bool IsNext(LocalDate today) => OpenSince is not null || IsSourerThanWanted || EatFirstFrom <= today;
}

/// <summary>Something that was eaten or given away.</summary>
/// <param name="On">The day.</param>
/// <param name="Jars">How much, in full jars: 0.25 is a quarter of one.</param>
public sealed record EatenUp(LocalDate On, double Jars);

/// <summary>What stands in the cold: in which order it is eaten, and how long it lasts. This project's own rules.</summary>
public static class ColdStock
{
    /// <summary>The pace of eating is that of so many days.</summary>
    public const int PaceDays = 56;

    /// <summary>Of fewer entries, or of less than a jar in all, no pace is told.</summary>
    private const int LeastEntries = 2;

    private const double LeastJars = 1 - 1e-9;

    /// <summary>
    /// What is to be eaten first, first: what is open, what is sourer than wanted, then by the day until which it is published to keep.
    /// </summary>
    public static IReadOnlyList<ColdJar> InOrder(IEnumerable<ColdJar> jars) =>
        [.. jars.OrderByDescending(each => each.OpenSince is not null).ThenByDescending(each => each.IsSourerThanWanted)
            .ThenBy(each => each.EatFirstFrom).ThenBy(each => each.Jar.Number)];

    /// <summary>
    /// What was eaten of jars: each portion, and of a finished jar what was left in it. What is frozen, canned or thrown out is not eaten; nor
    /// is what comes out of the freezer, which was no stock of the cold any more.
    /// </summary>
    public static IEnumerable<EatenUp> EatenOf(IEnumerable<Jar> jars, DateTimeZone zone) => jars.SelectMany(jar => EatenOf(jar, zone));

    /// <summary>The day on which the last is eaten at the pace of the last eight weeks; null where too little was eaten to tell.</summary>
    /// <param name="jars">How many full jars there are, 0 or more.</param>
    /// <param name="eaten">What was eaten, of whatever day.</param>
    /// <param name="today">The present day.</param>
    public static LocalDate? LastsUntil(double jars, IEnumerable<EatenUp> eaten, LocalDate today)
    {
        EatenUp[] lately = [.. eaten.Where(each => each.On > today.PlusDays(-PaceDays) && each.On <= today)];
        double sum = lately.Sum(each => each.Jars);
        return lately.Length < LeastEntries || sum < LeastJars ? null : today.PlusDays((int)Math.Ceiling((jars * PaceDays / sum) - 1e-6));
    }

    private static IEnumerable<EatenUp> EatenOf(Jar jar, DateTimeZone zone)
    {
        double left = 1;
        foreach (PortionTaken portion in jar.Standing.OfType<PortionTaken>())
        {
            double taken = Math.Min(left, LeftInJar.FractionOf(jar, portion));
            left -= taken;
            yield return new EatenUp(portion.At.InZone(zone).Date, taken);
        }
        StageChange[] changes = [.. jar.Standing.OfType<StageChange>()];
        if (left > 0 && changes is [.., { Stage: JarStage.Finished, Went: null or Destination.Eaten or Destination.GivenAway } end]
            && !changes.Any(change => change.Went == Destination.Frozen))
            yield return new EatenUp(end.At.InZone(zone).Date, left);
    }
}
