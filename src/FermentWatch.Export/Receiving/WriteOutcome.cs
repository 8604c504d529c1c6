namespace FermentWatch.Export.Receiving;

/// <summary>How one write ended.</summary>
/// <param name="Result">Taken, to be tried again, or refused.</param>
/// <param name="Connection">Number of the connection the answer came by. The same number later means that the receiver has lived on.</param>
/// <param name="Trouble">What went wrong, in one line; null if it was taken.</param>
/// <param name="NotBefore">How long the receiver asks to be left alone; null if it says nothing.</param>
public sealed record WriteOutcome(WriteResult Result, long Connection, string? Trouble = null, TimeSpan? NotBefore = null)
{
    /// <summary>Stands for no connection at all; numbers begin at 1.</summary>
    public const long NoConnection = 0;

    public static WriteOutcome Taken(long connection) => new(WriteResult.Taken, connection);

    public static WriteOutcome TryAgain(string trouble, TimeSpan? notBefore = null) => new(WriteResult.TryAgain, NoConnection, trouble, notBefore);

    public static WriteOutcome Refused(string trouble) => new(WriteResult.Refused, NoConnection, trouble);
}

/// <summary>What a write came to.</summary>
public enum WriteResult
{
    /// <summary>The receiver says that it has them. Whether they are on its disk it does not say.</summary>
    Taken = 1,

    /// <summary>Not now: nobody there, no answer, no right to write, too busy.</summary>
    TryAgain = 2,

    /// <summary>The receiver does not want these points as they are.</summary>
    Refused = 3,
}
