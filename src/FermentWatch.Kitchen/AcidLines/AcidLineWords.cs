using System.Globalization;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Jars;
using NodaTime;

namespace FermentWatch.Kitchen.AcidLines;

/// <summary>What the acid line says, in words. It tells what was measured and what the line covers, and nothing more.</summary>
public static class AcidLineWords
{
    /// <summary>What a reading below the line covers, and what it does not.</summary>
    public const string Covers =
        "Below 4.6 the botulism germ does not grow. This does not show that other germs are gone, or that mould or spoilage is harmless.";

    /// <summary>What is known to work with cabbage, where nothing was measured (USDA Complete Guide to Home Canning, Guide 6, AIB 539,
    /// 2015).</summary>
    private const string TestedForCabbage =
        "The tested recipe: salt weighed (2.25 to 2.5 % of the cabbage), 70 to 75 F (21 to 24 C), 3 to 4 weeks. A strip or a meter tells more.";

    /// <summary>What is said where nothing was measured: a tested recipe is quoted for its own vegetable only.</summary>
    public static string NotMeasured(Jar jar) => "Not measured is neither fine nor a reason to discard. "
        + (TestedRecipe.IsKraut(jar) ? TestedForCabbage
            : $"No tested recipe for {TestedRecipe.Main(jar)} is known here: measure it, by strip or meter.");

    /// <summary>One or two sentences for the jar's page.</summary>
    public static string Sentence(Jar jar, AcidLineReport report, DateTimeZone zone) => report.State switch
    {
        AcidLineState.NotMeasured => "Acid line: not measured. " + NotMeasured(jar),
        AcidLineState.MeasuredBelow => $"{Measured(report, zone)} {Covers}",
        AcidLineState.MeasuredAbove => $"{Measured(report, zone)} That is above the acid line at 4.6: not acid enough yet. Measure again tomorrow.",
        _ => throw new ArgumentOutOfRangeException(nameof(report), report.State, "Not a state of the acid line."),
    };

    /// <summary>What to do about an alarm; null where there is none.</summary>
    public static string? Sentence(AcidLineAlarm alarm) => alarm switch
    {
        AcidLineAlarm.None => null,
        AcidLineAlarm.RiseToRecheck =>
            "The last reading is more than 0.2 above an earlier one by the same method. Check the meter in buffer and measure again today.",
        AcidLineAlarm.Rise => "The pH is rising: film yeasts and other organisms eat acid. Public advice is to discard a ferment whose pH rises "
            + "again. Do not taste it to decide.",
        AcidLineAlarm.BackAbove =>
            "Measured above 4.6 after it was below. Public advice is to discard a ferment whose pH rises again. Do not taste it to decide.",
        _ => throw new ArgumentOutOfRangeException(nameof(alarm), alarm, "Not an alarm."),
    };

    /// <summary>Why a reading did not count; null where it did.</summary>
    public static string? WhyNot(LineEvidence weight) => weight switch
    {
        LineEvidence.CountsBelow or LineEvidence.CountsAbove => null,
        LineEvidence.TooNear => "Between 4.4 and 4.6 is too near the line: measure again tomorrow.",
        LineEvidence.MeterNotChecked => "Kept, but it does not count for the acid line: the meter was not checked in buffer that day.",
        LineEvidence.StripTooHigh => "Kept, but it does not count for the acid line: a strip counts at 4.0 or less; above that only a meter does.",
        LineEvidence.StripInDarkBrine => "Kept, but it does not count for the acid line: a strip cannot be read in dark brine.",
        LineEvidence.SampleTooColdOrWarm =>
            "Kept, and it moves the forecast, but it does not count for the acid line: a sample is measured between 20 and 30 °C (68 and 86 °F; 21 "
            + "CFR 114.90).",
        LineEvidence.NotEvenedOut => "Kept, but it does not count for the acid line yet: the vinegar still stands in the brine, whose pH rises as "
            + "the vegetables take it up. Pieces blended with their brine would count.",
        _ => throw new ArgumentOutOfRangeException(nameof(weight), weight, "Not a weight."),
    };

    /// <summary>What is wanting for a jar measured below the line to be settled; empty where nothing is, or where something else presses.</summary>
    public static string Settles(AcidLineReport report) => report switch
    {
        not { State: AcidLineState.MeasuredBelow, Settled: false, Alarm: AcidLineAlarm.None } => "",
        { AwaitsBlended: true } => "Pieces blended with their brine, measured, settle it: in them the acid comes last.",
        { BlendedMissing: true } => "One more on another day settles it, of pieces blended with their brine: in them the acid comes last.",
        _ => "One more reading on another day settles it.",
    };

    private static string Measured(AcidLineReport report, DateTimeZone zone)
    {
        var last = report.LastCounted!;
        string method = last.Method switch { PhMethod.Meter => "by meter", PhMethod.Probe => "by probe", _ => "by strip" };
        string day = last.At.InZone(zone).Date.ToString("d MMMM", CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"Measured {last.Ph:0.0#} {method} on {day}. {Settles(report)}").TrimEnd();
    }
}
