namespace FermentWatch.Storage;

/// <summary>What was found when the databases were opened that an adult should know, a line each.</summary>
public sealed class StorageRemarks
{
    private readonly List<string> _all = [];

    public IReadOnlyList<string> All => _all;

    internal void Add(string remark) => _all.Add(remark);
}
