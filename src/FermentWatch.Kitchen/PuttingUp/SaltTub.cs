using System.Globalization;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>Salted by taste and weighed all the same: the tub that the salt was taken from stood on the scale before and after.</summary>
internal static class SaltTub
{
    /// <summary>The salt of one jar; null where no tub was weighed. By taste after a refusal, so that reading can go on.</summary>
    /// <param name="form">What was typed.</param>
    /// <param name="jars">How many alike were salted from it.</param>
    /// <param name="saltedKilograms">Vegetables and added water of one jar, kg.</param>
    /// <param name="bareMass">The unit of a bare number.</param>
    /// <param name="decimals">To how many decimals per cent are kept.</param>
    /// <param name="reader">Gathers what is wrong.</param>
    public static Salting? Read(PutUpForm form, int jars, double saltedKilograms, string bareMass, int decimals, FieldReader reader)
    {
        if (string.IsNullOrWhiteSpace(form.TubBefore) && string.IsNullOrWhiteSpace(form.TubAfter))
            return null;
        int wrong = reader.Refusals.Count;
        double before = reader.Read("tub before", form.TubBefore, Amount.MassKilograms, bareMass, 0, 50, "what the tub weighed before, up to 50 kg,");
        double after = reader.Read("tub after", form.TubAfter, Amount.MassKilograms, bareMass, 0, 50, "what the tub weighed after, up to 50 kg,");
        double percent = 100 * (before - after) / jars / saltedKilograms;
        if (reader.Refusals.Count == wrong && percent <= 0)
            reader.Refuse("tub after", form.TubAfter, $"less than before, {form.TubBefore!.Trim()}, would be right: salt was taken out");
        else if (reader.Refusals.Count == wrong && percent > SaltDose.HighestPercent)
            reader.Refuse("tub after", form.TubAfter, string.Create(CultureInfo.InvariantCulture,
                $"a tub that lost up to {10 * SaltDose.HighestPercent * saltedKilograms * jars:0} g would be right. "
                + $"That is {percent:0.#} % of {saltedKilograms * jars * 1000:0} g"));
        return reader.Refusals.Count > wrong ? new Salting(SaltKnowledge.ByTaste, null)
            : new Salting(SaltKnowledge.Weighed, Math.Round(percent, decimals));
    }
}
