using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>Writing verdicts with all that follows from them.</summary>
internal static class Settlement
{
    internal static bool Write(WriteSession session, IReadOnlyList<VerdictChange> changes, long judgedUpTo)
    {
        if (judgedUpTo > session.Readings.LastSeq)
            throw new ArgumentOutOfRangeException(nameof(judgedUpTo), judgedUpTo,
                $"Beyond the end of the log, {session.Readings.LastSeq}: what is written next would never be judged.");

        var touched = new List<VerdictChange>();
        foreach (var change in changes)
        {
            var (before, seq) = session.Readings.Standing(change);
            // A reading written since the slice was read may have been judged as a neighbour. It waits for its own turn: only then
            // are its own neighbours judged again because of it.
            bool notItsTurn = before == Verdict.Pending && seq > judgedUpTo;
            if (before == change.Verdict || notItsTurn)
                continue;
            session.Readings.Revise(change);
            session.Verdicts.Add(change.SensorKey, before, -1);
            session.Verdicts.Add(change.SensorKey, change.Verdict, 1);
            if (before == Verdict.Counts || change.Verdict == Verdict.Counts)
                touched.Add(change);
        }

        bool quarterChanged = false;
        foreach (var series in touched.GroupBy(change => (change.SensorKey, change.Quantity)))
            quarterChanged |= session.Means.Renew(
                series.Key.SensorKey, series.Key.Quantity, series.Select(change => change.MeasuredAt.ToUnixTimeMilliseconds()));
        if (quarterChanged)
            session.State.CountMeansChange();
        return quarterChanged;
    }
}
