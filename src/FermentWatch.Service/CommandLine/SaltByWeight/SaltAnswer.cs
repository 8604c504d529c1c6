using System.Globalization;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Words;

namespace FermentWatch.Service.CommandLine.SaltByWeight;

/// <summary>The figures that answer a question about salt, and the same in words.</summary>
/// <param name="Figures">For machines.</param>
/// <param name="Lines">For people: what, and how much.</param>
internal sealed record SaltAnswer(IReadOnlyList<Figure> Figures, IReadOnlyList<(string What, string HowMuch)> Lines)
{
    /// <summary>Answers a question.</summary>
    public static SaltAnswer To(SaltQuestion question) =>
        question.BrinePercent is { } percent ? Brine(percent, question)
        : question.SaltGrams is { } salt ? PercentOf(salt, question)
        : SaltFor(question);

    private static SaltAnswer SaltFor(SaltQuestion question)
    {
        double grams = SaltArithmetic.GramsFor(question.ProduceKilograms, question.LiquidKilograms, question.Percent!.Value);
        var answer = new Builder(question);
        Figure salt = answer.Add("salt_g", grams, "0.0");
        string of = question.LiquidKilograms > 0 ? "vegetables and liquid" : "the vegetables";
        answer.Say("salt", $"{salt.Text} g, {Text(question.Percent.Value)} % of {of}, "
            + $"{Text(question.ProduceKilograms + question.LiquidKilograms)} kg");
        answer.Spoons(grams);
        if (question.LiquidKilograms > 0)
            answer.Say("brine to pour on",
                $"{answer.Add("brine_percent_by_mass", SaltArithmetic.BrinePercentByMass(grams, 1000 * question.LiquidKilograms)).Text} % by mass, "
                + "with all the salt in the liquid");
        answer.Evened(grams);
        return answer.Answer();
    }

    private static SaltAnswer PercentOf(SpoonMeasure salt, SaltQuestion question)
    {
        var answer = new Builder(question);
        answer.Say("salt", Range(answer, "salt_g", salt, "0.0", "g"));
        if (question.ProduceKilograms > 0)
            answer.Say("of vegetables and liquid",
                Range(answer, "percent", Each(salt, grams =>
                SaltArithmetic.PercentFrom(grams, question.ProduceKilograms, question.LiquidKilograms)), "0.00", "%"));
        if (question.LiquidKilograms > 0)
            answer.Say("brine of the liquid",
                Range(answer, "brine_percent_by_mass",
                Each(salt, grams => SaltArithmetic.BrinePercentByMass(grams, 1000 * question.LiquidKilograms)), "0.00", "% by mass"));
        if (question.ProduceKilograms > 0)
            answer.Evened(salt.TypicalGrams);
        if (salt.LowGrams < salt.HighGrams)
            answer.Say("why a range", SaltWords.WhyARange(question.Kind));
        return answer.Answer();
    }

    private static SaltAnswer Brine(double percent, SaltQuestion question)
    {
        var answer = new Builder(question);
        if (question.LiquidKilograms > 0)
        {
            double grams = SaltArithmetic.GramsForBrine(1000 * question.LiquidKilograms, percent);
            answer.Say("salt", $"{answer.Add("salt_g", grams, "0.0").Text} g in {Text(question.LiquidKilograms)} kg of liquid");
            answer.Spoons(grams);
        }
        answer.Say("brine", $"{answer.Add("brine_percent_by_mass", percent).Text} % by mass");
        answer.Say("in a litre of it", $"{answer.Add("brine_g_per_litre", BrineDensity.GramsPerLitre(percent), "0.0").Text} g, "
            + $"{answer.Add("brine_mol_per_litre", BrineDensity.MolesPerLitre(percent), "0.000").Text} mol, at 20 C");
        answer.Say("density", $"{answer.Add("brine_density_kg_m3", BrineDensity.KilogramsPerCubicMetre(percent), "0.0").Text} kg/m3 at 20 C");
        return answer.Answer();
    }

    private static SpoonMeasure Each(SpoonMeasure of, Func<double, double> what) =>
        new(what(of.LowGrams), what(of.TypicalGrams), what(of.HighGrams));

    private static string Range(Builder answer, string column, SpoonMeasure range, string format, string unit)
    {
        Figure low = answer.Add($"{column}_low", range.LowGrams, format);
        Figure typical = answer.Add($"{column}_typical", range.TypicalGrams, format);
        Figure high = answer.Add($"{column}_high", range.HighGrams, format);
        return low.Text == high.Text ? $"{typical.Text} {unit}" : $"{low.Text} to {high.Text} {unit}, about {typical.Text}";
    }

    private static string Text(double value) => new Figure("", value, "0.###").Text;

    /// <summary>Gathers figures and lines in the order they are said.</summary>
    private sealed class Builder(SaltQuestion question)
    {
        private readonly List<Figure> _figures = [];
        private readonly List<(string, string)> _lines = [];

        public Figure Add(string column, double value, string format = "0.00")
        {
            _figures.Add(new Figure(column, value, format));
            return _figures[^1];
        }

        public void Say(string what, string howMuch) => _lines.Add((what, howMuch));

        public void Spoons(double grams)
        {
            (double fewest, double typical, double most) = SpoonMeasure.Of(question.Kind).TablespoonsFor(grams);
            Add("tablespoons_low", fewest);
            Add("tablespoons_typical", typical);
            Add("tablespoons_high", most);
            string low = SpoonWords.Of(fewest), high = SpoonWords.Of(most);
            Say("by the spoon", low == high ? $"{low} of {question.Kind.Words()}"
                : $"{low} to {high} of {question.Kind.Words()}, about {SpoonWords.Of(typical)}");
            Say("why a range", SaltWords.WhyARange(question.Kind));
        }

        public void Evened(double grams)
        {
            double percent = SaltArithmetic.BrinePercentByMass(grams, 1000 * (question.ProduceKilograms + question.LiquidKilograms));
            Say("evens out at", $"{Add("evens_out_percent_by_mass", percent).Text} % by mass of everything in the jar");
        }

        public SaltAnswer Answer() => new(_figures, _lines);
    }
}

/// <summary>What was typed after <c>salt</c>, as typed.</summary>
/// <param name="ProduceMass">Prepared vegetables.</param>
/// <param name="Percent">Salt wanted, per cent of vegetables and liquid together.</param>
/// <param name="Water">Water added, by mass or volume.</param>
/// <param name="Vinegar">Vinegar added, by mass or volume.</param>
/// <param name="Salt">Salt that there is, by mass or by the spoon.</param>
/// <param name="Brine">Brine wanted, per cent by mass.</param>
/// <param name="SaltKind">Kind of salt.</param>
internal sealed record SaltInput(
    string? ProduceMass, string? Percent, string? Water, string? Vinegar, string? Salt, string? Brine, string? SaltKind);

/// <summary>One figure of an answer.</summary>
/// <param name="Column">Its name for machines, with the unit.</param>
/// <param name="Value">The figure.</param>
/// <param name="Format">Digits worth printing.</param>
internal readonly record struct Figure(string Column, double Value, string Format = "0.##")
{
    /// <summary>The figure with its digits, in the invariant culture.</summary>
    public string Text => Value.ToString(Format, CultureInfo.InvariantCulture);
}
