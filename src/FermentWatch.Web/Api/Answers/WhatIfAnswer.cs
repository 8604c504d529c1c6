using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.Forecasts;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What would become of a jar elsewhere, or in the cold from a day on: expected, never measured.</summary>
/// <param name="Moved">Moved today, where it stands first.</param>
/// <param name="Chilled">Moved to the coldest place on the day asked for.</param>
/// <param name="ChilledOn">That day.</param>
/// <param name="ReadyBy">The day by which it should be ready; null where none was asked for.</param>
/// <param name="GasLitresP50">Gas to come where it stays, L at 20 C.</param>
/// <param name="GasLitresP90">What nine in ten stay below.</param>
/// <param name="DaysToABar">How many days its gas takes to fill the headspace once more; null where next to none is made.</param>
internal sealed record WhatIfAnswer(
    IReadOnlyList<StayAnswer> Moved, ChillingAnswer? Chilled, LocalDate ChilledOn, LocalDate? ReadyBy, double? GasLitresP50, double? GasLitresP90,
    double? DaysToABar)
{
    public static WhatIfAnswer Of(WhatIfAnswered answered) => new(
        [.. answered.Moved.Select(moved => StayAnswer.Of(moved, answered))],
        answered.Chilled is { } chilled ? ChillingAnswer.Of(chilled, answered) : null, answered.ChillOn, answered.ReadyOn,
        answered.Ahead?.GasLitres.Middle, answered.Ahead?.GasLitres.Most,
        answered.Ahead is { DaysToABar: var days } && double.IsFinite(days) ? days : null);
}

/// <summary>A jar that stands in a place from today on.</summary>
/// <param name="Place">Its name.</param>
/// <param name="SourEnough">Days after packing to the target; null where it has none.</param>
/// <param name="AcidLine">Days after packing to pH 4.6 in the brine.</param>
/// <param name="ReadyByWords">Whether it would be ready by the day asked for; null where none was.</param>
internal sealed record StayAnswer(string Place, DaysAnswer? SourEnough, DaysAnswer AcidLine, string? ReadyByWords)
{
    public static StayAnswer Of(WhatIf stay, WhatIfAnswered answered) => new(stay.Place.Name,
        stay.Forecast.Target is { } target ? DaysAnswer.Of(target) : null, DaysAnswer.Of(stay.Forecast.AcidLine),
        answered.ReadyOn is { } on ? WhatIfWords.ReadyBy(on, stay.Forecast.Target ?? default, answered.PackedOn) : null);
}

/// <summary>A jar on the day it goes into the cold.</summary>
/// <param name="Stay">The place, and its days from then on.</param>
/// <param name="Then">How it is expected on that day.</param>
internal sealed record ChillingAnswer(StayAnswer Stay, CoursePointAnswer Then)
{
    public static ChillingAnswer Of(WhatIf chilled, WhatIfAnswered answered) =>
        new(StayAnswer.Of(chilled, answered), CoursePointAnswer.Of(chilled.At(chilled.FromDay)));
}
