namespace FermentWatch.Kitchen.Health;

/// <summary>
/// Says that something was written down, to whoever works on it. Who listens looks by itself each minute as well: a word that nobody
/// heard costs a minute, and nothing else.
/// </summary>
public sealed class WrittenDown
{
    /// <summary>Readings that wait to be judged.</summary>
    public event Action? Readings;

    /// <summary>What judging goes by: a check of a probe, and what takes one back.</summary>
    public event Action? Checks;

    /// <summary>Anything a person entered.</summary>
    public event Action? Facts;

    public void SayReadings() => Readings?.Invoke();

    public void SayChecks() => Checks?.Invoke();

    public void SayFacts() => Facts?.Invoke();
}
