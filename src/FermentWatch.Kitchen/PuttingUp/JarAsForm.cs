using System.Globalization;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>A jar as the form that would put it up: what a correction starts from.</summary>
public static class JarAsForm
{
    public static PutUpForm Of(Jar jar, Household household, IReadOnlyList<Place> places)
    {
        Guid first = jar.Placements.MinBy(placement => placement.From)!.PlaceId;
        return new PutUpForm
        {
            What = Vegetable.TryFind(jar.Portions[0].Produce, out _) ? jar.Portions[0].Produce : PutUpForm.SomethingElse,
            ItsName = Vegetable.TryFind(jar.Portions[0].Produce, out _) ? "" : jar.Portions[0].Produce,
                HowMuch = Mass(jar.Portions[0].MassKilograms, household.MassUnit),
            Also = string.Join(", ", jar.Portions.Skip(1).Select(portion => $"{portion.Produce} {Mass(portion.MassKilograms, household.MassUnit)}")),
            Cut = jar.Cut.ToString(), Salt = jar.Salting.Percent is { } percent ? Text(percent) + " %" : "by taste",
            SaltKnowledge = (jar.Salting.Knowledge == SaltKnowledge.ByTaste ? SaltKnowledge.Weighed : jar.Salting.Knowledge).ToString(),
            AddedWater = jar.AddedWaterKilograms > 0 ? Mass(jar.AddedWaterKilograms, household.MassUnit) : "",
            StarterFrom = jar.Starter?.FromJar.ToString(CultureInfo.InvariantCulture) ?? "",
                StarterBrine = jar.Starter is { } starter ? Mass(starter.MassKilograms, household.MassUnit) : "",
            Vinegar = jar.Vinegar is { } vinegar ? Mass(vinegar.MassKilograms, household.MassUnit) : "",
                VinegarStrength = jar.Vinegar is { } strong ? Text(strong.AceticPercent) + " %" : "",
            Vessel = household.MassUnit == MassUnit.Pound ? Text(jar.VesselLitres / CustomaryUnits.LitresPerQuart) + " qt"
                : Text(jar.VesselLitres) + " l",
            Cover = jar.Cover.ToString(), Lid = jar.Lid.ToString(), Target = jar.Target.ToString(), Name = jar.Name,
            Place = places.First(place => place.Id == first).Name,
            PackedAt = jar.PackedAt.InZone(household.Zone).LocalDateTime.ToString("uuuu-MM-dd'T'HH:mm", CultureInfo.InvariantCulture),
        };
    }

    private static string Mass(double kilograms, MassUnit unit) =>
        unit == MassUnit.Pound ? Text(kilograms / CustomaryUnits.KilogramsPerPound) + " lb"
        : kilograms < 1 ? Text(kilograms * 1000) + " g" : Text(kilograms) + " kg";

    private static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}

/// <summary>What is to be put right about a jar, as typed: the fields of the put-up form; null leaves what stands. How many alike means nothing
/// here.</summary>
public sealed record CorrectionForm : PutUpForm
{
    /// <summary>Since when cover, lid and how sour are what they are now, on the household's clock; empty is now.</summary>
    public string? Since { get; init; }

    /// <summary>A put-up form as the correction of the jar that it was meant to put up: what it left empty is empty.</summary>
    public static CorrectionForm Of(PutUpForm form) => new()
    {
        What = form.What, ItsName = form.ItsName ?? "", HowMuch = form.HowMuch, Also = form.Also ?? "", Cut = OrAsItStands(form.Cut),
        AddedWater = form.AddedWater ?? "", StarterFrom = form.StarterFrom ?? "", StarterBrine = form.StarterBrine ?? "",
        Vinegar = form.Vinegar ?? "", VinegarStrength = form.VinegarStrength ?? "", Place = form.Place, Target = form.Target, Salt = form.Salt,
        SaltKnowledge = OrAsItStands(form.SaltKnowledge), Vessel = form.Vessel, Cover = form.Cover, Lid = form.Lid, PackedAt = form.PackedAt,
        Name = OrAsItStands(form.Name), ItIsRight = form.ItIsRight,
    };

    private static string? OrAsItStands(string? typed) => string.IsNullOrWhiteSpace(typed) ? null : typed;
}
