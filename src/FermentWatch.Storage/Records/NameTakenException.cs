namespace FermentWatch.Storage.Records;

/// <summary>A name that must be unique in the household is in use; nothing was written. The message is for the person who chose it.</summary>
public sealed class NameTakenException(string what, string name, Exception cause)
    : Exception($"There is a {what} '{name}' already. Enter another name.", cause);
