using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>Reads the form by which jars are put up.</summary>
public static class PutUp
{
    private const double TableVinegarPercent = 5;
    private const int KeptDecimals = 2, MostDecimals = 12;
    private static readonly Duration OldestPacking = Duration.FromDays(366);

    /// <summary>Turns a form into jars, or tells every field that is wrong.</summary>
    /// <param name="form">What was typed.</param>
    /// <param name="household">For units and the zone.</param>
    /// <param name="places">Where a jar may stand.</param>
    /// <param name="now">The present.</param>
    /// <param name="starters">Jars whose brine may start another; null where none may.</param>
    /// <param name="batch">Names the batch and with what the form says its jars; null takes a new name.</param>
    public static PutUpOrder Read(PutUpForm form, Household household,
        IReadOnlyList<Place> places, Instant now, IReadOnlyList<StarterSource>? starters = null, Guid? batch = null) =>
        Read(form, household, places, now, now - OldestPacking, starters ?? [], batch: batch);

    /// <summary>All that a form says, as one text; whether somebody insists on it is no part of it.</summary>
    public static string ContentOf(PutUpForm form) => (form with { ItIsRight = false }).ToString();

    /// <summary>The id of a jar: of its batch, of what the form said, and which of those alike it is, from 0.</summary>
    public static Guid IdOf(Guid batch, string content, int index) =>
        AnswerId.Of(batch, AnswerId.Named(string.Create(CultureInfo.InvariantCulture, $"{index} {content}")));

    /// <summary>The same; packed on <paramref name="oldest"/> at the earliest, and of a jar that stands already: as sour as it is meant to be
    /// whatever the vegetable, and without asking again about what was odd of it before.</summary>
    internal static PutUpOrder Read(
        PutUpForm form, Household household, IReadOnlyList<Place> places, Instant now, Instant oldest, IReadOnlyList<StarterSource> starters,
        Jar? standing = null, Guid? batch = null)
    {
        var reader = new FieldReader();
        string bareMass = household.MassUnit == MassUnit.Pound ? "lb" : "kg";
        string produce = ReadProduce(form, reader);
        var portions = new List<Portion> { new(produce, ReadMass(form.HowMuch, bareMass, produce, reader)) };
        portions.AddRange(IngredientList.Read(form.Also, bareMass, reader.Refusals));
        Cut cut = reader.ReadChoice("cut", form.Cut, UsualCut(produce));
        double water = ReadWater(form, bareMass, reader);
        int howMany = ReadHowMany(form, reader);
        double vegetables = portions.Sum(portion => portion.MassKilograms);
        Salting salting = SaltTub.Read(form, howMany, vegetables + water, bareMass, KeptDecimals, reader)
            ?? ReadSalt(form, vegetables, water, reader);
        Starter? starter = ReadStarter(form, starters, bareMass, reader);
        Vinegar? vinegar = ReadVinegar(form, reader);
        double litres = reader.Read("vessel", form.Vessel, Amount.VolumeLitres, "l", 0.1, 250, "0.1 to 250 litres");
        Place? place = ReadPlace(form.Place, places, reader);
        Instant packedAt = reader.ReadPast("packed on", form.PackedAt, household.Zone, now, oldest);
        Cover cover = reader.ReadChoice("cover", form.Cover, Cover.Leaf);
        Lid lid = reader.ReadChoice("lid", form.Lid, Lid.Vented);
        Sourness target = ReadTarget(form.Target, produce, standing?.Target, reader);

        string name = string.IsNullOrWhiteSpace(form.Name) ? Usual(portions) : reader.ReadName("name", form.Name);

        if (reader.Refusals.Count > 0 || place is null)
            return new PutUpOrder([], reader.Refusals, []);

        (Guid batchId, string content) = (batch ?? NewId(now), ContentOf(form));
        var jars = Enumerable.Range(0, howMany).Select(index => new Jar
        {
            Id = IdOf(batchId, content, index), Name = name, BatchId = batchId, PackedAt = packedAt, Portions = portions, Cut = cut,
            AddedWaterKilograms = water, Salting = salting, Starter = starter, Vinegar = vinegar, VesselLitres = litres, Cover = cover, Lid = lid,
            Target = target,
        }).ToList();
        foreach (Jar jar in jars)
            jar.Placements.Add(new JarPlacement { Id = NewId(now), JarId = jar.Id, PlaceId = place.Id, From = packedAt });
        return Checked(jars, form, household, now, standing);
    }

    /// <summary>Jars alike fit together alike: the first speaks for all.</summary>
    private static PutUpOrder Checked(List<Jar> jars, PutUpForm form, Household household, Instant now, Jar? standing)
    {
        List<Refusal> impossible = [.. Plausibility.Impossible(jars[0], household.MassUnit)];
        List<Doubt> odd = form.ItIsRight || impossible.Count > 0 ? [] : [.. OddOf(jars[0]).Except(standing is null ? [] : OddOf(standing))];
        return impossible.Count + odd.Count > 0 ? new PutUpOrder([], impossible, odd) : new PutUpOrder(jars);

        IEnumerable<Doubt> OddOf(Jar jar) => Plausibility.Odd(jar, household.MassUnit, now, household.Zone);
    }

    private static string ReadProduce(PutUpForm form, FieldReader reader)
    {
        bool isElse = (form.What ?? "").Trim().Equals(PutUpForm.SomethingElse, StringComparison.OrdinalIgnoreCase);
        (string field, string? typed) = isElse ? ("its name", form.ItsName) : ("what", form.What);
        if (Vegetable.TryFind(typed, out Vegetable? vegetable))
            return vegetable.Name;
        if (RefusedIngredient.TryFindReason(typed, out string? reason))
            reader.Refuse(field, typed, $"a vegetable: {reason}");
        else if (isElse)
            return reader.ReadName(field, typed);
        else
            reader.Refuse(field, typed,
                $"one of {string.Join(", ", Vegetable.All.Select(each => each.Name))} would be right, or '{PutUpForm.SomethingElse}' with its name");
        return Vegetable.All[0].Name;
    }

    /// <summary>As it is usually cut; of what nobody knows the stricter: pieces, whose brine alone does not speak for them.</summary>
    private static Cut UsualCut(string produce) => Vegetable.TryFind(produce, out Vegetable? vegetable) ? vegetable.UsualCut : Cut.Pieces;

    private static double ReadMass(string? typed, string bareMass, string produce, FieldReader reader)
    {
        if (Heads.Of(produce) is { } head && Heads.TryRead(typed, head, out double kilograms) && kilograms > 0)
            return kilograms;
        return reader.Read("how much", typed, Amount.MassKilograms, bareMass, 0.01, 250, "a mass from 10 g to 250 kg, or heads of cabbage,");
    }

    /// <summary>The salt that a form asks for in each jar, as far as it is typed: nothing else of it has to be right yet.</summary>
    /// <param name="form">What was typed so far.</param>
    /// <param name="household">For units.</param>
    /// <returns>The salt, null where it is by taste; or what of vegetables, water and salt cannot be used.</returns>
    public static (SaltToWeigh? Salt, IReadOnlyList<Refusal> Refusals) Weigh(PutUpForm form, Household household)
    {
        var reader = new FieldReader();
        string bareMass = household.MassUnit == MassUnit.Pound ? "lb" : "kg";
        string produce = ReadProduce(form with { ItsName = string.IsNullOrWhiteSpace(form.ItsName) ? "it" : form.ItsName }, reader);
        double vegetables = ReadMass(form.HowMuch, bareMass, produce, reader)
            + IngredientList.Read(form.Also, bareMass, reader.Refusals).Sum(portion => portion.MassKilograms);
        double water = ReadWater(form, bareMass, reader);
        Salting salting = SaltTub.Read(form, ReadHowMany(form, reader), vegetables + water, bareMass, MostDecimals, reader)
            ?? ReadSalt(form, vegetables, water, reader, decimals: MostDecimals);
        return (reader.Refusals.Count > 0 || salting.Percent is not { } percent ? null
            : SaltToWeigh.Of(percent, SaltBasis.VegetablesAndWater, vegetables, water), reader.Refusals);
    }

    private static int ReadHowMany(PutUpForm form, FieldReader reader) => reader.ReadWhole("how many", form.HowMany, 1, 1, 100);

    private static double ReadWater(PutUpForm form, string bareMass, FieldReader reader) => string.IsNullOrWhiteSpace(form.AddedWater) ? 0
        : reader.Read("added water", form.AddedWater, Amount.MassKilograms, bareMass, 0, 250, "0 to 250 kg");

    /// <summary>The salt as it is kept: what was worked out from something else than per cent of all has so many decimals.</summary>
    private static Salting ReadSalt(PutUpForm form, double vegetablesKilograms, double waterKilograms, FieldReader reader,
        int decimals = KeptDecimals)
    {
        string typed = (form.Salt ?? "").Trim();
        if (typed.Equals("by taste", StringComparison.OrdinalIgnoreCase) || typed.Equals("taste", StringComparison.OrdinalIgnoreCase))
            return new Salting(SaltKnowledge.ByTaste, null);
        SaltKnowledge knowledge = reader.ReadChoice("salt weighed", form.SaltKnowledge, SaltKnowledge.Weighed);
        SaltBasis basis = reader.ReadChoice("salt of", form.SaltOf, SaltBasis.VegetablesAndWater);
        double total = vegetablesKilograms + waterKilograms;
        bool isMass = Amount.MassKilograms.TryRead(typed, null, out double kilograms);
        if (!isMass && basis == SaltBasis.Brine && waterKilograms <= 0)
            reader.Refuse("added water", form.AddedWater,
                "how much water it is dissolved in, such as 500 g, would be right: the salt is said of the brine");
        double percent = isMass ? Math.Round(100 * kilograms / total, decimals) : 0;
        bool isRead = isMass || Amount.Percent.TryRead(typed, "%", out percent);
        if (isRead && !isMass && basis != SaltBasis.VegetablesAndWater && percent is >= 0 and <= SaltArithmetic.MostPercent)
            percent = Math.Round(SaltToWeigh.Of(percent, basis, vegetablesKilograms, waterKilograms).Percent, decimals);
        if (isRead && SaltLimits.CanBe(percent))
            return new Salting(knowledge, percent);
        reader.Refuse("salt", typed, "1.5 to 8 % of vegetables and water together, its mass, or 'by taste', would be right, such as 2.25 % or 20 g"
            + Hint(isMass, percent, total));
        return new Salting(SaltKnowledge.ByTaste, null);
    }

    private static string Hint(bool isMass, double percent, double saltedKilograms)
    {
        if (isMass)
            return string.Create(CultureInfo.InvariantCulture,
                $". That is {percent:0.##} % of {saltedKilograms * 1000:0} g; 2.25 % is {saltedKilograms * 22.5:0.#} g");
        return Plausibility.MeantPercent(percent) is { } meant ? string.Create(CultureInfo.InvariantCulture, $". Was {meant:0.##} % meant?") : "";
    }

    private static Starter? ReadStarter(PutUpForm form, IReadOnlyList<StarterSource> starters, string bareMass, FieldReader reader)
    {
        if (string.IsNullOrWhiteSpace(form.StarterFrom) && string.IsNullOrWhiteSpace(form.StarterBrine))
            return null;
        string typed = (form.StarterFrom ?? "").Trim();
        StarterSource? source = starters.FirstOrDefault(each => each.Number.ToString(CultureInfo.InvariantCulture) == typed);
        if (source is null)
        {
            string which = starters.Count == 0 ? "leave it empty: no jar"
                : $"one of {string.Join(", ", starters.Select(each => each.Number))} would be right: a jar that";
            reader.Refuse("brine of jar", typed, $"{which} is measured below the acid line and without trouble");
        }
        double kilograms = reader.Read("starter brine", form.StarterBrine, Amount.MassKilograms, bareMass, 0.005, 25, "5 g to 25 kg");
        return source is null ? null : new Starter(source.Number, kilograms, source.AcidityPercentLactic);
    }

    private static Vinegar? ReadVinegar(PutUpForm form, FieldReader reader)
    {
        if (string.IsNullOrWhiteSpace(form.Vinegar))
            return null;
        double percent = string.IsNullOrWhiteSpace(form.VinegarStrength) ? TableVinegarPercent
            : reader.Read("vinegar strength", form.VinegarStrength, Amount.Percent, "%", 1, 25, "1 to 25 % acetic acid");
        if (LiquidMass.TryRead(form.Vinegar, LiquidMass.WaterKilogramsPerLitre, out double kilograms) && kilograms is > 0 and <= 25)
            return new Vinegar(kilograms, percent);
        reader.Refuse("vinegar", form.Vinegar, "up to 25 kg would be right, such as 60 g, 60 ml or 1/4 cup");
        return null;
    }

    /// <summary>How sour: a step the vegetable can reach, or the one that stands already.</summary>
    private static Sourness ReadTarget(string? typed, string produce, Sourness? standing, FieldReader reader)
    {
        Sourness target = reader.ReadChoice("how sour", typed, SournessLevel.Usual(produce));
        IReadOnlyList<SournessLevel> reached = SournessLevel.ReachedBy(produce);
        if (target != standing && reached.All(level => level.Step != target))
            reader.Refuse("how sour", SournessLevel.Of(target).Words, string.Create(CultureInfo.InvariantCulture,
                $"{produce} ends near {SournessLevel.EndOf(produce):0.##} % acid: {string.Join(" or ", reached.Select(level => level.Words))}"));
        return target;
    }

    private static Place? ReadPlace(string? typed, IReadOnlyList<Place> places, FieldReader reader)
    {
        Place? place = places.FirstOrDefault(each => each.Name.Equals(typed?.Trim(), StringComparison.OrdinalIgnoreCase)
            || each.Id.ToString().Equals(typed?.Trim(), StringComparison.OrdinalIgnoreCase));
        if (place is null)
            reader.Refuse("place", typed, places.Count == 0 ? "make a place first"
                : $"one of {string.Join(", ", places.Select(each => each.Name))} would be right");
        return place;
    }

    private static string Usual(List<Portion> portions) => string.Join(" and ", portions.Select(portion => portion.Produce).Distinct().Take(2));

    private static Guid NewId(Instant now) => Guid.CreateVersion7(now.ToDateTimeOffset());
}
