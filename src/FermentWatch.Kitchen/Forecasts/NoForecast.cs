using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>
/// Jars that are kept like any other and of which nothing is forecast, because of what went in: rounds, pH, acid line and troubles
/// are theirs too. For low salt: below 1.5 % the wrong germs keep up with the lactic acid bacteria (this project's own bound), and
/// at 1.7 % or less kraut goes soft (Univ. of Minnesota Extension; Oregon State SP 50-745).
/// </summary>
public static class NoForecast
{
    /// <summary>How the recipe's own rules name what the catalogue does not know.</summary>
    private const string OtherIngredients = "other ingredients";

    private const string AsForAny = "Rounds, pH and the acid line are as for any jar.";

    /// <summary>Why nothing is forecast, in a sentence or two; null where something can be.</summary>
    public static string? Of(Jar jar)
    {
        if (jar.Portions.Count == 0)
            return $"Nothing is forecast: what went in is not on record. {AsForAny}";
        string main = TestedRecipe.Main(jar);
        if (!Vegetable.TryFind(main, out _))
            return $"Nothing is forecast: nobody has figures for {main} here. {AsForAny}";
        if (jar.Portions.FirstOrDefault(portion => RefusedIngredient.IsFishSauce(portion.Produce)) is { } sauce)
            return $"Nothing is forecast: {sauce.Produce} stands in published kimchi recipes, but nobody has figures for it here. {AsForAny}";
        if (jar.Salting.Percent < SaltDose.LowestPercent)
            return string.Create(CultureInfo.InvariantCulture,
                $"Nothing is forecast: salted with {jar.Salting.Percent:0.##} %, and below 1.5 % nobody can say which germs win. {AsForAny}");
        IReadOnlyList<Refusal> refusals = jar.Recipe().Check();
        return refusals.Count == 0 ? null : refusals.Any(refusal => refusal.Field == OtherIngredients)
            ? $"Nothing is forecast: more than a twentieth of it is {Unknown(jar)}, and nobody has figures for that here. {AsForAny}"
            : $"Nothing is forecast: {refusals[0]} {AsForAny}";
    }

    private static string Unknown(Jar jar) =>
        string.Join(" and ", jar.Portions.Select(portion => portion.Produce).Where(produce => !Vegetable.TryFind(produce, out _)).Distinct());
}
