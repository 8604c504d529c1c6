using FermentWatch.Kitchen.Forwarding;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>The table of estimates, as the writer sees it.</summary>
internal sealed class EstimateRows(WriteSession session)
{
    private readonly SqlStatement _insert = session.Prepare(
        """
        INSERT INTO estimate(jar, made_ms, inputs, ph_p10, ph_p50, ph_p90, acidity_p50, sourness_p50, days_to_target_p50)
        VALUES($1, $2, $3, $4, $5, $6, $7, $8, $9) ON CONFLICT(jar, made_ms) DO NOTHING
        """);
    private readonly SqlStatement _forget = session.Prepare(
        "DELETE FROM estimate WHERE seq <= $1 AND seq NOT IN (SELECT max(seq) FROM estimate GROUP BY jar)");

    internal void Note(SavedEstimate estimate)
    {
        long madeMs = estimate.MadeAt.ToUnixTimeMilliseconds();
        while (!TryInsert(estimate, madeMs))
            madeMs++;
    }

    /// <summary>Those up to a place are no longer needed, but for the last of each jar, which says what was noted already.</summary>
    internal void ForgetUpTo(long seq) => _forget.Run(seq);

    private bool TryInsert(SavedEstimate estimate, long madeMs) => _insert.Run(
        estimate.JarId.ToString(), madeMs, estimate.Inputs, estimate.PhP10, estimate.PhP50, estimate.PhP90,
        estimate.AcidityPercentLacticP50, estimate.SournessP50, estimate.DaysToTargetP50) == 1;
}
