namespace FermentWatch.Kinetics.Guilds;

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
