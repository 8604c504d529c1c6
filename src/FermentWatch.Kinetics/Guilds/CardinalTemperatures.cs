namespace FermentWatch.Kinetics.Guilds;

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
