using FermentWatch.Kinetics.Guilds;

namespace FermentWatch.Calibration;

/// <summary>One number the fit may move, with what is known of it beforehand.</summary>
/// <param name="Name">What it is, with its unit.</param>
/// <param name="Prior">Prior mean, in the unit of the name.</param>
/// <param name="Spread">Prior standard deviation: of the natural logarithm where <paramref name="IsFactor"/>.</param>
/// <param name="IsFactor">Always positive: moved in its logarithm.</param>
/// <param name="Put">Puts a value into the model.</param>
/// <param name="PriorSource">Where the prior comes from.</param>
internal sealed record FreeParameter(
    string Name, double Prior, double Spread, bool IsFactor, Func<ModelParameters, double, ModelParameters> Put, string PriorSource)
{
    /// <summary>Value at so many standard deviations from the prior mean.</summary>
    public double ValueAt(double deviate) => IsFactor ? Prior * Math.Exp(Spread * deviate) : Prior + (Spread * deviate);
}
