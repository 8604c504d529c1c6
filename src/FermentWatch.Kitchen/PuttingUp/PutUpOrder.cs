using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>A form that was read: the jars to be filed, or every field that was wrong or odd.</summary>
/// <param name="Jars">Jars without numbers, each with its first placement; empty if anything was wrong or is asked about.</param>
/// <param name="Refusals">What was wrong, every field at once.</param>
/// <param name="Doubts">What is odd and was not insisted on.</param>
public sealed record PutUpOrder(IReadOnlyList<Jar> Jars, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Doubt> Doubts)
{
    public PutUpOrder(IReadOnlyList<Jar> jars) : this(jars, [], [])
    {
    }
}

/// <summary>A correction that was read: what is to be filed, or every field that was wrong or odd.</summary>
/// <param name="Corrected">The jar as it is to stand, its placement that of the beginning; null if anything was wrong or is asked about.</param>
/// <param name="Corrections">What changes, with what stood before; empty where all stands as typed already.</param>
/// <param name="Refusals">What was wrong.</param>
/// <param name="Doubts">What is odd and was not insisted on.</param>
public sealed record CorrectionOrder(
    Jar? Corrected, IReadOnlyList<JarCorrection> Corrections, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Doubt> Doubts);

/// <summary>Something that is merely odd: asked about once, taken when whoever typed it says that it is right.</summary>
/// <param name="Field">The field it is about.</param>
/// <param name="Question">One plain question, with what was probably meant where that can be told.</param>
public sealed record Doubt(string Field, string Question);
