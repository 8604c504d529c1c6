using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Service.Demo.Household;

/// <summary>The deeds a household does, in the words of its jars.</summary>
internal static class Deeds
{
    private const double StripStep = 0.5;

    public static Deed Looked(double day, string by, bool opened = false) =>
        new(day, by, at => at.Answering.AllWell([at.Jar], opened).Observations);

    public static Deed Saw(double day, string by, SightingKind kind, string? note = null) =>
        new(day, by, at => at.Answering.Seen(at.Jar, kind, note).Observations);

    public static Deed Tasted(double day, string by, TasteVerdict verdict) =>
        new(day, by, at => at.Answering.Tasted(at.Jar, verdict).Observations);

    public static Deed Meter(double day, string by, double off = 0, bool checkedInBuffer = true) =>
        new(day, by, at => [Measured(at, PhMethod.Meter, Math.Round(at.ExpectedPh + off, 2), checkedInBuffer)]);

    /// <summary>A strip shows half steps.</summary>
    public static Deed Strip(double day, string by, double off = 0) =>
        new(day, by, at => [Measured(at, PhMethod.Strip, Math.Round((at.ExpectedPh + off) / StripStep) * StripStep, checkedInBuffer: false)]);

    public static Deed IntoTheCold(double day, string by, string place) =>
        new(day, by, at => at.Answering.Moved(at.Jar, JarStage.Cold, null).Observations) { MovedTo = place };

    public static Deed ThrownOut(double day, string by, string why) =>
        new(day, by, at => at.Answering.Moved(at.Jar, JarStage.ThrownOut, why).Observations);

    public static Deed MovedTo(double day, string by, string place) => new(day, by, _ => []) { MovedTo = place };

    private static PhMeasurement Measured(DeedAt at, PhMethod method, double ph, bool checkedInBuffer) => new()
    {
        Id = Guid.CreateVersion7(at.At.ToDateTimeOffset()), JarId = at.Jar.Id, At = at.At, EnteredAt = at.At, By = at.By,
        Ph = Math.Clamp(ph, 2.5, 7), Method = method, CheckedInBuffer = checkedInBuffer,
        PaleBrine = !at.Jar.Portions[0].Produce.Contains("red", StringComparison.Ordinal),
        Blended = at.Jar.Cut is Kinetics.Produce.Cut.Whole or Kinetics.Produce.Cut.Pieces,
    };
}
