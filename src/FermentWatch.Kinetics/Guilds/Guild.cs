namespace FermentWatch.Kinetics.Guilds;

/// <summary>One guild of lactic acid bacteria. Counts are in 1e9 CFU per mL of juice and brine.</summary>
/// <param name="Name">What it is called in tables.</param>
/// <param name="OptimumRatePerHour">Growth rate where nothing limits, 1/h.</param>
/// <param name="Temperature">Cardinal temperatures.</param>
/// <param name="SaltChill">How much a per cent of salt raises the least temperature, Celsius.</param>
/// <param name="HalfPh">pH at which growth is halved.</param>
/// <param name="HalfAcidMolesPerLitre">Undissociated acid (acetic weighted) that halves growth, mol/L.</param>
/// <param name="SaltLimitPercent">Salt at which growth ends, per cent.</param>
/// <param name="GrowthHexose">Hexose used for growth, mol/L per 1e9 CFU/mL.</param>
/// <param name="MaintenanceHexosePerHour">Hexose used without growth at the optimum, mol/L/h per 1e9 CFU/mL.</param>
/// <param name="LacticYield">Lactic acid a hexose, mol.</param>
/// <param name="AceticYield">Acetic acid a hexose, mol.</param>
internal sealed record Guild(
    string Name, double OptimumRatePerHour, CardinalTemperatures Temperature, double SaltChill, double HalfPh, double HalfAcidMolesPerLitre,
    double SaltLimitPercent, double GrowthHexose, double MaintenanceHexosePerHour, double LacticYield, double AceticYield);

/// <summary>First counts of the guilds on a kind of vegetable, log10 CFU per mL of juice and brine.</summary>
internal sealed record FirstCounts(double Starters, double ColdStarters, double Finishers, double ColdFinishers)
{
    public double this[int guild] => guild switch { 0 => Starters, 1 => ColdStarters, 2 => Finishers, _ => ColdFinishers };
}

/// <summary>Cardinal temperature model with inflection: Rosso, Lobry & Flandrois 1993, J. Theor. Biol. 162:447-463.</summary>
/// <param name="Minimum">No growth at or below, Celsius.</param>
/// <param name="Optimum">Fastest growth, Celsius; above the middle of the other two.</param>
/// <param name="Maximum">No growth at or above, Celsius.</param>
internal readonly record struct CardinalTemperatures(double Minimum, double Optimum, double Maximum)
{
    /// <summary>Share of the optimum rate, 0 to 1.</summary>
    public double Share(double celsius)
    {
        if (celsius <= Minimum || celsius >= Maximum)
            return 0;
        double span = Optimum - Minimum;
        double top = (celsius - Maximum) * (celsius - Minimum) * (celsius - Minimum);
        double bottom = span * ((span * (celsius - Optimum)) - ((Optimum - Maximum) * (Optimum + Minimum - (2 * celsius))));
        return Math.Clamp(top / bottom, 0, 1);
    }
}

/// <summary>How salt slows the lactic acid bacteria, and how the lack of it lets other flora keep up.</summary>
internal static class SaltTerm
{
    /// <summary>1 without salt, 0 at the limit.</summary>
    public static double Share(double percent, double limitPercent, double power) =>
        percent >= limitPercent ? 0 : 1 - Math.Pow(percent / limitPercent, power);

    /// <summary>
    /// Below about 1 % other flora takes part of the sugar first (Viander, Maki and Palva 2003, Food Microbiology
    /// 20:391-395: the same count a day later at 0.5 % and three days later at 0.3 %); never to nothing.
    /// </summary>
    public static double AgainstOthers(double percent, double halfPercent) =>
        0.4 + (0.6 * percent * percent / ((percent * percent) + (halfPercent * halfPercent)));
}
