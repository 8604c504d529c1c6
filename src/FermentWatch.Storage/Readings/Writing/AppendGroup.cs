using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>Appending one caller's readings.</summary>
internal static class AppendGroup
{
    internal static AppendResult Write(WriteSession session, IReadOnlyList<Reading> readings)
    {
        int stored = 0;
        int duplicates = 0;
        int conflicts = 0;
        foreach (var reading in readings)
        {
            session.Heard.Note(reading);
            long instantMs = reading.MeasuredAt.ToUnixTimeMilliseconds();
            if (reading.TimeSource == TimeSource.Arrival)
                session.Readings.InsertWhereFree(reading, instantMs);
            else if (!session.Readings.TryInsert(reading, instantMs))
            {
                if (IsSame(session, reading, instantMs))
                    duplicates++;
                else
                    conflicts++;
                continue;
            }

            stored++;
            session.Verdicts.Add(reading.SensorKey, Verdict.Pending, 1);
        }

        return new AppendResult(stored, duplicates, conflicts);
    }

    private static bool IsSame(WriteSession session, Reading reading, long instantMs)
    {
        double kept = session.Readings.ValueAt(reading, instantMs);
        if (kept == reading.Value)
            return true;
        session.Readings.CountConflict(reading, instantMs, kept);
        return false;
    }
}
