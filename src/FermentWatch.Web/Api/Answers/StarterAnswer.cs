using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Web.Api.Answers;

/// <summary>Brine of an earlier jar that was put in.</summary>
/// <param name="JarNumber">Number of that jar.</param>
/// <param name="MassKilograms">How much of it.</param>
/// <param name="AcidityPercentLactic">Its acidity as expected when it was taken.</param>
public sealed record StarterAnswer(int JarNumber, double MassKilograms, double AcidityPercentLactic)
{
    public static StarterAnswer? Of(Starter? starter) =>
        starter is null ? null : new(starter.FromJar, starter.MassKilograms, starter.AcidityPercentLactic);
}
