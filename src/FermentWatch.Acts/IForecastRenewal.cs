using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Acts;

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
