using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Intake.Tests.Doubles;

/// <summary>Keeps what was logged at information level and above.</summary>
internal sealed class RecordingLogger<T> : ILogger<T>
{
    public ConcurrentQueue<(int Id, LogLevel Level, string Text)> Entries { get; } = new();

    /// <summary>Numbers of errors that the test means to cause.</summary>
    public HashSet<int> Expected { get; } = [];

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Information;

    public void Log<TState>(
        LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        if (IsEnabled(logLevel))
            Entries.Enqueue((eventId.Id, logLevel, formatter(state, exception)));
    }
}
