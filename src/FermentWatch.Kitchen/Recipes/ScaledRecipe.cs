using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Recipes;

/// <summary>For how much a recipe is asked, as typed; empty fields are left open.</summary>
public sealed record ScaleForm
{
    /// <summary>All vegetables, seasonings and water together.</summary>
    public string? Mass { get; init; }

    /// <summary>How many jars.</summary>
    public string? Jars { get; init; }

    /// <summary>The size of a jar.</summary>
    public string? Vessel { get; init; }
}

/// <summary>A recipe for so many jars.</summary>
/// <param name="Each">What goes into each.</param>
/// <param name="Count">How many jars, 1 to 100.</param>
/// <param name="VesselLitres">Their size; null where nobody said.</param>
public sealed record ScaledRecipe(Mixture Each, int Count, double? VesselLitres)
{
    private const int MostJars = 100;

    /// <summary>What goes into all of them.</summary>
    public Mixture All => Each.Times(Count);

    /// <summary>Scales a recipe, or tells every field that is wrong. Jars are filled as is planned with (<see cref="VesselFill"/>) where no mass
    /// is said; a mass is shared out evenly.</summary>
    public static (ScaledRecipe? Scaled, IReadOnlyList<Refusal> Refusals) For(Mixture mixture, ScaleForm form, MassUnit unit)
    {
        var reader = new FieldReader();
        double? mass = string.IsNullOrWhiteSpace(form.Mass) ? null : 1000 * reader.Read("mass", form.Mass, Amount.MassKilograms,
            unit == MassUnit.Pound ? "lb" : "kg", 0.05, 1000, "50 g to 1000 kg");
        double? litres = string.IsNullOrWhiteSpace(form.Vessel) ? null
            : reader.Read("vessel", form.Vessel, Amount.VolumeLitres, unit == MassUnit.Pound ? "qt" : "l", 0.1, 250, "0.1 to 250 litres");
        int jars = reader.ReadWhole("jars", form.Jars, 0, 1, MostJars);
        // Jars of no said size are of the usual one.
        litres ??= jars > 0 && mass is null ? unit == MassUnit.Pound ? CustomaryUnits.LitresPerQuart : 1 : null;
        double full = litres is { } size ? 1000 * size * FillOf(size, mixture.Cut) : double.PositiveInfinity;
        int count = jars > 0 ? jars : mass is { } all && litres is not null ? (int)Math.Min(1e6, Math.Ceiling((all / full) - 1e-9)) : 1;
        if (count > MostJars)
            reader.Refuse("mass", form.Mass, string.Create(CultureInfo.InvariantCulture, $"at most {MostJars} jars would be right: that would "
                + $"be {count}"));
        double each = mass / count ?? (litres is null ? mixture.TotalGrams : full);
        return reader.Refusals.Count > 0 ? (null, reader.Refusals)
            : (new ScaledRecipe(mixture.Times(each / mixture.TotalGrams), count, litres), []);
    }

    /// <summary>The put-up form as this fills it in; of which jar the brine is that starts it, is left to be said.</summary>
    public PutUpForm AsPutUp(string name, MassUnit unit)
    {
        MixturePart main = Each.Vegetables[0];
        bool isKnown = Vegetable.TryFind(main.Name, out _);
        return new PutUpForm
        {
            What = isKnown ? main.Name : PutUpForm.SomethingElse, ItsName = isKnown ? "" : main.Name, HowMuch = Mass(main.Grams),
            Also = string.Join(", ", Each.Vegetables.Skip(1).Concat(Each.Seasonings).Select(part => $"{part.Name} {Mass(part.Grams)}")),
            Cut = Each.Cut.ToString(), Salt = string.Create(CultureInfo.InvariantCulture, $"{Each.Salt.Percent:0.##} %"),
            AddedWater = Each.WaterGrams > 0 ? Mass(Each.WaterGrams) : "", Target = Each.Sourness.ToString(), Name = name,
            Vinegar = Each.VinegarGrams > 0 ? Mass(Each.VinegarGrams) : "",
            VinegarStrength = Each.VinegarGrams > 0 ? string.Create(CultureInfo.InvariantCulture, $"{Each.VinegarPercent:0.##} %") : "",
            StarterBrine = Each.StarterGrams > 0 ? Mass(Each.StarterGrams) : "",
            Vessel = VesselList.Size(VesselLitres ?? UsualSize(unit), unit), HowMany = Count.ToString(CultureInfo.InvariantCulture),
        };
    }

    /// <summary>The least of the usual sizes that holds what goes into each.</summary>
    private double UsualSize(MassUnit unit)
    {
        double[] sizes = [.. (unit == MassUnit.Pound ? [0.5, 1, 2, 4, 8, 20] : new[] { 0.5, 1, 1.5, 2, 3, 5, 10, 20, 50, 100, 250 })
            .Select(size => unit == MassUnit.Pound ? size * CustomaryUnits.LitresPerQuart : size)];
        return sizes.FirstOrDefault(size => 1000 * size * FillOf(size, Each.Cut) >= Each.TotalGrams, sizes[^1]);
    }

    private static double FillOf(double litres, Cut cut)
    {
        VesselFill fill = VesselFill.Of(litres, cut);
        return fill.UsualKilogramsPerLitre + fill.WaterKilogramsPerLitre;
    }

    private static string Mass(double grams) => string.Create(CultureInfo.InvariantCulture, $"{grams:0.##} g");
}
