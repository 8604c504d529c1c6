using System.Collections.Concurrent;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;
using NodaTime.Extensions;

namespace FermentWatch.Acts;

/// <summary>
/// After an entry: has the forecasts of the jars it is about renewed before the next page shows them, as long as that is worth
/// waiting for. What follows for others, and what is told to anybody, is the loops' and is not waited for.
/// </summary>
public sealed class ForecastRenewal(ForecastPass forecasts, IJarBook jars, WrittenDown written, TimeProvider clock) : IForecastRenewal, IDisposable
{
    /// <summary>An entry is answered within 300 ms; a jar of many months with readings may take longer to work out than that.</summary>
    private static readonly TimeSpan WorthWaitingFor = TimeSpan.FromMilliseconds(150);

    private readonly ConcurrentDictionary<Guid, int> _atWork = [];

    // Many entries at once wait for one another: working out a dozen jars side by side takes no less time and a dozen times the memory.
    private readonly SemaphoreSlim _turn = new(1);

    /// <summary>Whether a jar's forecast is being worked out for an entry that the one on record does not know.</summary>
    public bool IsAtWork(Guid jarId) => _atWork.ContainsKey(jarId);

    /// <inheritdoc/>
    public async Task RunAsync(IReadOnlyCollection<Jar> touched, CancellationToken cancellationToken)
    {
        if (touched.Count == 0)
        {
            written.SayFacts();
            return;
        }
        foreach (Jar jar in touched)
            _atWork.AddOrUpdate(jar.Id, 1, (_, entries) => entries + 1);
        Task renewing = Task.Run(() => RenewAsync(touched), CancellationToken.None);
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        await Task.WhenAny(renewing, Task.Delay(WorthWaitingFor, clock, enough.Token));
        await enough.CancelAsync();
    }

    /// <inheritdoc/>
    public async Task RunAsync(int number, CancellationToken cancellationToken) =>
        await RunAsync(await jars.FindAsync(number, cancellationToken) is { } jar ? [jar] : [], cancellationToken);

    public void Dispose() => _turn.Dispose();

    /// <summary>
    /// The loops are woken after it, so that they do not work out the same. The entry is on record whatever becomes of this: what
    /// fails here is tried again by the loops, and reported by them.
    /// </summary>
    private async Task RenewAsync(IReadOnlyCollection<Jar> touched)
    {
        await _turn.WaitAsync();
        try
        {
            await forecasts.RenewAsync(touched, clock.GetUtcNow().ToInstant(), CancellationToken.None);
        }
        finally
        {
            _turn.Release();
            foreach (Jar jar in touched)
                if (_atWork.AddOrUpdate(jar.Id, 0, (_, entries) => entries - 1) <= 0)
                    _atWork.TryRemove(KeyValuePair.Create(jar.Id, 0));
            written.SayFacts();
        }
    }
}

/// <summary>Has the forecasts of jars renewed after an entry.</summary>
public interface IForecastRenewal
{
    /// <summary>Renews these jars; where it takes long, it goes on after this has returned.</summary>
    Task RunAsync(IReadOnlyCollection<Jar> touched, CancellationToken cancellationToken);

    /// <summary>Renews one jar as it stands after the entry.</summary>
    Task RunAsync(int number, CancellationToken cancellationToken);
}

/// <summary>For a process beside the service, such as a verb of the command line: the loops of the service look each minute.</summary>
public sealed class RenewedByTheService : IForecastRenewal
{
    public Task RunAsync(IReadOnlyCollection<Jar> touched, CancellationToken cancellationToken) => Task.CompletedTask;

    public Task RunAsync(int number, CancellationToken cancellationToken) => Task.CompletedTask;
}
