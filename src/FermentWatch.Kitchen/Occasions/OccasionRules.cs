using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Everything a household may be told of besides the round, as things stand.</summary>
public static class OccasionRules
{
    private static readonly (string Name, Func<OccasionFacts, IEnumerable<Occasion>> Of)[] Rules =
    [
        ("acid line", AcidOccasions.Of), ("trouble", TroubleOccasions.Of), ("warmth", WarmthOccasions.Of), ("tasting", TastingOccasions.Of),
        ("store", StoreOccasions.Of), ("sensors", facts => facts.Sensors.Select(Sensor)),
    ];

    /// <summary>What holds in a facts, told before or not; empty of what could not be said for a record that cannot be digested.</summary>
    /// <param name="facts">The household.</param>
    /// <param name="run">Where that goes: the rule with that jar alone.</param>
    public static IReadOnlyList<Occasion> Of(OccasionFacts facts, SetAside.SetAsideRun run)
    {
        var all = new List<Occasion>();
        foreach ((string name, var rule) in Rules)
            if (Told(rule, facts) is { } told)
                all.AddRange(told);
            else
                AddOneByOne(name, rule, facts, all, run);
        return [.. all.DistinctBy(each => (each.Kind, each.Subject, each.Cause))];
    }

    private static List<Occasion>? Told(Func<OccasionFacts, IEnumerable<Occasion>> rule, OccasionFacts facts)
    {
        try
        {
            return [.. rule(facts)];
        }
        catch (Exception bug) when (SetAside.IsOfTheThing(bug))
        {
            // One jar among them is to blame: each is asked about alone.
            return null;
        }
    }

    private static void AddOneByOne(string name, Func<OccasionFacts, IEnumerable<Occasion>> rule, OccasionFacts facts, List<Occasion> all,
        SetAside.SetAsideRun run)
    {
        if (facts.Jars.Count == 0)
            run.Try(name, () => all.AddRange(rule(facts)));
        foreach (Jar jar in facts.Jars)
            run.Try($"{name} of jar {jar.Number}", () => all.AddRange(rule(facts.Of(jar)).ToList()));
    }

    private static Occasion Sensor(SensorConcern concern) =>
        new(concern.Kind, concern.SensorId, concern.Cause, $"{Headline(concern.Kind)}, {concern.Name}", [], concern.Words) { Lasting = true };

    private static string Headline(OccasionKind kind) => kind switch
    {
        OccasionKind.SensorSilent => "Sensor silent",
        OccasionKind.CalibrationDue => "Calibration due",
        _ => "Sensor wrong",
    };
}
