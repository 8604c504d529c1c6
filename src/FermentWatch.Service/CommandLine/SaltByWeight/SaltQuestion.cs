using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Service.CommandLine.SaltByWeight;

/// <summary>What is asked of <c>salt</c>, read and checked.</summary>
internal sealed record SaltQuestion
{
    // Vinegar of 5 % acid at 20 C (general tables, from memory).
    private const double VinegarKilogramsPerLitre = 1.0055;
    private const double MostKilograms = 250;

    /// <summary>Vegetables, kg; 0 where a brine alone is asked for.</summary>
    public double ProduceKilograms { get; private init; }

    /// <summary>Water and vinegar, kg.</summary>
    public double LiquidKilograms { get; private init; }

    /// <summary>Salt wanted, per cent of vegetables and liquid together; null if another question is asked.</summary>
    public double? Percent { get; private init; }

    /// <summary>Salt there is, g, as low, typical and high; null if another question is asked.</summary>
    public SpoonMeasure? SaltGrams { get; private init; }

    /// <summary>Brine wanted, per cent by mass; null if another question is asked.</summary>
    public double? BrinePercent { get; private init; }

    public SaltKind Kind { get; private init; }

    /// <summary>Reads a call. The question means nothing where there are refusals.</summary>
    public static (SaltQuestion Question, IReadOnlyList<Refusal> Refusals) Read(SaltInput input)
    {
        var reader = new FieldReader();
        SaltKind kind = ReadKind(input.SaltKind, reader);
        var question = new SaltQuestion
        {
            Kind = kind,
            ProduceKilograms = input.ProduceMass is null ? 0
                : reader.Read("produce-mass", input.ProduceMass, Amount.MassKilograms, null, 0.001, MostKilograms, "a mass from 1 g to 250 kg"),
            LiquidKilograms = ReadLiquid("water", input.Water, LiquidMass.WaterKilogramsPerLitre, reader) + ReadLiquid("vinegar", input.Vinegar,
                VinegarKilogramsPerLitre, reader),
            Percent = input.Percent is null ? null
                : reader.Read("percent", input.Percent, Amount.Percent, "%", SaltDose.LowestPercent, SaltDose.HighestPercent, 
                    "1.5 to 8 % of vegetables and added water together (less lets the wrong germs keep up, more stops the lactic acid bacteria)"),
            BrinePercent = input.Brine is null ? null
                : reader.Read("brine", input.Brine, Amount.Percent, "%", 0.5, 26, "0.5 to 26 % by mass"),
            SaltGrams = input.Salt is null ? null : ReadSalt(input.Salt, kind, reader),
        };
        CheckTogether(input, question, reader);
        return (question, reader.Refusals);
    }

    private static void CheckTogether(SaltInput input, SaltQuestion question, FieldReader reader)
    {
        string[] asked = [.. new[] { ("--percent", input.Percent), ("--salt", input.Salt), ("--brine", input.Brine) }.Where(each =>
            each.Item2 is not null).Select(each => each.Item1)];
        if (asked.Length != 1)
            reader.Refuse("what is asked", string.Join(" and ", asked),
                "one of --percent 2.25% (how much salt), --salt 3tbsp (how many per cent) or --brine 5% (a brine alone) would be right");
        else if (input.Percent is not null && input.ProduceMass is null)
            reader.Refuse("produce-mass", null, "a mass such as 2.3kg or 5lb would be right; for a brine alone ask --brine 5%");
        else if (input.Salt is not null && question.ProduceKilograms + question.LiquidKilograms <= 0)
            reader.Refuse("produce-mass", null, "a mass such as 2.3kg or 5lb, or --water for a brine alone, would be right");
        else if (input.Brine is not null && input.ProduceMass is not null)
            reader.Refuse("brine", input.Brine, "a brine alone is made of water: leave --produce-mass out, or ask --percent");
    }

    private static SaltKind ReadKind(string? typed, FieldReader reader)
    {
        if (typed is null)
            return SaltKind.Table;
        if (SaltKindNames.Find(typed) is { } kind)
            return kind;
        reader.Refuse("salt-kind", typed, $"one of {SaltKindNames.Known} would be right");
        return SaltKind.Table;
    }

    private static double ReadLiquid(string field, string? typed, double kilogramsPerLitre, FieldReader reader)
    {
        if (typed is null)
            return 0;
        double kilograms = LiquidMass.TryRead(typed, kilogramsPerLitre, out double read) ? read : -1;
        if (kilograms is >= 0 and <= MostKilograms)
            return kilograms;
        reader.Refuse(field, typed, $"0 to 250 kg would be right, such as {Amount.MassKilograms.Example}, or {Amount.VolumeLitres.Example}");
        return 0;
    }

    private static SpoonMeasure ReadSalt(string typed, SaltKind kind, FieldReader reader)
    {
        if (Amount.MassKilograms.TryRead(typed, null, out double kilograms) && kilograms is > 0 and <= MostKilograms)
            return new SpoonMeasure(1000 * kilograms, 1000 * kilograms, 1000 * kilograms);
        if (Amount.VolumeLitres.TryRead(typed, null, out double litres) && litres is > 0 and <= MostKilograms)
            return kind.GramsIn(1000 * litres);
        reader.Refuse("salt", typed, "a mass such as 54g or 2oz, or spoons such as 3tbsp, 2tsp or 0.75cup, would be right");
        return new SpoonMeasure(1, 1, 1);
    }
}
