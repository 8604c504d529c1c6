namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The one row of where the log stands: how often a quarter-hour mean has changed. What waits for a verdict says so itself.</summary>
internal sealed class StateRow(WriteSession session)
{
    private readonly SqlStatement _means = session.Prepare("UPDATE state SET means_revision = means_revision + 1");

    internal void CountMeansChange() => _means.Run();
}
