using System.Globalization;
using FermentWatch.Acts;
using FermentWatch.Acts.Jars;
using FermentWatch.Acts.Rounds;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Service.Demo.Household;

/// <summary>What somebody of the invented household did or saw at a jar.</summary>
/// <param name="Day">Days after packing.</param>
/// <param name="By">Who.</param>
/// <param name="Do">Does it by the acts of the product; what was wrong, or nothing.</param>
internal sealed record InventedAct(double Day, string By, Func<ActMoment, Task<IReadOnlyList<Refusal>>> Do)
{
    /// <summary>Where the jar was moved to at the same time; null if it stayed.</summary>
    public string? MovedTo { get; init; }

    /// <summary>Whether the jar is kept no longer after it.</summary>
    public bool Ends { get; init; }

    /// <summary>What the photo taken of it shows to be wrong; <see cref="SightingKind.Other"/> for nothing.</summary>
    public SightingKind? Photo { get; init; }

    /// <summary>The same with a photo of a jar that is well.</summary>
    public InventedAct WithPhoto(SightingKind shows = SightingKind.Other) => this with { Photo = shows };
}

/// <summary>The moment of an act.</summary>
/// <param name="Jar">The jar as it stands at that moment.</param>
/// <param name="Mark">Who does it.</param>
/// <param name="Acts">What people can do.</param>
/// <param name="Places">The places of the household.</param>
/// <param name="ExpectedPh">The pH a jar of this kind would probably have then.</param>
internal sealed record ActMoment(Jar Jar, EntryMark Mark, HouseholdActs Acts, IReadOnlyList<Place> Places, double ExpectedPh);

/// <summary>The acts a household does, in the words of its jars.</summary>
internal static class InventedActs
{
    private const double StripStep = 0.5;

    public static InventedAct Looked(double day, string by, bool opened = false) => new(day, by, async on =>
        (await on.Acts.AllWell.DoAsync(new HashSet<int> { on.Jar.Number }, opened ? new HashSet<int> { on.Jar.Number } : [], on.Mark,
            default)).Refusals);

    public static InventedAct Saw(double day, string by, SightingKind kind, string? note = null) => new(day, by, async on =>
        (await on.Acts.Seen.DoAsync(on.Jar.Number, kind, note, on.Mark, default)).Refusals) { Photo = kind };

    public static InventedAct Settled(double day, string by, HandlingKind kind) => new(day, by, async on =>
        (await on.Acts.Settle.DoAsync(on.Jar.Number, kind, on.Mark, default)).Refusals);

    public static InventedAct Tasted(double day, string by, TasteVerdict verdict) => new(day, by, async on =>
        (await on.Acts.Taste.DoAsync(on.Jar.Number, verdict, on.Mark, default)).Refusals);

    public static InventedAct Meter(double day, string by, double off = 0, bool checkedInBuffer = true) => new(day, by, on =>
        MeasuredAsync(on, "meter", on.ExpectedPh + off, checkedInBuffer));

    /// <summary>A strip shows half steps.</summary>
    public static InventedAct Strip(double day, string by, double off = 0) => new(day, by, on =>
        MeasuredAsync(on, "strip", Math.Round((on.ExpectedPh + off) / StripStep) * StripStep, checkedInBuffer: false));

    public static InventedAct IntoTheCold(double day, string by, string place) => new(day, by, async on =>
        (await on.Acts.Stage.DoAsync(on.Jar.Number, JarStage.Cold, null, on.Places.First(each => each.Name == place).Id, on.Mark, default)).Refusals)
        { MovedTo = place };

    public static InventedAct Ate(double day, string by, string amount) => new(day, by, async on =>
        (await on.Acts.Take.DoAsync(on.Jar, new PortionForm { Amount = amount }, on.Mark, default)).Refusals);

    public static InventedAct Finished(double day, string by, Destination went = Destination.Eaten, string? givenTo = null) =>
        new(day, by, async on => (await on.Acts.Stage.DoAsync(on.Jar.Number, new WhereItGoes(JarStage.Finished, went, givenTo), null, null, on.Mark,
            default)).Refusals) { Ends = true };

    public static InventedAct ThrownOut(double day, string by, string why) => new(day, by, async on =>
        (await on.Acts.Stage.DoAsync(on.Jar.Number, JarStage.ThrownOut, why, null, on.Mark, default)).Refusals) { Ends = true };

    public static InventedAct MovedTo(double day, string by, string place) => new(day, by, async on =>
        (await on.Acts.Move.DoAsync(on.Jar, new MoveForm { Place = place }, on.Mark, default)).Refusals) { MovedTo = place };

    private static async Task<IReadOnlyList<Refusal>> MeasuredAsync(ActMoment on, string method, double ph, bool checkedInBuffer)
    {
        var form = new PhForm
        {
            Ph = Math.Clamp(ph, 2.5, 7).ToString("0.00", CultureInfo.InvariantCulture), Method = method, CheckedInBuffer = checkedInBuffer,
            PaleBrine = !on.Jar.Portions[0].Produce.Contains("red", StringComparison.Ordinal), Blended = on.Jar.Cut is Cut.Whole or Cut.Pieces,
        };
        return (await on.Acts.Measure.DoAsync(on.Jar, form, on.Mark, null, default)).Refusals;
    }
}

/// <summary>Jars put up together by the invented household, and what was done with the first of them.</summary>
/// <param name="DaysAgo">When they were packed, days before the demo began.</param>
/// <param name="Form">What was typed to put them up, without the day.</param>
/// <param name="Acts">What was done with the first jar of the lot since, in order.</param>
internal sealed record InventedLot(double DaysAgo, PutUpForm Form, params InventedAct[] Acts)
{
    /// <summary>Whether the first jar was finished or thrown out by the last act.</summary>
    public bool IsEnded => Acts is [.., { Ends: true }];

    /// <summary>The room in which the first jar stands so many days after packing.</summary>
    public string RoomOn(double day) => Acts.LastOrDefault(act => act.MovedTo is not null && act.Day <= day)?.MovedTo ?? Form.Place!;
}

/// <summary>A sensor of the invented household.</summary>
/// <param name="Name">What the household calls it, which is its name in topics as well.</param>
/// <param name="Room">The room it measures, or in which the jar with its probe stands.</param>
/// <param name="InJar">The jar its probe is in, by the jar's name; null if it measures the room.</param>
/// <param name="Period">How often it reports while the demo runs.</param>
internal sealed record InventedSensor(string Name, string Room, string? InJar, TimeSpan Period)
{
    /// <summary>Its name in topics.</summary>
    public string Slug => Acts.Sensors.SlugOf.Name(Name)!;
}
