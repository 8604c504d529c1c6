using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Everything a household may be told of besides the round, as things stand.</summary>
public static class OccasionRules
{
    private static readonly (string Name, Func<Scene, IEnumerable<Occasion>> Of)[] Rules =
    [
        ("acid line", AcidOccasions.Of), ("trouble", TroubleOccasions.Of), ("warmth", WarmthOccasions.Of), ("tasting", TastingOccasions.Of),
        ("store", StoreOccasions.Of), ("sensors", scene => scene.Sensors.Select(Sensor)),
    ];

    /// <summary>What holds in a scene, told before or not; empty of what could not be said for a record that cannot be digested.</summary>
    /// <param name="scene">The household.</param>
    /// <param name="run">Where that goes: the rule with that jar alone.</param>
    public static IReadOnlyList<Occasion> Of(Scene scene, SetAside.SetAsideRun run)
    {
        var all = new List<Occasion>();
        foreach ((string name, var rule) in Rules)
            if (Told(rule, scene) is { } told)
                all.AddRange(told);
            else
                AddOneByOne(name, rule, scene, all, run);
        return [.. all.DistinctBy(each => (each.Kind, each.Subject, each.Cause))];
    }

    private static List<Occasion>? Told(Func<Scene, IEnumerable<Occasion>> rule, Scene scene)
    {
        try
        {
            return [.. rule(scene)];
        }
        catch (Exception bug) when (SetAside.IsOfTheThing(bug))
        {
            // One jar among them is to blame: each is asked about alone.
            return null;
        }
    }

    private static void AddOneByOne(string name, Func<Scene, IEnumerable<Occasion>> rule, Scene scene, List<Occasion> all, SetAside.SetAsideRun run)
    {
        if (scene.Jars.Count == 0)
            run.Try(name, () => all.AddRange(rule(scene)));
        foreach (Jar jar in scene.Jars)
            run.Try($"{name} of jar {jar.Number}", () => all.AddRange(rule(scene.Of(jar)).ToList()));
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
