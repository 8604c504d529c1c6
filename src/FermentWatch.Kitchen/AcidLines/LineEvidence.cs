using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.AcidLines;

/// <summary>What one reading is worth against the acid line.</summary>
public enum LineEvidence
{
    /// <summary>It shows the jar below the line.</summary>
    CountsBelow = 1,

    /// <summary>It shows the jar above the line.</summary>
    CountsAbove = 2,

    /// <summary>Too near the line: measure again tomorrow.</summary>
    TooNear = 3,

    /// <summary>The meter was not checked in buffer that day.</summary>
    MeterNotChecked = 4,

    /// <summary>A strip shows the line only at 4.0 or less.</summary>
    StripTooHigh = 5,

    /// <summary>A strip cannot be read in dark brine.</summary>
    StripInDarkBrine = 6,

    /// <summary>The sample was colder or warmer than a pH is measured at.</summary>
    SampleTooColdOrWarm = 7,

    /// <summary>The vinegar still stands in the brine: the vegetables have not taken it up.</summary>
    NotEvenedOut = 8,
}

/// <summary>Our own rule on time, and what a household without anything to measure with is told, once.</summary>
public static class LineRule
{
    /// <summary>From this day on a jar without a reading below the line is told so (Univ. of Minnesota Extension 2021: normally within a
    /// week).</summary>
    public const int WeekRuleDay = 7;

    /// <summary>What public advice says of jars that are late.</summary>
    public const string PublicAdvice = "Public advice: below 4.6 normally within a week, longer when cooler; discard what does not get there.";

    /// <summary>Said once of a household that can measure nothing.</summary>
    public const string NotMeasuredHere = "Acid line: not measured here. That is neither fine nor a reason to discard.";

    /// <summary>What strips would tell. A strip counts at 4.0 or less (21 CFR 114.80); that it must show that figure within its own range is common
    /// practice, no source.</summary>
    public const string WhatStripsTell = "A packet of strips that range from about 3 to 5 would tell: at 4.0 or less in pale brine a jar is "
        + "measured below the line at 4.6; without one only the tested way of making it speaks for a jar.";

    /// <summary>Which strips can tell 4.0 from 4.6. Common practice, no source.</summary>
    public const string StripsByTheirRange =
        "A strip tells within its own range: one from about 3 to 5 in steps of 0.3 or less shows 4.0; one from 1 to 14 does not.";

    /// <summary>What stands where somebody decides about a jar that was not measured below; null where it was.</summary>
    /// <param name="state">Where it stands.</param>
    /// <param name="tool">What the household measures with.</param>
    public static string? WhereDecided(AcidLineState state, PhTool tool) => state == AcidLineState.MeasuredBelow ? null
        : tool == PhTool.Nothing ? $"{PublicAdvice} Nothing here was measured, so nothing here says whether it did."
        : $"Asked for on days 5 and 7 at the latest. {PublicAdvice}";
}

/// <summary>
/// How long the pH of a brine with vinegar rises by itself while the vegetables take the acid up: until then brine alone shows no jar
/// below the line, and its rise is no alarm. Acid enters whole cucumbers of 3.8 to 5.1 cm at 0.36 a day (Potts 1986): nineteen in
/// twenty parts after 8.3 days; thinner cuts are this project's own choice.
/// </summary>
public static class EveningOut
{
    /// <summary>Whether a reading is of such a brine: not blended, and from before it has evened out.</summary>
    public static bool IsUnderWay(Jar jar, PhMeasurement measurement) =>
        jar.Vinegar is not null && !measurement.Blended && measurement.At < jar.PackedAt + Duration.FromDays(Days(jar.Cut));

    /// <summary>Whether brine alone would not yet speak for a jar on a day after packing.</summary>
    public static bool IsUnderWay(Jar jar, int day) => jar.Vinegar is not null && day < Days(jar.Cut);

    /// <summary>What is measured of a jar whose vinegar has not evened out.</summary>
    public const string WhatToMeasure = "The vinegar still stands in the brine: blend pieces with their brine, else the reading does not count yet.";

    /// <summary>Days after packing until it has evened out.</summary>
    public static int Days(Cut cut) => cut switch
    {
        Cut.Whole => 9,
        Cut.Pieces => 4,
        Cut.Sliced => 2,
        _ => 1,
    };
}
