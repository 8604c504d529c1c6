using FermentWatch.Acts.Histories;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using NodaTime;

namespace FermentWatch.Service.Tests.Pages;

public class SameYearTests
{
    private static readonly Instant Packed = Instant.FromUtc(2026, 10, 4, 12, 0);

    [Theory]
    [InlineData("cabbage", 1)]
    [InlineData("carrot", 3)]
    [InlineData("daikon", null)]
    public void Before_JarsOfSeveralYears_IsTheSameVegetableAboutAYearEarlier(string most, int? expected)
    {
        Jar[] others = [Jar(0, "cabbage", 400), Jar(1, "cabbage", 372), Jar(2, "cabbage", 200), Jar(3, "carrot", 290), Jar(4, "cabbage", 740),
            Jar(5, "daikon", 260)];
        Assert.Equal(expected, SameYear.Before(Jar(9, most, 0), others)?.Number);
    }

    private static Jar Jar(int number, string most, int daysBefore) => new()
    {
        Id = Guid.CreateVersion7(), Number = number, Name = most, BatchId = Guid.CreateVersion7(), PackedAt = Packed - Duration.FromDays(daysBefore),
        Portions = [new Portion("ginger", 0.03), new Portion(most, 0.8)], Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25),
        VesselLitres = 1,
        Cover = Cover.Leaf, Lid = Lid.Vented, Target = Sourness.Sour,
    };
}
