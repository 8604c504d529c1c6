using System.Net;
using FermentWatch.Export;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Notices.Mail;
using FermentWatch.Service.Logging;
using FermentWatch.Service.Metrics;
using FermentWatch.Storage;
using FermentWatch.Storage.Backups;
using FermentWatch.Web;

namespace FermentWatch.Service.Settings;

/// <summary>Every setting of the service, a section each.</summary>
public sealed record ServiceSettings
{
    // Sections of the host and of its log, which have their own rules.
    private static readonly string[] PassedThrough = ["Logging", "Serilog"];

    /// <summary>Section <c>Storage</c>.</summary>
    public required StorageOptions Storage { get; init; }

    /// <summary>Section <c>Backup</c>: whether and where copies are kept.</summary>
    public required BackupOptions Backup { get; init; }

    /// <summary>Section <c>Mqtt</c>: the broker that lives in the service.</summary>
    public required BrokerOptions Mqtt { get; init; }

    /// <summary>Section <c>Intake</c>: what is let in, by whichever broker.</summary>
    public required DoorOptions Intake { get; init; }

    /// <summary>Section <c>OutsideBroker</c>: a broker that the household has already.</summary>
    public required OutsideBrokerOptions OutsideBroker { get; init; }

    /// <summary>Section <c>HomeHub</c>: whether a home hub is told of the jars.</summary>
    public required AnnouncementOptions HomeHub { get; init; }

    /// <summary>Section <c>Web</c>.</summary>
    public required WebOptions Web { get; init; }

    /// <summary>Section <c>Influx</c>: where series are passed on to.</summary>
    public required InfluxOptions Influx { get; init; }

    /// <summary>Section <c>Mail</c>: the server that takes our letters.</summary>
    public required MailOptions Mail { get; init; }

    /// <summary>Section <c>Metrics</c>: figures for a collector.</summary>
    public required MetricsOptions Metrics { get; init; }

    /// <summary>Section <c>Log</c>.</summary>
    public required LogOptions Log { get; init; }

    /// <summary>The sections by name, in the order they are shown.</summary>
    public IReadOnlyList<(string Name, object Options)> Sections =>
    [
        (nameof(Storage), Storage), (nameof(Backup), Backup), (nameof(Mqtt), Mqtt), (nameof(Intake), Intake),
        (nameof(OutsideBroker), OutsideBroker), (nameof(HomeHub), HomeHub),
        (nameof(Influx), Influx), (nameof(Mail), Mail), (nameof(Web), Web), (nameof(Metrics), Metrics), (nameof(Log), Log),
    ];

    /// <summary>Reads all sections and gathers everything that is wrong with them.</summary>
    public static SettingsReading Read(IConfiguration configuration)
    {
        var errors = new List<string>();
        var settings = new ServiceSettings
        {
            Storage = SectionReader.Read<StorageOptions>(configuration, nameof(Storage), options => options.Errors(), errors),
            Backup = SectionReader.Read<BackupOptions>(configuration, nameof(Backup), options => options.Errors(), errors),
            Mqtt = SectionReader.Read<BrokerOptions>(configuration, nameof(Mqtt), options => options.Errors(), errors),
            Intake = SectionReader.Read<DoorOptions>(configuration, nameof(Intake), options => options.Errors(), errors),
            OutsideBroker = SectionReader.Read<OutsideBrokerOptions>(configuration, nameof(OutsideBroker), options => options.Errors(), errors),
            HomeHub = SectionReader.Read<AnnouncementOptions>(configuration, nameof(HomeHub), options => options.Errors(), errors),
            Influx = SectionReader.Read<InfluxOptions>(configuration, nameof(Influx), options => options.Errors(), errors),
            Web = SectionReader.Read<WebOptions>(configuration, nameof(Web), options => options.Errors(), errors),
            Mail = SectionReader.Read<MailOptions>(configuration, nameof(Mail), options => options.Errors(), errors),
            Metrics = SectionReader.Read<MetricsOptions>(configuration, nameof(Metrics), options => options.Errors(), errors),
            Log = SectionReader.Read<LogOptions>(configuration, nameof(Log), _ => [], errors),
        };
        errors.AddRange(settings.PortsThatCollide());
        errors.AddRange(ServiceLog.UnknownLevels(configuration).Select(wrong => SectionReader.WithOrigin(configuration, wrong.Key, wrong.Error)));
        string[] known = [.. settings.Sections.Select(section => section.Name), .. PassedThrough];
        foreach (IConfigurationSection section in configuration.GetChildren())
            if (!known.Contains(section.Key, StringComparer.OrdinalIgnoreCase))
                errors.Add(SectionReader.Unknown(configuration, section.Key, section.Key, known));
        return new SettingsReading(settings, errors);
    }

    /// <summary>Gathers the settings from their places and reads them.</summary>
    public static (IConfiguration Configuration, SettingsReading Reading) Gather(SettingsPlaces places)
    {
        var errors = new List<string>();
        IConfigurationRoot configuration = places.Gather(errors);
        SettingsReading reading = Read(configuration);
        return (configuration, reading with { Errors = [.. errors, .. reading.Errors] });
    }

    private IEnumerable<string> PortsThatCollide()
    {
        bool plain = Mqtt.Enabled && Mqtt.PlainEnabled, tls = Mqtt.Enabled && Mqtt.CertificateFile is not null;
        if (plain && tls && Mqtt.Port == Mqtt.TlsPort && Mqtt.Port != 0)
            yield return Both("Mqtt:Port", "Mqtt:TlsPort", Mqtt.Port);
        if (Web.Port == 0 || !(Mqtt.BindAddress == Web.Address || IsAny(Mqtt.BindAddress) || IsAny(Web.Address)))
            yield break;
        if (plain && Mqtt.Port == Web.Port)
            yield return Both("Mqtt:Port", "Web:Port", Web.Port);
        if (tls && Mqtt.TlsPort == Web.Port)
            yield return Both("Mqtt:TlsPort", "Web:Port", Web.Port);
    }

    private static string Both(string one, string other, int port) => $"{one} and {other} are both {port}; two different ports belong here.";

    private static bool IsAny(string address) =>
        IPAddress.TryParse(address, out IPAddress? parsed) && (parsed.Equals(IPAddress.Any) || parsed.Equals(IPAddress.IPv6Any));
}

/// <summary>Settings as they were read, with everything that is wrong with them.</summary>
/// <param name="Settings">What was read; where something is wrong, with the default in its place.</param>
/// <param name="Errors">One line each: which setting, what came, what would be right, where it was set. Empty if all is well.</param>
public sealed record SettingsReading(ServiceSettings Settings, IReadOnlyList<string> Errors)
{
    /// <summary>Every error in one message; empty if all is well.</summary>
    public string Message => Errors.Count == 0 ? ""
        : string.Join(Environment.NewLine, Errors.Prepend(Errors.Count == 1 ? "One setting is wrong:" : $"{Errors.Count} settings are wrong:"));

    /// <summary>The settings, for one who has shown the errors already.</summary>
    /// <exception cref="ArgumentException">Something is wrong; the message says everything at once.</exception>
    public ServiceSettings OrThrow() => Errors.Count == 0 ? Settings : throw new ArgumentException(Message);
}
