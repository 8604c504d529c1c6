using FermentWatch.Kitchen.Rounds;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Occasions as messages that are complete without opening anything.</summary>
public static class OccasionWords
{
    /// <summary>A longer name is not read aloud: the number on the tape says which.</summary>
    private const int LongestName = 24;

    /// <summary>What and which: <c>Probably ready: jar 3 (cabbage)</c>, <c>pH rising: jars 3, 5</c>.</summary>
    /// <param name="alike">Occasions with the same words, at least one.</param>
    public static string Title(IReadOnlyList<Occasion> alike)
    {
        var jars = alike.SelectMany(each => each.Jars).Distinct().ToList();
        string[] names = [.. alike.Select(each => each.JarName).OfType<string>().Distinct()];
        string name = names is [{ Length: <= LongestName } only] && alike.All(each => each.JarName is not null) ? $" ({only})" : "";
        return jars.Count == 0 ? alike[0].Headline : $"{alike[0].Headline}: {(jars.Count == 1 ? "jar" : "jars")} {NumberList.Say(jars)}{name}";
    }

    /// <summary>The kinds that people are told of and can mute.</summary>
    public static IReadOnlyList<OccasionKind> Told { get; } = [.. Enum.GetValues<OccasionKind>().Where(kind =>
        kind != OccasionKind.TastingTomorrow)];

    /// <summary>A kind as the page that mutes it names it.</summary>
    public static string Of(OccasionKind kind) => kind switch
    {
        OccasionKind.TastingTomorrow => "Tasting day tomorrow (told no more: the morning round asks)",
        OccasionKind.TargetReached => "Probably ready",
        OccasionKind.PastTarget => "Tasted past it, still in the warm",
        OccasionKind.PhDue => "pH due and not measured",
        OccasionKind.NoReadingByDay5 => "No reading below 4.6 by day 5",
        OccasionKind.NoReadingByDay7 => "No reading below 4.6 by day 7",
        OccasionKind.PhRising => "pH rising",
        OccasionKind.TooWarm => "Too warm: above 75 °F, 24 °C",
        OccasionKind.FarTooWarm => "Far too warm: above 80 °F, 27 °C",
        OccasionKind.TooCold => "Too cold: below 60 °F, 16 °C",
        OccasionKind.SensorSilent => "Sensor silent",
        OccasionKind.SensorWrong => "Sensor wrong",
        OccasionKind.CalibrationDue => "Calibration due",
        OccasionKind.BrineLow => "Brine low",
        OccasionKind.CloserWatch => "Closer watch after trouble",
        OccasionKind.AdultAsked => "A child or guest saw trouble",
        OccasionKind.EarlyChilling => "Into the cold early",
        OccasionKind.EatFirst => "Stock to eat first",
        OccasionKind.NotMeasuredHere => "Nothing to measure with",
        OccasionKind.PassedAcidLine => "Passed the acid line, measured",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of occasion."),
    };
}
