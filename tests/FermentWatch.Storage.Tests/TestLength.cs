namespace FermentWatch.Storage.Tests;

/// <summary>Counts of the two lengths in which the tests run.</summary>
internal static class TestLength
{
    internal static int Of(int reduced, int full) =>
        Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? full : reduced;
}
