using System.CommandLine;
using FermentWatch.Service.Settings;

namespace FermentWatch.Service.CommandLine;

/// <summary>The options of verbs that need the settings of the service.</summary>
internal sealed class SettingsOptions
{
    // systemd hands secret files over in a folder it names in this variable.
    private const string SystemdCredentials = "CREDENTIALS_DIRECTORY";

    private readonly Option<string> _file = new("--settings")
    {
        HelpName = "FILE",
        Description = $"Settings as JSON. Without it {SettingsPlaces.DefaultFile} is read if it exists. Environment variables "
            + "FERMENTWATCH__SECTION__KEY come on top, secret files on top of those.",
    };

    private readonly Option<string> _secrets = new("--secrets")
    {
        HelpName = "FOLDER",
        Description = $"Folder of secret files, one a setting, each named like the environment variable. Without it ${SystemdCredentials} is taken "
            + "if set.",
    };

    public SettingsOptions(Command verb)
    {
        verb.Add(_file);
        verb.Add(_secrets);
    }

    public (IConfiguration Configuration, SettingsReading Reading) Gather(ParseResult call, CommandContext context) =>
        ServiceSettings.Gather(new SettingsPlaces
        {
            File = call.GetValue(_file),
            SecretsFolder = call.GetValue(_secrets) ?? context.Environment.GetValueOrDefault(SystemdCredentials),
            Environment = context.Environment,
        });

    /// <summary>Carries a verb out with the settings, or says everything that is wrong with them.</summary>
    public async Task<int> WithSettingsAsync(ParseResult call, CommandContext context, Func<IConfiguration, ServiceSettings, Task<int>> action)
    {
        (IConfiguration configuration, SettingsReading reading) = Gather(call, context);
        if (reading.Errors.Count == 0)
            return await action(configuration, reading.Settings);
        await context.Error.WriteLineAsync(reading.Message);
        return ExitCode.WrongCall;
    }
}
