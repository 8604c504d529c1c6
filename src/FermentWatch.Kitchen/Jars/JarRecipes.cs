using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;

namespace FermentWatch.Kitchen.Jars;

/// <summary>What went into a jar, as the model asks for it.</summary>
public static class JarRecipes
{
    /// <summary>The recipe of a jar. Portions the catalogue does not know are weighed together as seasonings.</summary>
    public static JarRecipe Recipe(this Jar jar)
    {
        var shares = new List<ProduceShare>();
        double unknown = 0;
        foreach (Portion portion in jar.Portions)
        {
            if (Vegetable.TryFind(portion.Produce, out Vegetable? vegetable))
                shares.Add(new ProduceShare(vegetable, portion.MassKilograms));
            else
                unknown += portion.MassKilograms;
        }
        return new JarRecipe
        {
            Shares = shares,
            Cut = jar.Cut,
            Salt = Dose(jar.Salting),
            AddedWaterKilograms = jar.AddedWaterKilograms,
            VesselLitres = jar.VesselLitres,
            UnknownKilograms = unknown,
            StarterBrine = jar.Starter is { } starter ? new StarterBrine(starter.MassKilograms, starter.AcidityPercentLactic) : null,
            Vinegar = jar.Vinegar,
        };
    }

    private static SaltDose Dose(Salting salting) => salting.Knowledge switch
    {
        SaltKnowledge.Weighed => SaltDose.Weighed(salting.Percent!.Value),
        SaltKnowledge.Measured => SaltDose.BySpoon(salting.Percent!.Value),
        _ => SaltDose.ByTaste,
    };
}
