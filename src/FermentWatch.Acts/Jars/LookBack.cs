using FermentWatch.Acts.Histories;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.LookingBack;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Acts.Jars;

/// <summary>Holds what was foretold of every jar against what was found, and gathers what was right.</summary>
public sealed class LookBack(JarReader jars, IForecastBook forecasts, CourseReader courses)
{
    /// <summary>Of the last so many the temperature is read; a page shows no more.</summary>
    private const int MostWithTemperature = 100;

    /// <summary>Over every jar there is or was, the last put up first.</summary>
    public async Task<BackLooked> DoAsync(CancellationToken cancellationToken)
    {
        JarView[] all = [.. (await jars.KeptAsync(cancellationToken)).Concat(await jars.PastAsync(cancellationToken))
            .OrderByDescending(view => view.Jar.Number)];
        Jar[] found = [.. all.Select(view => view.Jar).Where(jar => jar.Standing.Any(each => each is Taste or PhMeasurement))];
        ILookup<Guid, ForecastMark> marks = await forecasts.MarksAsync([.. found.Select(jar => jar.Id)], cancellationToken);
        return new BackLooked(
            [.. found.Select(jar => Foretold.OfTasting(jar, [.. marks[jar.Id]])).OfType<Foretold>()],
            [.. found.Select(jar => Foretold.OfLine(jar, [.. marks[jar.Id]])).OfType<Foretold>()],
            await RightAsync([.. all.Where(view => Right(view) is not null)], cancellationToken));
    }

    private async Task<IReadOnlyList<RightJar>> RightAsync(JarView[] views, CancellationToken cancellationToken)
    {
        var right = new List<RightJar>();
        foreach (JarView view in views)
            right.Add(new RightJar(view, Right(view)!,
                right.Count < MostWithTemperature ? await MeanCelsiusAsync(view.Jar, Right(view)!.At, cancellationToken) : null));
        return right;
    }

    private Task<double?> MeanCelsiusAsync(Jar jar, Instant tasted, CancellationToken cancellationToken) =>
        courses.MeanCelsiusAsync(jar, jar.Standing.OfType<StageChange>().Select(change => change.At).Append(tasted).Min(), cancellationToken);

    private static Taste? Right(JarView view) => view.Jar.Standing.OfType<Taste>().FirstOrDefault(taste => taste.Verdict == TasteVerdict.Right);
}

/// <summary>What looking back shows.</summary>
/// <param name="Tasted">Days on which jars would be sour enough, against tastes.</param>
/// <param name="Measured">Days of the acid line, against readings.</param>
/// <param name="Right">Jars that were tasted right, each with the first such taste.</param>
public sealed record BackLooked(IReadOnlyList<Foretold> Tasted, IReadOnlyList<Foretold> Measured, IReadOnlyList<RightJar> Right);

/// <summary>A jar that was tasted right.</summary>
/// <param name="View">The jar.</param>
/// <param name="Taste">The first taste that said so.</param>
/// <param name="MeanCelsius">Mean of what was measured in it or around it from packing until then, or until it was chilled, Celsius; null where
/// too little was.</param>
public sealed record RightJar(JarView View, Taste Taste, double? MeanCelsius);
