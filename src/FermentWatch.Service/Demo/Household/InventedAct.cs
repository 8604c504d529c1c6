using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Service.Demo.Household;

/// <summary>What somebody of the invented household did or saw at a jar.</summary>
/// <param name="Day">Days after packing.</param>
/// <param name="By">Who.</param>
/// <param name="Do">Makes what is filed of it.</param>
internal sealed record InventedAct(double Day, string By, Func<ActMoment, IEnumerable<Observation>> Do)
{
    /// <summary>Where the jar was moved to at the same time; null if it stayed.</summary>
    public string? MovedTo { get; init; }
}

/// <summary>The moment of an act.</summary>
/// <param name="Jar">The jar as it stands at that moment.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="Answering">The kitchen's rules of entering things, at that moment.</param>
/// <param name="ExpectedPh">The pH a jar of this kind would probably have then.</param>
internal sealed record ActMoment(Jar Jar, Instant At, string By, Answering Answering, double ExpectedPh);

/// <summary>The acts a household does, in the words of its jars.</summary>
internal static class InventedActs
{
    private const double StripStep = 0.5;

    public static InventedAct Looked(double day, string by, bool opened = false) =>
        new(day, by, at => at.Answering.AllWell([at.Jar], opened).Observations);

    public static InventedAct Saw(double day, string by, SightingKind kind, string? note = null) =>
        new(day, by, at => at.Answering.Seen(at.Jar, kind, note).Observations);

    public static InventedAct Tasted(double day, string by, TasteVerdict verdict) =>
        new(day, by, at => at.Answering.Tasted(at.Jar, verdict).Observations);

    public static InventedAct Meter(double day, string by, double off = 0, bool checkedInBuffer = true) =>
        new(day, by, at => [Measured(at, PhMethod.Meter, Math.Round(at.ExpectedPh + off, 2), checkedInBuffer)]);

    /// <summary>A strip shows half steps.</summary>
    public static InventedAct Strip(double day, string by, double off = 0) =>
        new(day, by, at => [Measured(at, PhMethod.Strip, Math.Round((at.ExpectedPh + off) / StripStep) * StripStep, checkedInBuffer: false)]);

    public static InventedAct IntoTheCold(double day, string by, string place) =>
        new(day, by, at => at.Answering.Moved(at.Jar, JarStage.Cold, null).Observations) { MovedTo = place };

    public static InventedAct ThrownOut(double day, string by, string why) =>
        new(day, by, at => at.Answering.Moved(at.Jar, JarStage.ThrownOut, why).Observations);

    public static InventedAct MovedTo(double day, string by, string place) => new(day, by, _ => []) { MovedTo = place };

    private static PhMeasurement Measured(ActMoment at, PhMethod method, double ph, bool checkedInBuffer) => new()
    {
        Id = Guid.CreateVersion7(at.At.ToDateTimeOffset()), JarId = at.Jar.Id, At = at.At, EnteredAt = at.At, By = at.By,
        Ph = Math.Clamp(ph, 2.5, 7), Method = method, CheckedInBuffer = checkedInBuffer,
        PaleBrine = !at.Jar.Portions[0].Produce.Contains("red", StringComparison.Ordinal),
        Blended = at.Jar.Cut is Kinetics.Produce.Cut.Whole or Kinetics.Produce.Cut.Pieces,
    };
}

/// <summary>Jars put up together by the invented household, and what was done with the first of them.</summary>
/// <param name="DaysAgo">When they were packed, days before the demo began.</param>
/// <param name="Form">What was typed to put them up, without the day.</param>
/// <param name="Acts">What was done with the first jar of the lot since.</param>
internal sealed record InventedLot(double DaysAgo, PutUpForm Form, params InventedAct[] Acts);

/// <summary>A sensor of the invented household.</summary>
/// <param name="Slug">Its name in topics.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Room">The room it measures, or in which the jar with its probe stands.</param>
/// <param name="InJar">The jar its probe is in, by the jar's name; null if it measures the room.</param>
/// <param name="Period">How often it reports while the demo runs.</param>
internal sealed record InventedSensor(string Slug, string Name, string Room, string? InJar, TimeSpan Period);
