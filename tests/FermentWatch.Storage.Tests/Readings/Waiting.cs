using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>What waits of the sensor that most of these tests have.</summary>
internal static class Waiting
{
    public static Task<LogSlice> NotYetJudgedAsync(this IReadingLog log, int atMost, CancellationToken cancellationToken) =>
        log.NotYetJudgedAsync(new WaitingReadings(1, 0, long.MaxValue), atMost, cancellationToken);
}
