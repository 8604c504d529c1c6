using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.LookingBack;

/// <summary>
/// A day that was foretold of a jar in its first three days, held against what people found: somewhere between the last time it was not
/// there yet and the first time that it was. Days are days after packing.
/// </summary>
/// <param name="Jar">The jar.</param>
/// <param name="EarlyDay">One chance in ten before it; null where that lay beyond the forecast.</param>
/// <param name="LateDay">Nine chances in ten before it; null where that lay beyond the forecast.</param>
/// <param name="NotYetDay">When it was last found not there yet; 0, the packing, where nobody looked before.</param>
/// <param name="FoundDay">When it was first found there.</param>
public sealed record Foretold(Jar Jar, double? EarlyDay, double? LateDay, double NotYetDay, double FoundDay)
{
    private const int FirstDays = 3;

    /// <summary>How it came out.</summary>
    public ForetoldOutcome Outcome => LateDay < NotYetDay ? ForetoldOutcome.CameLater
        : EarlyDay is null || FoundDay < EarlyDay ? ForetoldOutcome.CameSooner : ForetoldOutcome.Within;

    /// <summary>The day on which it would be sour enough, against tastes; null where none said right, or nothing was foretold before.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="marks">What was said of it day by day, oldest first.</param>
    public static Foretold? OfTasting(Jar jar, IReadOnlyList<ForecastMark> marks)
    {
        List<Taste> tastes = [.. jar.Standing.OfType<Taste>()];
        return Of(jar, marks, mark => mark.Target, tastes.Find(IsRight)?.At, tastes.TakeWhile(taste => !IsRight(taste)).LastOrDefault()?.At);
    }

    /// <summary>The day of the acid line, against readings that count; null where none counts below it, or nothing was foretold before.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="marks">What was said of it day by day, oldest first.</param>
    public static Foretold? OfLine(Jar jar, IReadOnlyList<ForecastMark> marks)
    {
        List<PhMeasurement> counted = [.. jar.Standing.OfType<PhMeasurement>()
            .Where(each => AcidLine.Weigh(jar, each) is LineEvidence.CountsBelow or LineEvidence.CountsAbove)];
        bool IsBelow(PhMeasurement each) => AcidLine.Weigh(jar, each) == LineEvidence.CountsBelow;
        return Of(jar, marks, mark => mark.AcidLine, counted.Find(IsBelow)?.At, counted.TakeWhile(each => !IsBelow(each)).LastOrDefault()?.At);
    }

    private static Foretold? Of(Jar jar, IReadOnlyList<ForecastMark> marks, Func<ForecastMark, PassageDays?> told, Instant? found, Instant? notYet)
    {
        if (found is not { } at || Said(jar, marks, at) is not { } mark || told(mark) is not { } days)
            return null;
        double DayOf(Instant instant) => (instant - jar.PackedAt).TotalDays;
        return new Foretold(jar, days.P10, days.P90, notYet is { } before ? DayOf(before) : 0, DayOf(at));
    }

    /// <summary>The last mark of the first days, else the first at all; only one from before it was found out.</summary>
    private static ForecastMark? Said(Jar jar, IReadOnlyList<ForecastMark> marks, Instant found)
    {
        List<ForecastMark> before = [.. marks.Where(mark => mark.AsOf < found)];
        return before.FindLast(mark => mark.AsOf <= jar.PackedAt + Duration.FromDays(FirstDays)) ?? before.FirstOrDefault();
    }

    private static bool IsRight(Taste taste) => taste.Verdict is TasteVerdict.Right or TasteVerdict.PastIt;
}

/// <summary>How a day that was foretold came out.</summary>
public enum ForetoldOutcome
{
    /// <summary>In the span that eight in ten are meant to lie in.</summary>
    Within = 1,

    /// <summary>Not there yet when nine in ten were to be.</summary>
    CameLater = 2,

    /// <summary>There before one in ten was to be.</summary>
    CameSooner = 3,
}
