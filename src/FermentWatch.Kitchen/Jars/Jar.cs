using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Jars;

/// <summary>One jar, with where it stood and what was seen of it.</summary>
public sealed class Jar
{
    public required Guid Id { get; init; }

    /// <summary>The number on its strip of tape; given by the book when the jar is put up, never used again.</summary>
    public int Number { get; init; }

    /// <summary>What the household calls it.</summary>
    public required string Name { get; set; }

    /// <summary>Jars put up together from one lot share it.</summary>
    public required Guid BatchId { get; init; }

    public required Instant PackedAt { get; set; }

    /// <summary>What went in, at least one portion; masses are of this one jar.</summary>
    public required IReadOnlyList<Portion> Portions { get; set; }

    public required Cut Cut { get; set; }

    public double AddedWaterKilograms { get; set; }

    public required Salting Salting { get; set; }

    /// <summary>Brine of an earlier jar that was put in; null where none was.</summary>
    public Starter? Starter { get; set; }

    /// <summary>Vinegar that was put in; null where none was.</summary>
    public Vinegar? Vinegar { get; set; }

    public required double VesselLitres { get; set; }

    public required Cover Cover { get; set; }

    public required Lid Lid { get; set; }

    /// <summary>How sour this household wants it.</summary>
    public required Sourness Target { get; set; }

    /// <summary>Set with the stage change that ends it; null while it is kept. Spares loading every jar of former years.</summary>
    public Instant? EndedAt { get; set; }

    public List<JarPlacement> Placements { get; } = [];

    /// <summary>What was put right or changed later, with what stood before, by time of entry.</summary>
    public List<JarCorrection> Corrections { get; } = [];

    /// <summary>Everything entered, voided entries among them.</summary>
    public List<Observation> Observations { get; } = [];

    /// <summary>What stands, by time of observation.</summary>
    public IEnumerable<Observation> Standing =>
        Observations.Where(observation => observation.VoidedAt is null).OrderBy(observation => observation.At).ThenBy(observation => observation.Id);

    /// <summary>Where it is in its life.</summary>
    public JarStage Stage => Standing.OfType<StageChange>().LastOrDefault()?.Stage ?? JarStage.Fermenting;

    /// <summary>Whether it lies in the freezer: it has ended here, and is stock there.</summary>
    public bool IsFrozen => Standing.OfType<StageChange>().LastOrDefault() is { Stage: JarStage.Finished, Went: Destination.Frozen };

    /// <summary>Takes over what is put right in another record of the same jar: all that people entered of it but its placements.</summary>
    public void TakeFactsOf(Jar corrected)
    {
        Name = corrected.Name;
        PackedAt = corrected.PackedAt;
        Portions = corrected.Portions;
        Cut = corrected.Cut;
        AddedWaterKilograms = corrected.AddedWaterKilograms;
        Salting = corrected.Salting;
        Starter = corrected.Starter;
        Vinegar = corrected.Vinegar;
        VesselLitres = corrected.VesselLitres;
        Cover = corrected.Cover;
        Lid = corrected.Lid;
        Target = corrected.Target;
    }

    /// <summary>The same jar as what was entered before an instant has it.</summary>
    public Jar Before(Instant instant)
    {
        var jar = new Jar
        {
            Id = Id, Number = Number, Name = Name, BatchId = BatchId, PackedAt = PackedAt, Portions = Portions, Cut = Cut, Salting = Salting,
            VesselLitres = VesselLitres, Cover = Cover, Lid = Lid, Target = Target,
        };
        jar.TakeFactsOf(this);
        jar.Placements.AddRange(Placements);
        jar.Corrections.AddRange(Corrections);
        jar.Observations.AddRange(Observations.Where(each => each.At < instant));
        return jar;
    }

    /// <summary>The place it stood in at an instant; before its first placement, that of the first.</summary>
    public JarPlacement PlacementAt(Instant instant) =>
        Placements.Where(placement => placement.From <= instant).MaxBy(placement => placement.From)
        ?? Placements.MinBy(placement => placement.From)
        ?? throw new InvalidOperationException($"Jar {Number} was never given a place.");
}

/// <summary>From when on a jar stands in a place.</summary>
public sealed class JarPlacement
{
    public required Guid Id { get; init; }

    public required Guid JarId { get; init; }

    public required Guid PlaceId { get; init; }

    public required Instant From { get; init; }
}
