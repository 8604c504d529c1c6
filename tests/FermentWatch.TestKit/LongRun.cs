namespace FermentWatch.TestKit;

/// <summary>Whether the full counts were asked for (<c>tests/run.sh --long</c>).</summary>
public static class LongRun
{
    public static bool Asked => Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1";

    /// <summary>The count of the short or of the full run.</summary>
    public static int Count(int inShort, int inFull) => Asked ? inFull : inShort;
}
