namespace FermentWatch.Service.CommandLine;

/// <summary>For whom an answer is written.</summary>
public enum OutputKind
{
    /// <summary>For people.</summary>
    Table,

    /// <summary>For machines, comma separated.</summary>
    Csv,

    /// <summary>For machines, JSON.</summary>
    Json,
}
