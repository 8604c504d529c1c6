using FermentWatch.Intake.Credentials;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Intake.Tests.Doubles;

/// <summary>Sensors, gateways and a door over memory.</summary>
public sealed class Household
{
    public static readonly Instant Added = Instant.FromUtc(2026, 9, 1, 0, 0);

    public Household(TimeProvider? time = null, DoorOptions? door = null)
    {
        Directory = new SensorDirectory(Book, time ?? TimeProvider.System);
        Sources = new SourceRuleSet(Rules, time ?? TimeProvider.System);
        Door = new MessageDoor(Log, Directory, Sources, options: door);
    }

    public MemorySensorBook Book { get; } = new();

    public MemoryReadingIntake Log { get; } = new();

    public MemorySourceRuleBook Rules { get; } = new();

    public SourceRuleSet Sources { get; }

    public SensorDirectory Directory { get; }

    public MessageDoor Door { get; }

    /// <summary>Adds a sensor and returns it with its password.</summary>
    public async Task<(Sensor Sensor, string Password)> AddSensorAsync(string slug)
    {
        var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = slug, Name = slug, AddedAt = Added };
        IssuedCredential issued = new CredentialIssuer().ForSensor(sensor);
        return (await Book.AddAsync(sensor, issued.Credential, CancellationToken.None), issued.Password);
    }

    /// <summary>Adds a gateway and returns its password.</summary>
    public async Task<string> AddGatewayAsync(string user, string filter)
    {
        IssuedCredential issued = new CredentialIssuer().ForGateway(user, filter);
        await Book.AddGatewayAsync(issued.Credential, CancellationToken.None);
        return issued.Password;
    }
}
