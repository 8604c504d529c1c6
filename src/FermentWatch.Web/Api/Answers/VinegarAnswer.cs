using FermentWatch.Kinetics.Recipe;

namespace FermentWatch.Web.Api.Answers;

/// <summary>Vinegar that was put in.</summary>
/// <param name="MassKilograms">How much.</param>
/// <param name="AceticPercent">Its strength, per cent acetic acid.</param>
public sealed record VinegarAnswer(double MassKilograms, double AceticPercent)
{
    public static VinegarAnswer? Of(Vinegar? vinegar) => vinegar is null ? null : new(vinegar.MassKilograms, vinegar.AceticPercent);
}
