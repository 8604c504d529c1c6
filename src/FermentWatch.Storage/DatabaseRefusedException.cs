namespace FermentWatch.Storage;

/// <summary>
/// A database file is not ours, not whole, or from a newer version. It was left as it was found; the message says what is
/// wrong with it and what to do, in words for the person who starts the service.
/// </summary>
public sealed class DatabaseRefusedException(string path, string reason, Exception? cause = null)
    : Exception($"{path} was refused and left as it is: {reason}", cause)
{
    /// <summary>The file that was refused.</summary>
    public string DatabasePath { get; } = path;
}
