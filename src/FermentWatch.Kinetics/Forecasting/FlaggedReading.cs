using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>A reading the model cannot explain: shown, not swallowed.</summary>
/// <param name="Reading">The reading as it came.</param>
/// <param name="Reason">What does not fit, in one line.</param>
/// <param name="WorseThanExpected">The pH is higher than expected: such a reading is never discounted.</param>
public sealed record FlaggedReading(PhReading Reading, string Reason, bool WorseThanExpected);
