using FermentWatch.TestKit;

namespace FermentWatch.Scenario.Tests;

/// <summary>A fact that is asked for by the full counts only; else it is shown as left out, never as passed.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LongFactAttribute : FactAttribute
{
    public LongFactAttribute() => Skip = LongRun.Asked ? null : "in the full run only (tests/run.sh --long)";
}
