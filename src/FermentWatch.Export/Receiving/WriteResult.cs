namespace FermentWatch.Export.Receiving;

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
