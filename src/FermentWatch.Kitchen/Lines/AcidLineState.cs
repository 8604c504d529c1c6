namespace FermentWatch.Kitchen.Lines;

/// <summary>The three states of a jar against the acid line at pH 4.6.</summary>
public enum AcidLineState
{
    /// <summary>No reading that counts. Neither fine nor a reason to discard.</summary>
    NotMeasured = 1,

    MeasuredBelow = 2,
    MeasuredAbove = 3,
}
