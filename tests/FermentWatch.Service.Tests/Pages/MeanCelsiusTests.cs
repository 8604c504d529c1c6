using FermentWatch.Acts.Histories;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NSubstitute;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>The mean temperature that looking back tells of a jar.</summary>
public class MeanCelsiusTests
{
    private static readonly Instant Packed = Instant.FromUtc(2026, 10, 4, 12, 0);

    [Theory]
    [InlineData(10, 19.5)] // every day of ten: 15 to 24
    [InlineData(5, 17.0)] // half of them: 15 to 19
    [InlineData(4, null)]
    [InlineData(0, null)]
    public async Task MeanCelsius_MeasuredOnSomeOfTenDays_IsToldFromHalfOfThemOn(int days, double? celsius)
    {
        var points = Enumerable.Range(0, days).Select(day => new ReadingMean(Packed + Duration.FromDays(day), 15 + day, 14, 26, 96)).ToList();
        Assert.Equal(celsius, await Courses(new MeasuredHistory(Duration.FromDays(1), points)).MeanCelsiusAsync(Jar, Packed + Duration.FromDays(10),
            CancellationToken.None));
    }

    [Fact]
    public async Task MeanCelsius_TastedWhenPacked_IsNothing() =>
        Assert.Null(await Courses(new MeasuredHistory(null, [])).MeanCelsiusAsync(Jar, Packed, CancellationToken.None));

    private static CourseReader Courses(MeasuredHistory measured)
    {
        IReadingHistory history = Substitute.For<IReadingHistory>();
        history.AskAsync(default!, default).ReturnsForAnyArgs(measured);
        ISensorBook sensors = Substitute.For<ISensorBook>();
        sensors.AllAsync(default).ReturnsForAnyArgs([]);
        return new CourseReader(new HistoryReader(history, sensors), Substitute.For<IPhotoBook>(), Substitute.For<IPlaceBook>());
    }

    private static Jar Jar => new()
    {
        Id = Guid.CreateVersion7(), Number = 1, Name = "kraut", BatchId = Guid.CreateVersion7(), PackedAt = Packed,
        Portions = [new Portion("cabbage", 0.8)], Cut = Cut.Shredded, Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1,
        Cover = Cover.Leaf, Lid = Lid.Vented, Target = Sourness.Sour,
    };
}
