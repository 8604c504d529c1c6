using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>
/// Reads what is to be put right about a jar. The jar is written as the form that would put it up, what was typed is laid over
/// it, and the whole is read as when it was put up: so the same rules and questions hold. Only fields that differ change.
/// </summary>
/// <param name="household">For units and the zone.</param>
/// <param name="places">Where a jar may stand.</param>
/// <param name="now">The present.</param>
/// <param name="by">Who puts it right.</param>
/// <param name="starters">Jars whose brine may start another; null where none may.</param>
public sealed class JarCorrecting(Household household,
    IReadOnlyList<Place> places, Instant now, string by, IReadOnlyList<StarterSource>? starters = null)
{
    /// <summary>Turns a form into corrections, or tells every field that is wrong.</summary>
    public CorrectionOrder Read(Jar jar, CorrectionForm typed)
    {
        PutUpForm was = JarAsForm.Of(jar, household, places), wanted = Over(was, typed);
        if (Differing(was, wanted).Count == 0)
            return new CorrectionOrder(jar, [], [], []);
        // A jar that was put up long ago stays correctable.
        Instant oldest = Instant.Min(now - Duration.FromDays(366), jar.PackedAt - Duration.FromDays(1));
        PutUpOrder order = PutUp.Read(wanted, household, places, now, oldest, StartersOf(jar), jar);
        var reader = new FieldReader();
        reader.Refusals.AddRange(order.Refusals);
        Instant since = reader.ReadPast("since", typed.Since, household.Zone, now, jar.PackedAt);
        if (order.Jars is not [var read] || reader.Refusals.Count > 0)
            return new CorrectionOrder(null, [], reader.Refusals, order.Doubts);
        Jar corrected = Unchanged(jar, read, Differing(was, wanted));
        if (TooLate(jar, corrected) is { } refusal)
            return new CorrectionOrder(null, [], [refusal], []);
        return new CorrectionOrder(corrected, Corrections(jar, corrected, since), [], []);
    }

    /// <summary>The brine that went in stays what it was, whatever became of its jar since.</summary>
    private IReadOnlyList<StarterSource> StartersOf(Jar jar) => jar.Starter is not { } own ? starters ?? []
        : [new StarterSource(own.FromJar, "", null, own.AcidityPercentLactic), .. (starters ?? []).Where(each => each.Number != own.FromJar)];

    private static PutUpForm Over(PutUpForm was, CorrectionForm typed) => was with
    {
        What = typed.What ?? was.What, ItsName = typed.ItsName ?? was.ItsName, HowMuch = typed.HowMuch ?? was.HowMuch,
            Also = typed.Also ?? was.Also, Cut = typed.Cut ?? was.Cut,
        Salt = typed.Salt ?? was.Salt, SaltKnowledge = typed.SaltKnowledge ?? was.SaltKnowledge, AddedWater = typed.AddedWater ?? was.AddedWater,
        Vessel = typed.Vessel ?? was.Vessel, Cover = typed.Cover ?? was.Cover, Lid = typed.Lid ?? was.Lid, Target = typed.Target ?? was.Target,
        StarterFrom = typed.StarterFrom ?? was.StarterFrom, StarterBrine = typed.StarterBrine ?? was.StarterBrine,
        Vinegar = typed.Vinegar ?? was.Vinegar, VinegarStrength = typed.VinegarStrength ?? was.VinegarStrength, Place = typed.Place ?? was.Place,
            PackedAt = string.IsNullOrWhiteSpace(typed.PackedAt) ? was.PackedAt : typed.PackedAt,
        Name = typed.Name ?? was.Name, HowMany = null, ItIsRight = typed.ItIsRight,
    };

    /// <summary>What differs, as texts: a figure that was only shown rounded is not changed by being sent back.</summary>
    private static HashSet<string> Differing(PutUpForm was, PutUpForm wanted)
    {
        (string Field, string? Was, string? Wanted)[] all =
        [
            ("portions", $"{was.What}|{was.ItsName}|{was.HowMuch}|{was.Also}", $"{wanted.What}|{wanted.ItsName}|{wanted.HowMuch}|{wanted.Also}"),
                ("cut", was.Cut, wanted.Cut),
            ("salt", $"{was.Salt}|{was.SaltKnowledge}", $"{wanted.Salt}|{wanted.SaltKnowledge}"), ("water", was.AddedWater, wanted.AddedWater),
            ("vessel", was.Vessel, wanted.Vessel), ("packed", was.PackedAt, wanted.PackedAt), ("name", was.Name, wanted.Name),
            ("place", was.Place, wanted.Place), ("cover", was.Cover, wanted.Cover), ("lid", was.Lid, wanted.Lid),
                ("target", was.Target, wanted.Target),
            ("vinegar", $"{was.Vinegar}|{was.VinegarStrength}", $"{wanted.Vinegar}|{wanted.VinegarStrength}"),
            ("starter", $"{was.StarterFrom}|{was.StarterBrine}", $"{wanted.StarterFrom}|{wanted.StarterBrine}"),
        ];
        return [.. all.Where(each => each.Was?.Trim() != each.Wanted?.Trim()).Select(each => each.Field)];
    }

    private static Jar Unchanged(Jar jar, Jar read, HashSet<string> differing)
    {
        JarPlacement first = jar.Placements.MinBy(placement => placement.From)!, readFirst = read.Placements[0];
        Instant packedAt = differing.Contains("packed") ? read.PackedAt : jar.PackedAt;
        var corrected = new Jar
        {
            Id = jar.Id, Number = jar.Number, BatchId = jar.BatchId, Name = differing.Contains("name") ? read.Name : jar.Name,
            PackedAt = packedAt, Portions = differing.Contains("portions") ? read.Portions : jar.Portions,
            Cut = differing.Contains("cut") ? read.Cut : jar.Cut, Salting = differing.Contains("salt") ? read.Salting : jar.Salting,
            AddedWaterKilograms = differing.Contains("water") ? read.AddedWaterKilograms : jar.AddedWaterKilograms,
            Starter = differing.Contains("starter") ? read.Starter : jar.Starter,
            Vinegar = differing.Contains("vinegar") ? read.Vinegar : jar.Vinegar,
            VesselLitres = differing.Contains("vessel") ? read.VesselLitres : jar.VesselLitres, Cover = read.Cover, Lid = read.Lid,
                Target = read.Target,
        };
        corrected.Placements.Add(packedAt == jar.PackedAt && readFirst.PlaceId == first.PlaceId ? first
            : new JarPlacement { Id = readFirst.Id, JarId = jar.Id, PlaceId = readFirst.PlaceId, From = packedAt });
        return corrected;
    }

    /// <summary>Packed after something was entered of it, or after it was moved.</summary>
    private Refusal? TooLate(Jar jar, Jar corrected)
    {
        var facts = jar.Standing.Select(each =>
            each.At).Concat(jar.Placements.OrderBy(placement => placement.From).Skip(1).Select(placement => placement.From)).ToList();
        return facts.Count > 0 && facts.Min() < corrected.PackedAt && jar.PackedAt < corrected.PackedAt
            ? new Refusal("packed on", Day(corrected.PackedAt), $"a time up to {Day(facts.Min())}, when something was entered of it, would be right")
            : null;
    }

    private List<JarCorrection> Corrections(Jar was, Jar after, Instant since)
    {
        MassUnit unit = household.MassUnit;
        (string Field, string Before, string After, bool Dated)[] all =
        [
            ("name", was.Name, after.Name, false),
            ("vegetables", Vegetables(was, unit), Vegetables(after, unit), false),
            ("salt", Salt(was.Salting), Salt(after.Salting), false),
            ("added water", MeasureWords.Mass(was.AddedWaterKilograms, unit), MeasureWords.Mass(after.AddedWaterKilograms, unit), false),
            ("vinegar", JarWords.Of(was.Vinegar, unit), JarWords.Of(after.Vinegar, unit), false),
            ("starter brine", JarWords.Of(was.Starter, unit), JarWords.Of(after.Starter, unit), false),
            ("vessel", MeasureWords.Volume(was.VesselLitres, unit), MeasureWords.Volume(after.VesselLitres, unit), false),
            ("cut", JarWords.Of(was.Cut), JarWords.Of(after.Cut), false),
            ("packed on", Day(was.PackedAt), Day(after.PackedAt), false),
            ("first place", PlaceName(was), PlaceName(after), false),
            ("cover", JarWords.Of(was.Cover), JarWords.Of(after.Cover), true),
            ("lid", JarWords.Of(was.Lid), JarWords.Of(after.Lid), true),
            ("how sour", SournessLevel.Of(was.Target).Words, SournessLevel.Of(after.Target).Words, true),
        ];
        return [.. all.Where(each => each.Before != each.After).Select(each => new JarCorrection
        {
            Id = Guid.CreateVersion7(now.ToDateTimeOffset()), JarId = was.Id, Field = each.Field, Before = each.Before, After = each.After,
            Since = each.Dated ? since : null, EnteredAt = now, By = by,
        })];
    }

    private static string Vegetables(Jar jar, MassUnit unit) =>
        string.Join(", ", jar.Portions.Select(portion => $"{portion.Produce} {MeasureWords.Mass(portion.MassKilograms, unit)}"));

    private static string Salt(Salting salting) => salting switch
    {
        { Percent: { } percent, Knowledge: SaltKnowledge.Measured } =>
            string.Create(CultureInfo.InvariantCulture, $"about {percent:0.##} %, by the spoon"),
        { Percent: { } percent } => string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} %, weighed"),
        _ => "by taste",
    };

    private string PlaceName(Jar jar) => places.First(place => place.Id == jar.Placements.MinBy(each => each.From)!.PlaceId).Name;

    private string Day(Instant instant) => ClockWords.WithDate(instant, household);
}
