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
