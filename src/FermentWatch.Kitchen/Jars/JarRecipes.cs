using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;

namespace FermentWatch.Kitchen.Jars;

/// <summary>What went into a jar, as the model asks for it.</summary>
public static class JarRecipes
{
    /// <summary>The recipe of a jar. Portions the catalogue does not know are weighed together as seasonings.</summary>
    public static JarRecipe Of(IReadOnlyList<Portion> portions, Cut cut, Salting salting, double addedWaterKilograms, double vesselLitres, Starter? starter = null)
    {
        var shares = new List<ProduceShare>();
        double unknown = 0;
        foreach (Portion portion in portions)
        {
            if (Vegetable.TryFind(portion.Produce, out Vegetable? vegetable))
                shares.Add(new ProduceShare(vegetable, portion.MassKilograms));
            else
                unknown += portion.MassKilograms;
        }
        return new JarRecipe
        {
            Shares = shares,
            Cut = cut,
            Salt = Dose(salting),
            AddedWaterKilograms = addedWaterKilograms,
            VesselLitres = vesselLitres,
            UnknownKilograms = unknown,
            StarterBrine = starter is null ? null : new StarterBrine(starter.MassKilograms, starter.AcidityPercentLactic),
        };
    }

    /// <summary>The recipe of a jar.</summary>
    public static JarRecipe Recipe(this Jar jar) =>
        Of(jar.Portions, jar.Cut, jar.Salting, jar.AddedWaterKilograms, jar.VesselLitres, jar.Starter);

    private static SaltDose Dose(Salting salting) => salting.Knowledge switch
    {
        SaltKnowledge.Weighed => SaltDose.Weighed(salting.Percent!.Value),
        SaltKnowledge.Measured => SaltDose.BySpoon(salting.Percent!.Value),
        _ => SaltDose.ByTaste,
    };
}
