using NodaTime;

namespace FermentWatch.Kitchen.Forwarding;

/// <summary>Estimates in the order in which they were said, kept until they have been passed on.</summary>
public interface IEstimateLog : IForwardLog<SavedEstimate>
{
    /// <summary>Notes estimates. Where a jar has one of that very millisecond already, the next free millisecond is taken.</summary>
    Task NoteAsync(IReadOnlyList<SavedEstimate> estimates, CancellationToken cancellationToken);

    /// <summary>For each jar the inputs of the estimate noted last.</summary>
    Task<IReadOnlyDictionary<Guid, string>> LastInputsAsync(CancellationToken cancellationToken);
}

/// <summary>What was expected of a jar at one time. Unlike a forecast it is not renewed: the next one is another estimate.</summary>
/// <param name="JarId">The jar.</param>
/// <param name="MadeAt">When it was said, to the millisecond; no two estimates of a jar share one.</param>
/// <param name="Inputs">Names what it was made from, as the forecast does.</param>
public sealed record SavedEstimate(Guid JarId, Instant MadeAt, string Inputs)
{
    public required double PhP10 { get; init; }

    public required double PhP50 { get; init; }

    public required double PhP90 { get; init; }

    /// <summary>Titratable acidity as per cent lactic acid.</summary>
    public required double AcidityPercentLacticP50 { get; init; }

    /// <summary>Sourness index, mmol/L.</summary>
    public required double SournessP50 { get; init; }

    /// <summary>Days from then until the target is reached, negative once it is past; null where half of the members never get there.</summary>
    public double? DaysToTargetP50 { get; init; }
}
