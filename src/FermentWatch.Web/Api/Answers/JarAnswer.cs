using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
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
        Stage = view.Jar.Stage, Place = view.Place.Name,
        Portions = [.. view.Jar.Portions.Select(portion => new PortionAnswer(portion.Produce, portion.MassKilograms))],
        SaltKnowledge = view.Jar.Salting.Knowledge, SaltPercent = view.Jar.Salting.Percent, VesselLitres = view.Jar.VesselLitres,
        AddedWaterKilograms = view.Jar.AddedWaterKilograms, Starter = StarterAnswer.Of(view.Jar.Starter), Vinegar = VinegarAnswer.Of(view.Jar.Vinegar),
        NoForecast = Kitchen.Forecasts.NoForecast.Of(view.Jar), Cut = view.Jar.Cut, Cover = view.Jar.Cover, Lid = view.Jar.Lid,
        Target = view.Jar.Target, TargetAcidityPercentLactic = view.Target.AcidityPercentLactic,
        SourEnough = view.Forecast?.Target is { } target ? DaysAnswer.Of(target) : null, SourEnoughWords = view.SourEnough, Warnings = view.Warnings,
        AcidLine = AcidLineAnswer.Of(view), NextStep = view.Next.Text,
        Observations = [.. view.Jar.Observations.Select(each => ObservationAnswer.Of(view.Jar, each))],
        Corrections = [.. view.Jar.Corrections.Select(each => new CorrectionAnswer(each.Field, each.Before, each.After, each.Since, each.EnteredAt, each.By))],
    };
}
