namespace FermentWatch.Kitchen.Rounds;

/// <summary>What it means that nobody looked for some days. Common practice, no source; that film or mould may come within days of lost brine
/// is.</summary>
public static class Neglect
{
    /// <summary>From so many missed days on a jar is opened, whatever its day.</summary>
    public const int LongDays = 4;

    /// <summary>From so many missed days on it is not tasted before it was looked at.</summary>
    public const int WeekDays = 7;

    /// <summary>What to expect and to do first.</summary>
    /// <param name="days">Missed days, at least 2.</param>
    public static string Words(int days) => days switch
    {
        < LongDays => "Brine may have sunk: press under what is dry.",
        < WeekDays => "Brine may have sunk and film begun: open, look, press under.",
        _ => "Brine may be lost, mould begun. Tight lids slowly; cannot tell: treat as mould; taste nothing.",
    };
}
