using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The one row of where the log stands: up to where it is judged, and how often a quarter-hour mean has changed.</summary>
internal sealed class StateRow(WriteSession session)
{
    private readonly SqlStatement _firstPending = session.Prepare(
        $"SELECT seq FROM reading WHERE seq > $1 AND verdict = {(int)Verdict.Pending} ORDER BY seq LIMIT 1");
    private readonly SqlStatement _judged = session.Prepare("UPDATE state SET judged_seq = max(judged_seq, $1)");
    private readonly SqlStatement _means = session.Prepare("UPDATE state SET means_revision = means_revision + 1");

    /// <summary>
    /// Moves the place up to which the log is judged to the one given and, where only rows follow that have their verdict, on to
    /// the last of those: what settling itself wrote need not be judged again. It never moves back.
    /// </summary>
    internal void MoveJudged(long judgedUpTo, long lastSeq)
    {
        object? pending = _firstPending.Scalar(judgedUpTo);
        _judged.Run(pending is long seq ? seq - 1 : lastSeq);
    }

    internal void CountMeansChange() => _means.Run();
}
