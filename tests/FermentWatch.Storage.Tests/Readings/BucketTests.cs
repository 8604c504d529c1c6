using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;

namespace FermentWatch.Storage.Tests.Readings;

public class BucketTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(899_999, 0)]
    [InlineData(900_000, 900_000)]
    [InlineData(-1, -900_000)]
    [InlineData(-900_000, -900_000)]
    [InlineData(-900_001, -1_800_000)]
    public void StartMs_QuarterHour_IsTheWholeMultipleBefore(long instantMs, long start) =>
        Assert.Equal(start, Bucket.StartMs(MeanSpan.QuarterHour, instantMs));

    [Fact]
    public void Means_AddsFromLeftToRight()
    {
        // 1e16 + 1 + 1 keeps neither 1; 1 + 1 + 1e16 keeps both: the order shows in the bits.
        Assert.Equal(1e16 / 3, Bucket.Means(MeanSpan.QuarterHour, [(0, 1e16), (1, 1), (2, 1)])[0].Value);
        Assert.Equal((1e16 + 2) / 3, Bucket.Means(MeanSpan.QuarterHour, [(0, 1), (1, 1), (2, 1e16)])[0].Value);
    }
}
