using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>What is in the cold and in the freezer, in which order it is eaten, and until when it lasts.</summary>
public sealed class ColdStoreReader(JarReader jars, TimeProvider clock)
{
    /// <summary>As it stands now.</summary>
    public async Task<ColdStoreView> NowAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<JarView> kept = await jars.KeptAsync(cancellationToken), past = await jars.PastAsync(cancellationToken);
        if (kept.Concat(past).FirstOrDefault() is not { } any)
            return ColdStoreView.Empty;
        DateTimeZone zone = any.Household.Zone;
        LocalDate today = clock.GetUtcNow().ToInstant().InZone(zone).Date;
        var cold = kept.Where(view => view.Jar.Stage == JarStage.Cold).ToDictionary(view => view.Jar.Id);
        IReadOnlyList<ColdJar> stock = ColdStock.InOrder(cold.Values.Select(view => ColdJar.Of(view.Jar, view.AcidityNowPercentLactic, zone)));
        double left = stock.Sum(each => each.LeftFraction);
        return new ColdStoreView(today, [.. stock.Select(each => new ColdShelfJar(each, cold[each.Jar.Id]))],
            [.. past.Where(view => view.Jar.IsFrozen).OrderBy(view => view.Jar.EndedAt).ThenBy(view => view.Jar.Number)], left,
            ColdStock.LastsUntil(left, ColdStock.EatenOf(kept.Concat(past).Select(view => view.Jar), zone), today));
    }
}

/// <summary>What is in the cold and in the freezer.</summary>
/// <param name="Today">The present day.</param>
/// <param name="Shelf">What stands in the cold, in the order in which it is eaten.</param>
/// <param name="Frozen">What lies in the freezer, the longest there first.</param>
/// <param name="LeftJars">What is left in the cold, in full jars, 0 or more.</param>
/// <param name="LastsUntil">When that is eaten at the pace of the last eight weeks; null where too little was eaten to tell.</param>
public sealed record ColdStoreView(LocalDate Today, IReadOnlyList<ColdShelfJar> Shelf, IReadOnlyList<JarView> Frozen, double LeftJars,
    LocalDate? LastsUntil)
{
    /// <summary>Of a household that has put up nothing yet.</summary>
    internal static ColdStoreView Empty { get; } = new(default, [], [], 0, null);

    /// <summary>Weeks until the last is eaten; null where too little was eaten to tell.</summary>
    public double? WeeksLeft => LastsUntil is { } until ? Period.DaysBetween(Today, until) / 7.0 : null;
}

/// <summary>A jar of the cold store.</summary>
/// <param name="Cold">When its turn comes, and what is left in it.</param>
/// <param name="View">What else is said of it.</param>
public sealed record ColdShelfJar(ColdJar Cold, JarView View);
