using FermentWatch.Acts;
using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using NodaTime;

namespace FermentWatch.Service.Tests.Doors;

/// <summary>A pH as people enter it, and what is answered.</summary>
public class PhFormTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 11, 28, 12, 0);

    [Theory]
    [InlineData("4,2", 4.2)]
    [InlineData("4.2", 4.2)]
    [InlineData(" 3,85 ", 3.85)]
    [InlineData("4 1/4", 4.25)]
    public void Ph_AsPeopleWriteIt_IsTaken(string typed, double ph) =>
        Assert.Equal((ph, PhMethod.Meter), (Read(new() { Ph = typed, Method = "meter", CheckedInBuffer = true }).Measurement!.Ph, PhMethod.Meter));

    [Theory]
    [InlineData("", "meter", null, "ph: Enter ph, such as 3.9.")]
    [InlineData("39", "meter", null, "ph: 39 cannot be used. Enter a pH from 2 to 9, such as 3.9.")]
    [InlineData("four", "meter", null, "ph: four cannot be used. Enter a pH from 2 to 9, such as 3.9.")]
    [InlineData("3,9", "", null, "method: Choose one of meter, probe or strip.")]
    [InlineData("3,9", "strip", null, "brine: Pale or dark brine? A strip counts for the acid line in pale brine only.")]
    public void Ph_ThatCannotBeTaken_IsAnsweredWithWhatToEnter(string ph, string method, bool? pale, string said)
    {
        PhEntry entry = Read(new() { Ph = ph, Method = method, PaleBrine = pale });
        Assert.Null(entry.Measurement);
        Assert.Equal(said, Assert.Single(entry.Refusals).ToString());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Strip_BrineSaid_IsKeptAsSaid(bool pale) =>
        Assert.Equal(pale, Read(new() { Ph = "3.9", Method = "strip", PaleBrine = pale }).Measurement!.PaleBrine);

    private static PhEntry Read(PhForm form)
    {
        var jar = new Jar
        {
            Id = Guid.NewGuid(), Number = 1, Name = "cabbage", BatchId = Guid.NewGuid(), PackedAt = Now - Duration.FromDays(9),
                Portions = [new Portion("cabbage", 0.8)],
            Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = Cover.Leaf, Lid = Lid.Vented,
            Target = Sourness.Sour,
        };
        return PhEntry.Read(form, jar, new Household { Id = Guid.NewGuid(), Name = "Number Nine", TimeZoneId = "UTC" }, Now,
            new EntryMark(Guid.NewGuid(), new Person("Ada"), MemberRole.Adult));
    }
}
