using System.Globalization;

namespace FermentWatch.Storage.Archives.Taking;

/// <summary>What is wrong with an archive, by file and line. Of very many the first are kept and all are counted.</summary>
public sealed class ArchiveTroubles
{
    private const int MostKept = 50;

    private readonly List<string> _kept = [];

    /// <summary>The first of them, a line each.</summary>
    public IReadOnlyList<string> Kept => _kept;

    /// <summary>How many there are.</summary>
    public long Count { get; private set; }

    internal bool Any => Count > 0;

    internal void Add(string file, string words) => AddLine($"{file}: {words}");

    internal void Add(string file, long line, string words) => AddLine(string.Create(CultureInfo.InvariantCulture, $"{file}, line {line}: {words}"));

    private void AddLine(string line)
    {
        if (Count++ < MostKept)
            _kept.Add(line);
    }
}
