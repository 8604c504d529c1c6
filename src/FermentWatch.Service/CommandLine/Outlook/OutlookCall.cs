using FermentWatch.Kinetics.Forecasting;
using NodaTime;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>What is asked of <c>outlook</c>, read and checked.</summary>
/// <param name="Request">The jar, without a target.</param>
/// <param name="Until">Levels whose days are asked for, by the words they were asked with.</param>
/// <param name="Target">How sour it should be, by the words it was asked with; null if nobody said.</param>
/// <param name="Ready">On which date it should be that; null if nobody said.</param>
internal sealed record OutlookCall(ForecastRequest Request, IReadOnlyList<NamedTarget> Until, NamedTarget? Target, LocalDate? Ready);
