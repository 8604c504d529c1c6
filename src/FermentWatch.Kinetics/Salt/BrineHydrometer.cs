namespace FermentWatch.Kinetics.Salt;

/// <summary>What a hydrometer for brine is marked in.</summary>
public enum BrineScale
{
    /// <summary>Density over that of water, both at the temperature the scale is made for.</summary>
    SpecificGravity = 1,

    /// <summary>Degrees salometer: per cent of what saturated brine holds.</summary>
    Salometer = 2,

    /// <summary>Degrees Baumé, for liquids heavier than water.</summary>
    Baume = 3,
}

/// <summary>
/// What a glass hydrometer shows in a brine of salt and water, and the other way round. By definition 100 degrees salometer are brine
/// saturated at 60 F, 26.395 % by mass, and the scale is even in per cent (instructions printed for salometers); degrees Baumé are
/// 145 - 145 / specific gravity at 60/60 F (US modulus). Whatever else is dissolved, such as the sugar of juices, counts as salt.
/// </summary>
public static class BrineHydrometer
{
    /// <summary>Salt in brine saturated at 60 F, per cent by mass.</summary>
    public const double SaturatedPercent = 26.395;

    /// <summary>60 F, for which salometers and Baumé hydrometers are made, C.</summary>
    public const double SixtyFahrenheit = 140.0 / 9;

    /// <summary>Coldest and warmest brine taken, C.</summary>
    public const double ColdestCelsius = 0, WarmestCelsius = 40;

    /// <summary>Density of sugar solutions grows by 3.9 in a thousand for each per cent, that of brine by 7.2: so a per cent of sugar reads as
    /// this many per cent of salt (general tables, from memory).</summary>
    public const double SaltReadForAPercentOfSugar = 0.0039 / 0.0072;

    private const double BaumeModulus = 145;

    // Cubic expansion of soda-lime glass, 1/K (general tables, from memory): a warm hydrometer floats a little higher.
    private const double GlassExpansion = 25e-6;

    /// <summary>Which temperature a scale is made for where nothing else stands on it, C.</summary>
    public static double UsualCelsius(BrineScale scale) => scale == BrineScale.SpecificGravity ? 20 : SixtyFahrenheit;

    /// <summary>What a scale shows at the most: in saturated brine.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="scaleCelsius">The temperature it is made for, C.</param>
    public static double HighestReading(BrineScale scale, double scaleCelsius) => ReadingOf(scale, SaturatedPercent, scaleCelsius, scaleCelsius);

    /// <summary>What is shown in a brine.</summary>
    /// <param name="scale">What it is marked in.</param>
    /// <param name="percentByMass">Salt in the brine, 0 to 26.395 % by mass.</param>
    /// <param name="brineCelsius">How warm the brine is, 0 to 40 C.</param>
    /// <param name="scaleCelsius">The temperature the scale is made for, 0 to 40 C.</param>
    /// <returns>Specific gravity, degrees salometer or degrees Baumé.</returns>
    public static double ReadingOf(BrineScale scale, double percentByMass, double brineCelsius, double scaleCelsius)
    {
        double shown = SaltWater.KilogramsPerCubicMetre(percentByMass, brineCelsius) * Glass(brineCelsius, scaleCelsius);
        double gravity = shown / SaltWater.KilogramsPerCubicMetre(0, scaleCelsius);
        return scale switch
        {
            BrineScale.SpecificGravity => gravity,
            BrineScale.Baume => BaumeModulus - (BaumeModulus / gravity),
            BrineScale.Salometer => 100 / SaturatedPercent * SaltWater.PercentAt(shown, scaleCelsius),
            _ => throw new ArgumentOutOfRangeException(nameof(scale), scale, "specific gravity, salometer or Baumé is taken"),
        };
    }

    /// <summary>Salt in a brine, per cent by mass, from what is shown. Below 0 or above 26.395 where no brine of salt and water shows that.</summary>
    /// <param name="scale">What it is marked in.</param>
    /// <param name="reading">What it shows.</param>
    /// <param name="brineCelsius">How warm the brine is, 0 to 40 C.</param>
    /// <param name="scaleCelsius">The temperature the scale is made for, 0 to 40 C.</param>
    public static double PercentFrom(BrineScale scale, double reading, double brineCelsius, double scaleCelsius)
    {
        double water = SaltWater.KilogramsPerCubicMetre(0, scaleCelsius);
        double shown = scale switch
        {
            BrineScale.SpecificGravity => reading * water,
            BrineScale.Baume => BaumeModulus / (BaumeModulus - reading) * water,
            BrineScale.Salometer => SaltWater.KilogramsPerCubicMetre(SaturatedPercent / 100 * reading, scaleCelsius),
            _ => throw new ArgumentOutOfRangeException(nameof(scale), scale, "specific gravity, salometer or Baumé is taken"),
        };
        return SaltWater.PercentAt(shown / Glass(brineCelsius, scaleCelsius), brineCelsius);
    }

    /// <summary>A hydrometer that is warmer than its scale is larger, and shows a density as if it were greater.</summary>
    private static double Glass(double brineCelsius, double scaleCelsius) => 1 + (GlassExpansion * (brineCelsius - scaleCelsius));
}

/// <summary>
/// Density of salt water over temperature: the rows at 20 C of <see cref="BrineDensity"/>, moved by what the formula of Laliberté and
/// Cooper (2004, J. Chem. Eng. Data 49:1141-1151, coefficients of sodium chloride and of water from memory) gives between 20 C and there.
/// Against the figures at 10 C of the same handbook it is off by at most 0.5 kg/m3.
/// </summary>
internal static class SaltWater
{
    private const double RowsCelsius = 20, LeastPercent = -5, MostPercent = 40;

    public static double KilogramsPerCubicMetre(double percentByMass, double celsius)
    {
        if (!(celsius >= BrineHydrometer.ColdestCelsius && celsius <= BrineHydrometer.WarmestCelsius))
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "0 to 40 C is taken");
        return BrineDensity.Interpolated(percentByMass) + Formula(percentByMass, celsius) - Formula(percentByMass, RowsCelsius);
    }

    /// <summary>Halves the span until it is shorter than any scale shows; density grows with salt throughout.</summary>
    public static double PercentAt(double kilogramsPerCubicMetre, double celsius)
    {
        (double low, double high) = (LeastPercent, MostPercent);
        for (int halving = 0; halving < 40; halving++)
        {
            double middle = (low + high) / 2;
            (low, high) = KilogramsPerCubicMetre(middle, celsius) < kilogramsPerCubicMetre ? (middle, high) : (low, middle);
        }
        return (low + high) / 2;
    }

    private static double Formula(double percentByMass, double celsius)
    {
        double salt = Math.Max(0, percentByMass / 100);
        double litresOfSalt = (salt + 1.01660 + (0.014624 * celsius))
            / (((-0.00433 * salt) + 0.06471) * Math.Exp(1e-6 * (celsius + 3315.6) * (celsius + 3315.6)));
        return 1 / (((1 - salt) / Water(celsius)) + (salt * litresOfSalt));
    }

    private static double Water(double celsius)
    {
        double sum = (((((((-2.8054253e-10 * celsius) + 1.0556302e-7) * celsius) - 4.6170461e-5) * celsius) - 0.0079870401) * celsius) + 16.945176;
        return ((sum * celsius) + 999.83952) / (1 + (0.01687985 * celsius));
    }
}
