using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>A correction that was read: what is to be filed, or every field that was wrong or odd.</summary>
/// <param name="Corrected">The jar as it is to stand, its placement that of the beginning; null if anything was wrong or is asked about.</param>
/// <param name="Corrections">What changes, with what stood before; empty where all stands as typed already.</param>
/// <param name="Refusals">What was wrong.</param>
/// <param name="Doubts">What is odd and was not insisted on.</param>
public sealed record CorrectionOrder(
    Jar? Corrected, IReadOnlyList<JarCorrection> Corrections, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Doubt> Doubts);
