using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Web.Api.Answers;

/// <summary>Days after packing at which something is reached; null where not reached within the forecast.</summary>
/// <param name="DaysP10">The early end.</param>
/// <param name="DaysP50">The middle.</param>
/// <param name="DaysP90">The late end.</param>
public sealed record DaysAnswer(double? DaysP10, double? DaysP50, double? DaysP90)
{
    public static DaysAnswer Of(PassageDays passage) => new(passage.P10, passage.P50, passage.P90);
}
