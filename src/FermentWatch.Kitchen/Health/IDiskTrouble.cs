namespace FermentWatch.Kitchen.Health;

/// <summary>Tells a failure of the disk or of a database from one of our own.</summary>
public interface IDiskTrouble
{
    /// <summary>What it is and what to do, for the household; null where the failure has another cause.</summary>
    string? WordsOf(Exception? trouble);
}
