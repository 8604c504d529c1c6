using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Salts;

/// <summary>What went wrong with the salt of a jar.</summary>
public enum SaltMishap
{
    /// <summary>Less went in than was meant to.</summary>
    TooLittle = 1,

    /// <summary>More went in than was meant to.</summary>
    TooMuch = 2,

    /// <summary>It tastes far too salty, and nobody knows how much went in.</summary>
    TastesTooSalty = 3,

    /// <summary>None went in.</summary>
    Forgotten = 4,
}

/// <summary>What is asked about a jar that was salted wrongly, as typed.</summary>
public sealed record MendForm
{
    /// <summary>What happened, a name of <see cref="SaltMishap"/>.</summary>
    public string? Happened { get; init; }

    /// <summary>Salt that went in: its mass (<c>12 g</c>), or per cent of vegetables and added water; empty takes what is on record.</summary>
    public string? WentIn { get; init; }

    /// <summary>What was meant, per cent of vegetables and added water; empty takes what is on record, or 2.25 where it was by taste.</summary>
    public string? Intended { get; init; }

    /// <summary>Whether nothing is asked.</summary>
    public bool IsEmpty => string.IsNullOrWhiteSpace(Happened);
}

/// <summary>The same, read.</summary>
/// <param name="Mishap">What happened.</param>
/// <param name="WentInPercent">Salt in it, per cent of vegetables and added water, 0 to 26; null where nobody knows.</param>
/// <param name="IntendedPercent">What was meant, 1.5 to 8 %.</param>
public sealed record MendQuestion(SaltMishap Mishap, double? WentInPercent, double IntendedPercent)
{
    /// <summary>What is taken where the jar was salted by taste: the kraut recipe (Univ. of Minnesota Extension; Oregon State SP 50-745).</summary>
    public const double UsualPercent = 2.25;

    /// <summary>Reads a form, or tells every field that is wrong.</summary>
    /// <param name="form">What was typed.</param>
    /// <param name="jar">The jar, for what is on record and for its mass.</param>
    /// <param name="household">For the unit of a mass.</param>
    public static (MendQuestion? Question, IReadOnlyList<Refusal> Refusals) Read(MendForm form, Jar jar, Household household)
    {
        var reader = new FieldReader();
        if (form.IsEmpty)
            reader.Refuse("happened", null, $"one of {string.Join(", ", Enum.GetNames<SaltMishap>())} would be right");
        SaltMishap mishap = reader.ReadChoice("happened", form.Happened, SaltMishap.Forgotten);
        double intended = string.IsNullOrWhiteSpace(form.Intended) ? OnRecord(jar) ?? UsualPercent
            : reader.Read("intended", form.Intended, Amount.Percent, "%", SaltDose.LowestPercent, SaltDose.HighestPercent,
                "1.5 to 8 % of vegetables and added water together");
        double? wentIn = mishap == SaltMishap.Forgotten ? ReadNone(form, reader) : ReadWentIn(form, jar, household, mishap, reader);
        if (reader.Refusals.Count == 0 && wentIn is { } percent)
            CheckAgainst(percent, intended, mishap, form, reader);
        return (reader.Refusals.Count > 0 ? null : new MendQuestion(mishap, wentIn, intended), reader.Refusals);
    }

    /// <summary>What stands on record is what was meant only where it could be meant.</summary>
    private static double? OnRecord(Jar jar) =>
        jar.Salting.Percent is { } percent and >= SaltDose.LowestPercent and <= SaltDose.HighestPercent ? percent : null;

    private static double? ReadNone(MendForm form, FieldReader reader)
    {
        if (!string.IsNullOrWhiteSpace(form.WentIn))
            reader.Refuse("went in", form.WentIn, "leave it empty where the salt was forgotten; where some went in, 'too little' would be right");
        return 0;
    }

    private static double? ReadWentIn(MendForm form, Jar jar, Household household, SaltMishap mishap, FieldReader reader)
    {
        string typed = (form.WentIn ?? "").Trim();
        if (typed.Length == 0 && mishap == SaltMishap.TastesTooSalty)
            return null;
        if (typed.Length == 0)
            return jar.Salting.Percent ?? Refused(reader, form.WentIn, household);
        double salted = Contents.Of(jar).SaltedKilograms;
        if (Amount.MassKilograms.TryRead(typed, null, out double kilograms))
            return kilograms >= 0 && 100 * kilograms / salted <= SaltArithmetic.MostPercent ? 100 * kilograms / salted
                : Refused(reader, form.WentIn, household);
        return Amount.Percent.TryRead(typed, "%", out double percent) && percent is >= 0 and <= SaltArithmetic.MostPercent ? percent
            : Refused(reader, form.WentIn, household);
    }

    private static double? Refused(FieldReader reader, string? typed, Household household)
    {
        string mass = household.MassUnit == MassUnit.Pound ? "1/2 oz" : "12 g";
        reader.Refuse("went in", typed, $"the salt that went into this jar, such as {mass}, or its per cent of vegetables and added water up to 26, "
            + "such as 1.2 %, would be right");
        return null;
    }

    private static void CheckAgainst(double percent, double intended, SaltMishap mishap, MendForm form, FieldReader reader)
    {
        if (mishap == SaltMishap.TooLittle ? percent < intended : percent > intended || mishap == SaltMishap.Forgotten)
            return;
        string side = mishap == SaltMishap.TooLittle ? "less" : "more";
        reader.Refuse(string.IsNullOrWhiteSpace(form.WentIn) ? "went in" : "intended", string.Create(CultureInfo.InvariantCulture,
            $"{percent:0.##} % went in, {intended:0.##} % meant"), $"{side} than was meant would be right: say what went in and what was meant");
    }
}
