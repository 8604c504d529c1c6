using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.AcidLines;

namespace FermentWatch.Web.Api.Answers;

/// <summary>Where a jar stands against the acid line.</summary>
/// <param name="State"><c>NotMeasured</c>, <c>MeasuredBelow</c> or <c>MeasuredAbove</c>.</param>
/// <param name="Settled">Two counted readings below on different days, none above since.</param>
/// <param name="Alarm"><c>None</c>, <c>RiseToRecheck</c>, <c>Rise</c> or <c>BackAbove</c>.</param>
/// <param name="Words">What it says and covers.</param>
/// <param name="ExpectedWords">When it is expected, late end first; null where measured below.</param>
public sealed record AcidLineAnswer(AcidLineState State, bool Settled, AcidLineAlarm Alarm, string Words, string? ExpectedWords)
{
    public static AcidLineAnswer Of(JarView view) =>
        new(view.Line.State, view.Line.Settled, view.Line.Alarm, view.LineSentence, view.LineExpected);
}
