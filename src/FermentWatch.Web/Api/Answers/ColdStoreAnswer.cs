using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Labels;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What is in the cold and in the freezer.</summary>
/// <param name="Jars">What stands in the cold, in the order in which it is eaten.</param>
/// <param name="LeftJarsCount">What is left in the cold, in full jars: reckoned, and rough.</param>
/// <param name="LastsUntil">When that is eaten at the pace of the last eight weeks; null where too little was eaten to tell.</param>
/// <param name="DaysLeft">Days until then; null where too little was eaten to tell.</param>
/// <param name="FrozenNumbers">Numbers of jars in the freezer, the longest there first.</param>
public sealed record ColdStoreAnswer(IReadOnlyList<ColdJarAnswer> Jars, double LeftJarsCount, LocalDate? LastsUntil, int? DaysLeft,
    IReadOnlyList<int> FrozenNumbers)
{
    public static ColdStoreAnswer Of(ColdStoreView store) => new([.. store.Shelf.Select(each => ColdJarAnswer.Of(each, store.Today))],
        Math.Round(store.LeftJars, 2), store.LastsUntil, store.LastsUntil is { } until ? Period.DaysBetween(store.Today, until) : null,
        [.. store.Frozen.Select(view => view.Jar.Number)]);
}

/// <summary>A jar in the cold.</summary>
/// <param name="Number">The number on its strip of tape.</param>
/// <param name="Since">The day it went into the cold.</param>
/// <param name="OpenSince">The day it was first opened to eat from it; null while it is closed.</param>
/// <param name="LeftPercent">What is left of a full jar, per cent: reckoned, and rough.</param>
/// <param name="EatFirst">Whether its turn is now.</param>
/// <param name="EatByEarliest">The stricter end of what is published to keep.</param>
/// <param name="EatByLatest">The other end.</param>
/// <param name="EatBySource">Who says so.</param>
/// <param name="AcidityPercentLactic">Its acidity as expected now; null where nothing is.</param>
/// <param name="Celsius">How warm it is expected to be there.</param>
public sealed record ColdJarAnswer(int Number, LocalDate Since, LocalDate? OpenSince, double LeftPercent, bool EatFirst, LocalDate EatByEarliest,
    LocalDate EatByLatest, string EatBySource, double? AcidityPercentLactic, double Celsius)
{
    internal static ColdJarAnswer Of(ColdShelfJar each, LocalDate today)
    {
        KeepingTime keeping = KeepingTime.Of(each.Cold.Jar);
        (LocalDate least, LocalDate most) = keeping.EatBy(each.Cold.Since);
        return new(each.Cold.Jar.Number, each.Cold.Since, each.Cold.OpenSince, Math.Round(100 * each.Cold.LeftFraction), each.Cold.IsNext(today),
            least, most, keeping.Source, each.View.AcidityNowPercentLactic, each.View.CelsiusNow);
    }
}

/// <summary>What goes with a jar that is given away, in words.</summary>
/// <param name="Contents">What went in, with its salt.</param>
/// <param name="Allergens">Allergens by name; empty where none is known here.</param>
/// <param name="Dates">When it was packed, went into the cold and was opened.</param>
/// <param name="Keep">How it is kept.</param>
/// <param name="EatBy">By when it is eaten as published, a range.</param>
/// <param name="EatByEarliest">The stricter end; null of a jar that was frozen, of which nothing is published as far as we know.</param>
/// <param name="EatByLatest">The other end; null likewise.</param>
/// <param name="EatBySource">Who says so.</param>
/// <param name="Line">What was measured, and what that covers.</param>
/// <param name="Cautions">What to mind, each with who says so.</param>
public sealed record TagAnswer(string Contents, IReadOnlyList<string> Allergens, string Dates, string Keep, string EatBy, LocalDate? EatByEarliest,
    LocalDate? EatByLatest, string EatBySource, string Line, IReadOnlyList<string> Cautions)
{
    public static TagAnswer Of(JarView view)
    {
        var tag = new JarTag(view.Jar, view.Household, view.Calendar.Today);
        return new(tag.Contents, tag.Contains, tag.Dates, tag.Keep, tag.EatByWords, tag.EatBy?.Least, tag.EatBy?.Most, tag.EatBySource, tag.Line,
            [.. JarTag.Cautions.Select(caution => $"{caution.Text} ({caution.Source})")]);
    }
}
