using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>One jar.</summary>
public sealed record JarAnswer
{
    /// <summary>The number on its strip of tape.</summary>
    public required int Number { get; init; }

    public required Guid Id { get; init; }

    public required string Name { get; init; }

    /// <summary>Shared by jars put up together.</summary>
    public required Guid BatchId { get; init; }

    public required Instant PackedAt { get; init; }

    public required JarStage Stage { get; init; }

    /// <summary>Where a finished jar went: <c>Eaten</c>, <c>GivenAway</c>, <c>Frozen</c> or <c>Canned</c>; null of every other, and where nobody
    /// said.</summary>
    public required Destination? Went { get; init; }

    /// <summary>To whom it was given; null where it was not, and where nobody said.</summary>
    public required string? GivenTo { get; init; }

    /// <summary>When it was first opened to eat from it; null while it is closed.</summary>
    public required Instant? OpenSince { get; init; }

    /// <summary>What is left of a full jar, per cent, reckoned from what was taken out: rough.</summary>
    public required double LeftPercent { get; init; }

    /// <summary>Where it stands now.</summary>
    public required string Place { get; init; }

    public required IReadOnlyList<PortionAnswer> Portions { get; init; }

    public required SaltKnowledge SaltKnowledge { get; init; }

    /// <summary>Per cent of vegetables and added water together; null when salted by taste.</summary>
    public required double? SaltPercent { get; init; }

    public required double VesselLitres { get; init; }

    public required double AddedWaterKilograms { get; init; }

    /// <summary>Brine of an earlier jar that was put in; null where none was.</summary>
    public required StarterAnswer? Starter { get; init; }

    /// <summary>Vinegar that was put in; null where none was.</summary>
    public required VinegarAnswer? Vinegar { get; init; }

    /// <summary>Why nothing is forecast of what went in; null where something can be.</summary>
    public required string? NoForecast { get; init; }

    public required Cut Cut { get; init; }

    public required Cover Cover { get; init; }

    public required Lid Lid { get; init; }

    public required Sourness Target { get; init; }

    /// <summary>Acidity at which it is as sour as wanted.</summary>
    public required double TargetAcidityPercentLactic { get; init; }

    /// <summary>Days after packing to the target; null until the first forecast.</summary>
    public required DaysAnswer? SourEnough { get; init; }

    /// <summary>The same in words.</summary>
    public required string SourEnoughWords { get; init; }

    /// <summary>What is said of it as long as it is so, in words; empty where nothing is.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    public required AcidLineAnswer AcidLine { get; init; }

    /// <summary>The one thing to do now.</summary>
    public required string NextStep { get; init; }

    public required IReadOnlyList<ObservationAnswer> Observations { get; init; }

    /// <summary>What was put right or changed, with what stood before.</summary>
    public required IReadOnlyList<CorrectionAnswer> Corrections { get; init; }

    public static JarAnswer Of(JarView view) => new()
    {
        Number = view.Jar.Number, Id = view.Jar.Id, Name = view.Jar.Name, BatchId = view.Jar.BatchId, PackedAt = view.Jar.PackedAt,
        Stage = view.Jar.Stage, Went = EndOf(view.Jar)?.Went, GivenTo = EndOf(view.Jar)?.GivenTo, OpenSince = LeftInJar.OpenSince(view.Jar),
        LeftPercent = Math.Round(100 * LeftInJar.FractionOf(view.Jar)), Place = view.Place.Name,
        Portions = [.. view.Jar.Portions.Select(portion => new PortionAnswer(portion.Produce, portion.MassKilograms))],
        SaltKnowledge = view.Jar.Salting.Knowledge, SaltPercent = view.Jar.Salting.Percent, VesselLitres = view.Jar.VesselLitres,
        AddedWaterKilograms = view.Jar.AddedWaterKilograms, Starter = StarterAnswer.Of(view.Jar.Starter),
            Vinegar = VinegarAnswer.Of(view.Jar.Vinegar),
        NoForecast = Kitchen.Forecasts.NoForecast.Of(view.Jar), Cut = view.Jar.Cut, Cover = view.Jar.Cover, Lid = view.Jar.Lid,
        Target = view.Jar.Target, TargetAcidityPercentLactic = view.Target.AcidityPercentLactic,
        SourEnough = view.Forecast?.Target is { } target ? DaysAnswer.Of(target) : null, SourEnoughWords = view.SourEnough, Warnings = view.Warnings,
        AcidLine = AcidLineAnswer.Of(view), NextStep = view.Next.Text,
        Observations = [.. view.Jar.Observations.Select(each => ObservationAnswer.Of(view.Jar, each))],
        Corrections = [.. view.Jar.Corrections.Select(each =>
            new CorrectionAnswer(each.Field, each.Before, each.After, each.Since, each.EnteredAt, each.By))],
    };

    private static StageChange? EndOf(Jar jar) => jar.Standing.OfType<StageChange>().LastOrDefault();
}

/// <summary>One thing that went into a jar.</summary>
/// <param name="Produce">Its name.</param>
/// <param name="MassKilograms">Prepared mass.</param>
public sealed record PortionAnswer(string Produce, double MassKilograms);

/// <summary>Brine of an earlier jar that was put in.</summary>
/// <param name="JarNumber">Number of that jar.</param>
/// <param name="MassKilograms">How much of it.</param>
/// <param name="AcidityPercentLactic">Its acidity as expected when it was taken.</param>
public sealed record StarterAnswer(int JarNumber, double MassKilograms, double AcidityPercentLactic)
{
    public static StarterAnswer? Of(Starter? starter) =>
        starter is null ? null : new(starter.FromJar, starter.MassKilograms, starter.AcidityPercentLactic);
}

/// <summary>Vinegar that was put in.</summary>
/// <param name="MassKilograms">How much.</param>
/// <param name="AceticPercent">Its strength, per cent acetic acid.</param>
public sealed record VinegarAnswer(double MassKilograms, double AceticPercent)
{
    public static VinegarAnswer? Of(Vinegar? vinegar) => vinegar is null ? null : new(vinegar.MassKilograms, vinegar.AceticPercent);
}

/// <summary>Days after packing at which something is reached; null where not reached within the forecast.</summary>
/// <param name="DaysP10">The early end.</param>
/// <param name="DaysP50">The middle.</param>
/// <param name="DaysP90">The late end.</param>
public sealed record DaysAnswer(double? DaysP10, double? DaysP50, double? DaysP90)
{
    public static DaysAnswer Of(PassageDays passage) => new(passage.P10, passage.P50, passage.P90);
}

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

/// <summary>One fact of a jar that was put right or changed.</summary>
/// <param name="Field">Which fact.</param>
/// <param name="Before">What stood before, in words.</param>
/// <param name="After">What stands since, in words.</param>
/// <param name="Since">Since when it is so; null where it was wrong from the beginning.</param>
/// <param name="EnteredAt">When it was put right.</param>
/// <param name="By">Who did.</param>
public sealed record CorrectionAnswer(string Field, string Before, string After, Instant? Since, Instant EnteredAt, string By);
