using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.LookingBack;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Acts.Jars;

/// <summary>Holds what was foretold of every jar against what was found, and gathers what was right.</summary>
public sealed class LookBack(JarReader jars, IForecastBook forecasts)
{
    /// <summary>Over every jar there is or was, the last put up first.</summary>
    public async Task<BackLooked> DoAsync(CancellationToken cancellationToken)
    {
        JarView[] all = [.. (await jars.KeptAsync(cancellationToken)).Concat(await jars.PastAsync(cancellationToken))
            .OrderByDescending(view => view.Jar.Number)];
        var tasted = new List<Foretold>();
        var measured = new List<Foretold>();
        foreach (JarView view in all)
        {
            IReadOnlyList<ForecastMark> marks = await forecasts.MarksAsync(view.Jar.Id, cancellationToken);
            if (Foretold.OfTasting(view.Jar, marks) is { } sourness)
                tasted.Add(sourness);
            if (Foretold.OfLine(view.Jar, marks) is { } line)
                measured.Add(line);
        }
        return new BackLooked(tasted, measured,
            [.. all.Select(view => (view, Right(view))).Where(each => each.Item2 is not null).Select(each => (each.view, each.Item2!))]);
    }

    private static Taste? Right(JarView view) => view.Jar.Standing.OfType<Taste>().FirstOrDefault(taste => taste.Verdict == TasteVerdict.Right);
}

/// <summary>What looking back shows.</summary>
/// <param name="Tasted">Days on which jars would be sour enough, against tastes.</param>
/// <param name="Measured">Days of the acid line, against readings.</param>
/// <param name="Right">Jars that were tasted right, each with the first such taste.</param>
public sealed record BackLooked(IReadOnlyList<Foretold> Tasted, IReadOnlyList<Foretold> Measured, IReadOnlyList<(JarView View, Taste Taste)> Right);
