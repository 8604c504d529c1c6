namespace FermentWatch.Kitchen.Occasions;

/// <summary>Something people are told of besides the round. Each kind can be muted by itself.</summary>
public enum OccasionKind
{
    /// <summary>Told by earlier versions the evening before; the morning round asks. Its name stays known: a household may have muted it.</summary>
    TastingTomorrow = 1,

    /// <summary>As sour as wanted, by taste or very probably, and still in the warm.</summary>
    TargetReached = 2,

    /// <summary>Past what is wanted, by taste, and still in the warm.</summary>
    PastTarget = 3,

    /// <summary>A pH was due today and was not measured.</summary>
    PhDue = 4,

    /// <summary>Day 5 without a counted reading below 4.6.</summary>
    NoReadingByDay5 = 5,

    /// <summary>Day 7 without a counted reading below 4.6.</summary>
    NoReadingByDay7 = 6,

    /// <summary>The pH rises, by the rule of the acid line.</summary>
    PhRising = 7,

    /// <summary>Above 75 F (23.9 C).</summary>
    TooWarm = 8,

    /// <summary>Above 80 F (26.7 C).</summary>
    FarTooWarm = 9,

    /// <summary>Below 60 F (15.6 C).</summary>
    TooCold = 10,

    SensorSilent = 11,

    /// <summary>A sensor hangs, disagrees with its neighbour or seems to use another unit.</summary>
    SensorWrong = 12,

    /// <summary>A probe's calibration is due.</summary>
    CalibrationDue = 13,

    BrineLow = 14,

    /// <summary>Trouble was seen; the jar is watched closely.</summary>
    CloserWatch = 15,

    /// <summary>A child or a guest saw trouble; an adult settles it.</summary>
    AdultAsked = 16,

    /// <summary>Into the cold sooner than public advice has it.</summary>
    EarlyChilling = 17,

    /// <summary>Long in the cold.</summary>
    EatFirst = 18,

    /// <summary>Told once: this household can measure nothing, what that means and what strips would tell.</summary>
    NotMeasuredHere = 19,

    /// <summary>Good news: measured below 4.6, by a reading that counts.</summary>
    PassedAcidLine = 20,
}
