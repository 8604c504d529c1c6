using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Reference.Tests.Published;

/// <summary>One row of a published course in the model's terms.</summary>
internal sealed record PublishedCourse
{
    /// <summary>Identity of the row in its table.</summary>
    public required string Id { get; init; }

    /// <summary>What was fermented.</summary>
    public required string Vegetable { get; init; }

    /// <summary>Rows of one study are left out together.</summary>
    public required string Study { get; init; }

    /// <summary>Temperature, Celsius.</summary>
    public required double Celsius { get; init; }

    /// <summary>Days after packing.</summary>
    public required double Day { get; init; }

    /// <summary>acidity_percent_lactic, ph, lab_log10_cfu_per_ml or ripe_day.</summary>
    public required string Quantity { get; init; }

    /// <summary>Published range.</summary>
    public required double Low { get; init; }

    /// <summary>Published range.</summary>
    public required double High { get; init; }

    /// <summary>read, secondary, memory or derived.</summary>
    public required string Status { get; init; }

    /// <summary>Where it was published.</summary>
    public required string Source { get; init; }

    /// <summary>The jar, made anew for the parameters of the model.</summary>
    internal required Func<ModelParameters, JarContents> Contents { get; init; }

    /// <summary>Of the two series over temperature, K01 to K12.</summary>
    public bool IsStaple => Study is "Pederson & Albury 1969" or "kimchi review";

    /// <summary>Middle of the published range.</summary>
    public double Middle => 0.5 * (Low + High);

    /// <inheritdoc/>
    public override string ToString() => Id;
}
