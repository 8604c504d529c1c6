using FermentWatch.Export.Forwarding;
using Microsoft.Extensions.Logging;

namespace FermentWatch.Export.Tests.Doubles;

/// <summary>What was logged, a line each.</summary>
internal sealed class ListLogger : ILogger<Forwarder>
{
    public List<string> Lines { get; } = [];

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        Lines.Add($"{eventId.Id} {logLevel}: {formatter(state, exception)}");
}
