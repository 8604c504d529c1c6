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
    /// <param name="jar">A jar whose stage is cold.</param>
    /// <param name="acidityPercentLactic">What is expected of it now; null where nothing is.</param>
    /// <param name="zone">The household's zone.</param>
    public static ColdJar Of(Jar jar, double? acidityPercentLactic, DateTimeZone zone)
    {
        LocalDate since = jar.Standing.OfType<StageChange>().Last().At.InZone(zone).Date;
        SournessLevel wanted = SournessLevel.Of(jar.Target);
        double? beyond = SournessLevel.All.SkipWhile(level => level != wanted).Skip(1).FirstOrDefault()?.AcidityPercentLactic;
        return new ColdJar(jar, since, since.PlusDays(KeepingTime.Of(jar).Days), acidityPercentLactic > beyond);
    }

    /// <summary>Whether its turn is now.</summary>
    public bool IsNext(LocalDate today) => IsSourerThanWanted || EatFirstFrom <= today;
}

/// <summary>What stands in the cold: in which order it is eaten, and how long it lasts. This project's own rules.</summary>
public static class ColdStock
{
    /// <summary>The pace of eating is that of so many days.</summary>
    private const int PaceDays = 56;

    /// <summary>Of fewer jars no pace is told.</summary>
    private const int LeastEaten = 2;

    /// <summary>What is to be eaten first, first: what is sourer than wanted, then by the day until which it is published to keep.</summary>
    public static IReadOnlyList<ColdJar> InOrder(IEnumerable<ColdJar> jars) =>
        [.. jars.OrderByDescending(each => each.IsSourerThanWanted).ThenBy(each => each.EatFirstFrom).ThenBy(each => each.Jar.Number)];

    /// <summary>The day on which the last is eaten at the pace of the last eight weeks; null where too few were eaten to tell.</summary>
    /// <param name="jars">How many there are.</param>
    /// <param name="eatenOn">Days on which jars were finished.</param>
    /// <param name="today">The present day.</param>
    public static LocalDate? LastsUntil(int jars, IEnumerable<LocalDate> eatenOn, LocalDate today)
    {
        int eaten = eatenOn.Count(day => day > today.PlusDays(-PaceDays) && day <= today);
        return eaten < LeastEaten ? null : today.PlusDays((int)Math.Ceiling((double)jars * PaceDays / eaten));
    }
}
