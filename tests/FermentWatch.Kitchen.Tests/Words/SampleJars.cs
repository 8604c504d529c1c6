using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Words;

/// <summary>Jars to speak of.</summary>
internal static class SampleJars
{
    public static readonly DateTimeZone Vienna = DateTimeZoneProviders.Tzdb["Europe/Vienna"];
    public static readonly Instant Packed = Instant.FromUtc(2026, 10, 5, 16, 0);

    public static Jar Of(string produce, Lid lid = Lid.Vented, Cover cover = Cover.Leaf) => new()
    {
        Id = Guid.CreateVersion7(), Number = 14, Name = produce, BatchId = Guid.CreateVersion7(), PackedAt = Packed,
        Portions = [new(produce, 1)], Cut = Cut.Shredded, Salting = new(SaltKnowledge.Weighed, 2.25), VesselLitres = 1,
        Cover = cover, Lid = lid, Target = Sourness.Sour,
    };

    public static PhMeasurement Ph(double ph, Instant at) => new()
    {
        Id = Guid.CreateVersion7(), JarId = Guid.Empty, At = at, EnteredAt = at, By = "Ada", Ph = ph, Method = PhMethod.Meter, CheckedInBuffer = true,
    };
}
