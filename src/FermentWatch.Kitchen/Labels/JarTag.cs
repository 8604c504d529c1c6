using System.Globalization;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Labels;

/// <summary>
/// What goes with a jar that is given to somebody who was not there when it was put up: what is in it, how it is kept, by when it is eaten as
/// published and by whom, and what to mind. It promises nothing.
/// </summary>
/// <param name="jar">The jar.</param>
/// <param name="household">For its zone and units.</param>
/// <param name="today">The present day.</param>
public sealed class JarTag(Jar jar, Household household, LocalDate today)
{
    /// <summary>What whoever was given a jar is to know before eating of it.</summary>
    public static readonly IReadOnlyList<Caution> Cautions =
        [Guides.Cautions.LocalGuidanceFirst, Guides.Cautions.NeverTasteToDecide, Guides.Cautions.VulnerablePeople, Guides.Cautions.SaltRestricted,
            Guides.Cautions.Histamine];

    private readonly KeepingTime _keeping = KeepingTime.Of(jar);

    /// <summary>What went in, with its salt.</summary>
    public string Contents
    {
        get
        {
            string salt = jar.Salting.Percent is { } percent
                ? string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} % salt") : "salt by taste";
            var parts = jar.Portions.Select(portion => $"{portion.Produce} {MeasureWords.Mass(portion.MassKilograms, household.MassUnit)}");
            return $"{string.Join(", ", parts)}; {salt}";
        }
    }

    /// <summary>Allergens by name, each once; empty where none is known here.</summary>
    public IReadOnlyList<string> Contains => Allergens.Of(jar);

    /// <summary>When it was packed, went into the cold, was frozen and was opened.</summary>
    public string Dates => string.Join(", ", new[]
    {
        $"packed {Day(DateOf(jar.PackedAt))}",
        Chilled is { } chilled ? $"in the cold since {Day(chilled)}" : "not in the cold yet",
        Frozen is { } frozen ? $"frozen on {Day(frozen)}" : null,
        LeftInJar.OpenSince(jar) is { } opened ? $"open since {Day(DateOf(opened))}, {LeftInJar.Words(jar) ?? "nothing taken out"}" : null,
    }.OfType<string>());

    /// <summary>What was measured, and what that covers.</summary>
    public string Line => AcidLineWords.Sentence(jar, AcidLine.Report(jar, household.Zone), household.Zone);

    /// <summary>How it is kept.</summary>
    public string Keep => $"Keep cold, at 4 °C (40 °F) or below. {Guides.Cautions.LoosenInTheCold.Text}"
        + (LeftInJar.OpenSince(jar) is null ? "" : $" {KeepingTime.Opened}");

    /// <summary>
    /// The days by which it is eaten as published, the stricter end first; counted from today where it never was in the cold. Null of a jar
    /// that was frozen, of which nothing is published as far as we know.
    /// </summary>
    public (LocalDate Least, LocalDate Most)? EatBy => Frozen is null ? _keeping.EatBy(Chilled ?? today) : null;

    /// <summary>The same in words.</summary>
    public string EatByWords => EatBy switch
    {
        null => "How long it keeps after freezing is not published as far as we know: keep it cold and eat it soon.",
        (_, var most) when most < today => $"Past the longest that is published: until {Day(most)}. {_keeping.Words}",
        var (least, most) when least < today => $"Eat soon: by {Day(most)} at the latest, and {Day(least)} is gone by. {_keeping.Words}",
        var (least, most) => $"Eat by {Day(least)} to {Day(most)}{(Chilled is null ? ", if it goes into the cold today" : "")}. {_keeping.Words}",
    };

    /// <summary>Who says so.</summary>
    public string EatBySource => Frozen is null ? _keeping.Source : KeepingTime.OpenedSource;

    private LocalDate? Chilled => jar.Standing.OfType<StageChange>().FirstOrDefault(each => each.Stage == JarStage.Cold) is { } cold
        ? DateOf(cold.At) : null;

    private LocalDate? Frozen => jar.Standing.OfType<StageChange>().LastOrDefault(each => each.Went == Destination.Frozen) is { } frozen
        ? DateOf(frozen.At) : null;

    private LocalDate DateOf(Instant instant) => instant.InZone(household.Zone).Date;

    /// <summary>With its year: a tag is read in another one.</summary>
    private static string Day(LocalDate date) => date.ToString("d MMM uuuu", CultureInfo.InvariantCulture);
}
